using ShedBot.Knowledge;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>Ids for rules that come new, made of their own words; nobody has to see them. None is given twice.</summary>
internal sealed class NewIds(KnowledgeBase knowledge)
{
    private const int MostWords = 4, Longest = 40;

    private static readonly HashSet<string> Small = new(["the", "a", "an", "is", "are", "of", "to", "in", "on", "at", "and", "it", "its", "with", "so", "that", "for", "be", "do", "does", "you", "your"], StringComparer.Ordinal);

    private readonly HashSet<string> taken = new(
        [
            .. knowledge.Complaints.Keys, .. knowledge.Findings.Keys, .. knowledge.Facts.Keys, .. knowledge.Faults.Keys, .. knowledge.Checks.Keys, .. knowledge.Covers.Keys,
            .. knowledge.Repairs.Keys, .. knowledge.HowTos.Keys, .. knowledge.Emergencies.Keys, .. knowledge.Service.Keys, KnowledgeBase.SomethingElse, "fitted",
        ],
        StringComparer.Ordinal);

    /// <param name="text">What the rule says of itself, in whatever script.</param>
    public string For(string text)
    {
        var words = Words(text);
        var telling = words.Where(w => !Small.Contains(w)).Take(MostWords).ToList();
        var name = string.Join('-', telling.Count > 0 ? telling : ["rule"]);
        if (name.Length > Longest) name = name[..Longest].TrimEnd('-');
        var id = name;
        for (var number = 2; !taken.Add(id); number++) id = $"{name}-{number}";
        return id;
    }

    private static string[] Words(string text) =>
        new string([.. text.ToLowerInvariant().Replace("'", "", StringComparison.Ordinal).Select(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) ? c : ' ')])
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);
}
