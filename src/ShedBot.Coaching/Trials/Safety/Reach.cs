using ShedBot.Knowledge;
using ShedBot.Knowledge.Rules;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching.Trials.Safety;

/// <summary>Whether a state of a finding can be come upon at all, without drawing anybody.</summary>
internal static class Reach
{
    public static StateRule? Stop(KnowledgeBase knowledge, string finding, string state) =>
        knowledge.Findings.GetValueOrDefault(finding)?.States.FirstOrDefault(s => s.Id == state && s.StopRiding is not null);

    /// <summary>
    /// True when the state still means stop, and there is a check that tells it, is not above the hazard that is coached, and does not cost more by itself, or
    /// by its cover, than handing over: help ends every case for its price, so a step that is dearer is never chosen, whatever is believed.
    /// </summary>
    public static bool Tells(KnowledgeBase knowledge, string finding, string state, CoachOptions options)
    {
        var model = knowledge.Model;
        return Stop(knowledge, finding, state) is not null && model.Checks.Any(c =>
            c.Finding == finding
            && c.Hazard <= options.HazardLimit
            && Pays(c.Cost)
            && (c.Cover is null || Pays(model.Covers[model.CoverAt(c.Cover)].OpeningCost)));

        bool Pays(StepCost cost) => options.Weights.Total(cost) < model.HelpCost;
    }
}
