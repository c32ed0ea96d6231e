using NodaTime;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Service;

/// <summary>How a task stands.</summary>
public enum DueState
{
    /// <summary>Nothing is due within a week.</summary>
    Done,

    /// <summary>Expected within a week.</summary>
    Soon,

    /// <summary>Time to do it.</summary>
    Due,

    /// <summary>Half as far again as it may go, or further; or ridden though it was to be done before.</summary>
    Overdue,

    /// <summary>Too little is known to say: nobody told when it was last done, or how much is ridden.</summary>
    NotYetKnown,

    /// <summary>The bike rests: a break; or, for what is not due by the log, a silence that looks like one.</summary>
    Waiting,
}

/// <summary>One service task of one bike, as it stands today.</summary>
/// <param name="DueKey">Names this very due date for ever: bike, task, what it is counted from, and for what is due once the distance.</param>
/// <param name="Expected">When it falls due, or fell due; null when that cannot be said.</param>
/// <param name="Earliest">By this day it falls due for 1 of 10 such riders; the same as <paramref name="Expected"/> once it fell due.</param>
/// <param name="Latest">By this day it falls due for 9 of 10; null when that cannot be said.</param>
/// <param name="Because">Why it stands so, one to three sentences.</param>
public sealed record PlanItem(
    ServiceRule Rule, string DueKey, DueState State, LocalDate? Expected, LocalDate? Earliest, LocalDate? Latest, UsedAmount Amount, string Because);

/// <summary>How much of what a task allows is used.</summary>
/// <param name="Used">In <paramref name="Measure"/>, weather counted; 0 or more.</param>
/// <param name="Allowed">In the same; 0 for what is to be done before the next ride.</param>
/// <param name="Estimated">True when a part of what is used was not logged but reckoned from the pace.</param>
public sealed record UsedAmount(double Used, double Allowed, Measure Measure, bool Estimated)
{
    /// <summary>How full it is: 1 is due.</summary>
    public double Share => Allowed > 0 ? Used / Allowed : Used > 0 ? double.PositiveInfinity : 1;

    /// <summary>As in "11 of about 14 riding days", "about 12 of 14 riding days", "171 km, due at 150".</summary>
    public string Words => PlanWords.Of(this);
}
