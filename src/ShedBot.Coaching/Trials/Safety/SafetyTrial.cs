using System.Collections.Immutable;
using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Coaching.Simulating.Rides;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Trials.Safety;

/// <summary>Whether what means 'stop' under the old rules is still come upon under the new ones.</summary>
internal sealed class SafetyTrial(RulesPair rules, TrialCoaches coaches, CoachOptions options, RidersTried tried)
{
    /// <summary>Where the new rules stop fewer riders, so many times the riders are looked at before anything is said.</summary>
    private const int LookAgain = 3;

    /// <summary>Seeds of these riders are kept apart from those of the rest.</summary>
    private const int Apart = 7_000_000;

    public static ImmutableArray<(string Finding, string State)> States(RulesPair rules) =>
    [
        .. new[] { rules.Old, rules.New }.SelectMany(k => k.Findings.Values)
            .SelectMany(f => f.States.Where(s => s.StopRiding is not null).Select(s => (f.Id, s.Id)))
            .Distinct().Order(),
    ];

    /// <param name="done">Told of each state.</param>
    public SafetyPart Of(Action done, CancellationToken ct)
    {
        var states = ImmutableArray.CreateBuilder<StopState>();
        foreach (var (finding, state) in States(rules))
        {
            states.Add(Look(finding, state, ct));
            done();
        }

        var (phrases, unheard) = Unheard(ct);
        return new SafetyPart(states.ToImmutable(), phrases, phrases - unheard.Length, [.. states.Where(s => s.IsLost).Select(Say), .. unheard, .. Questions()]);
    }

    private string Say(StopState s)
    {
        var finding = rules.Old.Findings.GetValueOrDefault(s.Finding) ?? rules.New.Findings[s.Finding];
        return $"{finding.Means}: \"{finding.States.First(t => t.Id == s.State).Says}\" " + (s.NewTells
            ? $"stopped {s.OldStopped} of {s.Riders} simulated riders who have it, and would stop none"
            : "means stop riding, and no question would come upon it any more");
    }

    private StopState Look(string finding, string state, CancellationToken ct)
    {
        var found = new StopState(finding, state, Reach.Tells(rules.Old, finding, state, options), Reach.Tells(rules.New, finding, state, options), 0, 0, 0);
        var world = Reach.Stop(rules.Old, finding, state) is not null ? rules.Old : rules.New;
        for (var round = 0; round < LookAgain && (round == 0 || found.NewStopped < found.OldStopped); round++)
        {
            foreach (var pair in Ride(world, $"{finding}/{state}", round * tried.Stops, ct))
            {
                found = found with
                {
                    Riders = found.Riders + 1,
                    OldStopped = found.OldStopped + (pair.Old.Ending == Ending.StoppedRightly ? 1 : 0),
                    NewStopped = found.NewStopped + (pair.New.Ending == Ending.StoppedRightly ? 1 : 0),
                };
            }
        }

        return found;
    }

    private IEnumerable<RidePair> Ride(KnowledgeBase world, string shows, int first, CancellationToken ct)
    {
        var pairs = new RidePair?[tried.Stops];
        Parallel.For(0, pairs.Length, new ParallelOptions { CancellationToken = ct, MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            try
            {
                pairs[i] = coaches.Coach(world, new RiderDraw(world, new RidersWanted(Shows: shows)).Draw(tried.Seed, Apart + first + i));
            }
            catch (NoSuchRiderException)
            {
                // No bike shows it under these rules, so nobody can miss it.
            }
        });
        return pairs.OfType<RidePair>();
    }

    /// <summary>Phrases that told of an emergency under the old rules and do not under the new ones.</summary>
    private (int Phrases, ImmutableArray<string> Unheard) Unheard(CancellationToken ct)
    {
        var (old, @new) = (Listener.For(rules.Old), Listener.For(rules.New));
        var unheard = ImmutableArray.CreateBuilder<string>();
        var heard = 0;
        foreach (var emergency in rules.Old.Emergencies.Values)
        {
            foreach (var phrase in emergency.RidersSay)
            {
                ct.ThrowIfCancellationRequested();
                if (Told(rules.Old, old, phrase) is not { } before) continue;
                heard++;
                if (Told(rules.New, @new, phrase) is not { } after || (before.EndsCoaching && !after.EndsCoaching))
                    unheard.Add($"\"{phrase}\" would not be heard as an emergency any more ({emergency.Called})");
            }
        }

        return (heard, unheard.ToImmutable());
    }

    private static EmergencyRule? Told(KnowledgeBase knowledge, Listener listener, string phrase) =>
        listener.Understand(phrase).Emergency is { } id ? knowledge.Emergencies.GetValueOrDefault(id) : null;

    /// <summary>The question before hands-on work: what it points at, and the checks and dangers it stands before.</summary>
    private IEnumerable<string> Questions()
    {
        foreach (var danger in rules.Old.Triage.Dangers.Where(d => rules.New.Triage.Dangers.All(n => n.Emergency != d.Emergency)))
            yield return $"the question before hands-on work would not offer \"{danger.Says}\" any more";
        foreach (var check in rules.Old.Checks.Values.Where(c => c.HandsOn && rules.New.Checks.TryGetValue(c.Id, out var n) && !n.HandsOn))
            yield return $"\"{check.Ask}\" would be asked without the question whether it is safe to put hands on";
    }
}
