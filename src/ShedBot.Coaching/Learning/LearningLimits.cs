using System.Collections.Immutable;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Coaching.Learning;

/// <summary>How far a club lets counted cases move its rules.</summary>
/// <remarks>The sample size is theirs who advise 10 to 30 (Heckerman's tutorial of 1995, from memory); the rest is our own choice.</remarks>
/// <param name="MostFactor">The most that the odds of a cause may be multiplied or divided by, 1 to 10.</param>
/// <param name="WordSteps">How many words up or down the scale a strength or a repair's chance may go from its own word, 0 to 6.</param>
/// <param name="LeastCases">So many mended cases must bear on a target before it moves, 1 or more.</param>
/// <param name="LeastMembers">They must come from so many members, 1 or more.</param>
/// <param name="SampleSize">The rules' own word counts like so many cases: of each complaint for the odds, of each link or repair for its chance. Above 0.</param>
/// <param name="FadePerMonth">What a case counts for after 30 days, and so on for each 30 days more, in (0, 1].</param>
/// <param name="MemberShare">The most that one member's cases count for, as a share of all, in (0, 1].</param>
/// <param name="MemberCases">So many cases of one member always count in full, 0 or more.</param>
/// <param name="WaitDays">A mended case counts after so many days, in which it could come back; 0 or more.</param>
/// <param name="LeastChange">Smaller moves of the odds (as a factor) are not worth telling, 1 or more.</param>
/// <param name="LeastStep">The same for chances, as a difference, in [0, 1).</param>
/// <param name="TimesLikelier">
/// Nothing moves unless it makes cases of members that it was not learnt from so many times likelier than the rules do, 1 or more; 0 to let all move without
/// such a test. Where the rules are right it moves something in at most one club in so many.
/// </param>
/// <param name="SureErrors">The gain must also be so many standard errors above none, members being drawn at random; 0 or more. One member alone never comes above 1.</param>
/// <param name="Off">Targets that never move, as <see cref="LearningTarget.Key"/>.</param>
public sealed record LearningLimits(
    double MostFactor = 3,
    int WordSteps = 1,
    double LeastCases = 8,
    int LeastMembers = 3,
    double SampleSize = 30,
    double FadePerMonth = 0.98,
    double MemberShare = 0.05,
    double MemberCases = 2,
    double WaitDays = 14,
    double LeastChange = 1.25,
    double LeastStep = 0.05,
    double TimesLikelier = 20,
    double SureErrors = 2.5,
    ImmutableSortedSet<string>? Off = null)
{
    public static LearningLimits Default { get; } = new();

    public static LearningLimits Of(TeachingSettings club) => Default with { MostFactor = club.MostFactor, MemberShare = club.MemberShare, Off = club.Off };

    public bool IsOff(LearningTarget target) => Off?.Contains(target.Key) == true;
}
