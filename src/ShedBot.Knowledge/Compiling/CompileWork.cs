using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Wording;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Knowledge.Compiling;

/// <summary>Checks, covers and repairs for the planner: what they cost, how far they can be trusted, how dangerous they are.</summary>
internal static class CompileWork
{
    public static Check Check(CheckRule rule, CompileOptions options)
    {
        var (error, unsure) = ReliabilityWords.Rates[rule.Reliability];
        return new Check(
            rule.Id,
            rule.Tells,
            new StepCost(rule.Minutes, 0, rule.Effort + options.Patience),
            AnswerError.Even(error),
            rule.Cover,
            HazardWords.Levels[rule.Hazard],
            unsure);
    }

    public static Repair Repair(RepairRule rule, Learnt learnt) => new(
        rule.Id,
        new StepCost(rule.Minutes, rule.Money, rule.Effort),
        [.. rule.Mends.OrderBy(m => m.Key, StringComparer.Ordinal).Select(m => new Fix(m.Key, learnt.MendsOf(rule.Id, m.Key) ?? ChanceWords.Chance(m.Value)))],
        rule.Cover,
        HazardWords.Levels[rule.Hazard]);

    public static Cover Cover(CoverRule rule) => new(rule.Id, new StepCost(rule.Minutes, 0, rule.Effort));
}
