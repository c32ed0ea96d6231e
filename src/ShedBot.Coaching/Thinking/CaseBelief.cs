using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Knowledge;
using ShedBot.Reasoning.Inference;

namespace ShedBot.Coaching.Thinking;

/// <summary>What the coach believes about a case, for those who judge the coach rather than talk to it.</summary>
public static class CaseBelief
{
    /// <param name="now">The time to judge it at, UTC: facts of the bike age.</param>
    public static Belief Of(Case @case, BikeProfile bike, KnowledgeBase knowledge, DateTimeOffset now) =>
        CaseView.Of(@case, bike, knowledge, now).Belief;
}
