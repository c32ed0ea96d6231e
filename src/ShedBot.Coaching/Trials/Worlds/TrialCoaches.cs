using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Coaching.Simulating.Rides;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Trials.Worlds;

/// <summary>A coach under the old rules and one under the new, for the same riders.</summary>
internal sealed class TrialCoaches(RulesPair rules, CoachOptions options, bool words)
{
    /// <summary>Riders tell their trouble in words only where words are on trial; else they pick it, so that what is misheard under both drowns nothing.</summary>
    private readonly Habits habits = new(PicksComplaint: !words);

    private readonly RememberingCoach old = Coach(rules.Old, options), @new = Coach(rules.New, options);

    /// <summary>Turns that had to be worked out so far; all others were remembered.</summary>
    public int TurnsWorkedOut => old.WorkedOut + @new.WorkedOut;

    /// <param name="world">The rules that the rider was drawn from.</param>
    public RidePair Coach(KnowledgeBase world, Rider rider) =>
        new(CoachedRide.Across(old, world, rider, habits), CoachedRide.Across(@new, world, rider, habits));

    private static RememberingCoach Coach(KnowledgeBase knowledge, CoachOptions options) => new(new Coach(knowledge, Listener.For(knowledge), options));
}

/// <summary>The same rider under old and new rules.</summary>
internal sealed record RidePair(Ride Old, Ride New);
