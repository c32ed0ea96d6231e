using NodaTime;
using ShedBot.Coaching.Riding;
using ShedBot.Knowledge.Rules;
using Interval = ShedBot.Knowledge.Rules.Interval;

namespace ShedBot.Coaching.Service;

/// <summary>Works out how one interval of a task stands.</summary>
/// <param name="bike">Its id, for the keys.</param>
internal sealed class Reckoning(string bike, Ledger ledger, Outlook outlook, LocalDate today)
{
    private const int SoonDays = 7;

    public LocalDate Today => today;

    public Ledger Ledger => ledger;

    public string Key(ServiceRule rule, string anchor) => $"{bike}|{rule.Id}|{anchor}";

    /// <param name="sure">False when it is counted from the first day that is known, because nobody told when it was last done.</param>
    public PlanItem Of(ServiceRule rule, string key, Anchor anchor, Interval allowed, bool sure = true)
    {
        var used = Used(rule, anchor, allowed, LocalDate.Max(today, ledger.Next.PlusDays(-1)));
        var amount = new UsedAmount(used.Amount, allowed.Amount, allowed.Measure, used.Estimated);
        var when = When(rule, anchor, allowed, used);
        var state = State(amount, when.Expected, sure, allowed.Measure);
        var because = string.Join(' ', Because(rule, anchor, allowed, state, sure));
        return new PlanItem(rule, key, state, when.Expected, when.Earliest, when.Latest, amount, because);
    }

    public Used Used(ServiceRule rule, Anchor anchor, Interval allowed, LocalDate until)
    {
        if (allowed.Measure != Measure.Days) return ledger.Since(anchor.Day, anchor.RidesOfTheDayCount, until, rule, allowed);
        var days = Math.Max(0, Period.DaysBetween(anchor.Day, until));
        return new Used(days, false, days >= allowed.Amount ? anchor.Day.PlusDays((int)Math.Ceiling(allowed.Amount)) : null);
    }

    private Expectation When(ServiceRule rule, Anchor anchor, Interval allowed, Used used)
    {
        if (allowed.Amount == 0) return On(anchor.Day);
        if (allowed.Measure == Measure.Days) return On(anchor.Day.PlusDays((int)Math.Ceiling(allowed.Amount)));
        if (used.Reached is { } day) return On(day);
        return ledger.Known is null || ledger.Pace.QuietSince is not null
            ? default
            : outlook.When(allowed.Amount - used.Amount, ledger.Each(rule, allowed.Measure));
    }

    private static Expectation On(LocalDate day) => new(day, day, day);

    private DueState State(UsedAmount amount, LocalDate? expected, bool sure, Measure measure)
    {
        var due = amount.Share >= 1 - 1e-9;
        if (!due && (!sure || (measure != Measure.Days && ledger.Known is null))) return DueState.NotYetKnown;
        if (ledger.Log.BreakOn(today) is not null) return DueState.Waiting;
        if (due) return amount.Share >= 1.5 ? DueState.Overdue : DueState.Due;
        if (measure != Measure.Days && ledger.Pace.QuietSince is not null) return DueState.Waiting;
        return expected <= today.PlusDays(SoonDays) ? DueState.Soon : DueState.Done;
    }

    private IEnumerable<string> Because(ServiceRule rule, Anchor anchor, Interval allowed, DueState state, bool sure)
    {
        yield return sure
            ? anchor.Says
            : $"Nobody has told me when it was last done, so I count from {Dates.Say(anchor.Day)}, the first day I know of; it may be due already.";
        if (ledger.Log.BreakOn(today) is { } rest)
        {
            yield return rest.Until is { } until ? $"You are not riding till {Dates.Say(until)}." : "You are not riding till further notice.";
        }
        else if (allowed.Measure != Measure.Days && ledger.Pace.QuietSince is { } quiet)
        {
            yield return $"No ride is logged since {Dates.Say(quiet)}, so I take it that the bike rests.";
        }
        else if (allowed.Measure != Measure.Days && allowed.Amount > 0)
        {
            yield return ledger.Known is null ? "I don't know yet how much you ride." : PlanWords.PaceOf(ledger.Pace, ledger.Log.Pace);
        }

        if (state != DueState.NotYetKnown && allowed.Measure != Measure.Days && ledger.Known is not null)
        {
            foreach (var sooner in rule.Sooner)
            {
                yield return $"A {sooner.Weather} day counts {PlanWords.Number(sooner.Factor)} times.";
            }
        }
    }
}
