using ShedBot.Coaching.Bikes;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Service;

/// <summary>What is due once at each of some distances after an event.</summary>
internal static class Milestones
{
    /// <summary>Who does a task a little early has done it: at four fifths of the way.</summary>
    public const double EarlyEnough = 0.8;

    /// <returns>
    /// The last milestone that was reached and not done, for doing it once serves those before it; else the next one; or null when all are done, or the
    /// event is not known or so long ago that the days after it are folded.
    /// </returns>
    public static PlanItem? Of(BikeProfile bike, ServiceRule rule, ServiceAfter after, Anchor? anchor, Reckoning reckoning)
    {
        if (anchor is null || reckoning.Ledger.IsFolded(anchor.Day)) return null;
        var open = after.At.Where(at => !Done(bike, rule, anchor, at, reckoning))
            .Select(at => reckoning.Of(rule, reckoning.Key(rule, $"{anchor.Key}|{PlanWords.Number(at.Amount)} {at.Measure}"), anchor, at))
            .ToList();
        return open.LastOrDefault(i => i.Amount.Share >= 1) ?? open.FirstOrDefault();
    }

    private static bool Done(BikeProfile bike, ServiceRule rule, Anchor anchor, Interval at, Reckoning reckoning) => bike.Done.Any(d =>
        d.Task == rule.Id && d.Day >= anchor.Day && reckoning.Used(rule, anchor, at, d.Day).Amount >= EarlyEnough * at.Amount);
}
