using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Trials.Replaying;
using ShedBot.Coaching.Trials.Safety;
using ShedBot.Coaching.Trials.Worlds;

namespace ShedBot.Coaching.Trials;

/// <summary>Tries new rules beside the old ones before they go live. Pure: the same rules, cases and riders give the same report, on any machine.</summary>
public static class Trial
{
    /// <summary>All of it.</summary>
    /// <param name="cases">The club's closed cases, in any order.</param>
    /// <param name="progress">Told how far it is, in [0, 1], never less than before.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static TrialReport Of(
        RulesPair rules, IEnumerable<ClosedCase> cases, CoachOptions options, RidersTried riders, IProgress<double>? progress, CancellationToken ct)
    {
        var meter = new TrialMeter(progress);
        var scope = TrialScopes.Of(rules);
        var replay = new Replay(rules, options).Of(cases, skip: true, meter.Between(0, 0.3), ct);
        var coaches = new TrialCoaches(rules, options, scope.Words);
        var ridden = new RiderTrial(rules, scope, coaches, riders);
        var count = meter.Steps(0.3, 0.85, 2 * riders.Riders);
        WorldPart[] worlds = [ridden.Of(TrialWorld.NewRight, count, ct), ridden.Of(TrialWorld.OldRight, count, ct)];
        var safety = new SafetyTrial(rules, coaches, options, riders).Of(meter.Steps(0.85, 1, SafetyTrial.States(rules).Length), ct);
        meter.Tell(1);
        return new TrialReport(rules.Old.Version, rules.New.Version, scope, replay, [.. worlds], safety);
    }

    /// <summary>The closed cases alone.</summary>
    /// <inheritdoc cref="Of"/>
    public static ReplayPart Replay(RulesPair rules, IEnumerable<ClosedCase> cases, CoachOptions options, IProgress<double>? progress, CancellationToken ct) =>
        new Replay(rules, options).Of(cases, skip: true, new TrialMeter(progress).Between(0, 1), ct);
}
