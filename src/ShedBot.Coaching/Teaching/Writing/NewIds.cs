using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>Ids for the rules that come new with one sheet; nobody has to see them. None is given twice, whatever the kind, so that a log reads plainly.</summary>
internal sealed class NewIds(KnowledgeBase knowledge)
{
    private readonly HashSet<string> taken = new(
        [
            .. knowledge.Complaints.Keys, .. knowledge.Findings.Keys, .. knowledge.Facts.Keys, .. knowledge.Faults.Keys, .. knowledge.Checks.Keys, .. knowledge.Covers.Keys,
            .. knowledge.Repairs.Keys, .. knowledge.HowTos.Keys, .. knowledge.Emergencies.Keys, .. knowledge.Service.Keys,
        ],
        StringComparer.Ordinal);

    /// <param name="text">What the rule says of itself, in whatever script.</param>
    public string For(string text)
    {
        var id = NewId.From(text, taken.Contains);
        taken.Add(id);
        return id;
    }
}
