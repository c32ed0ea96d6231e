using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using ShedBot.Benchmarks.Rules;
using ShedBot.Coaching.Turns;

namespace ShedBot.Benchmarks.Deciding;

/// <summary>One turn of a talk, from the answer to the card: each measured run is another turn, so the percentiles are over turns.</summary>
[ShortRun(RunStrategy.Monitoring, warmups: 20, runs: 200)]
public class TurnDecision
{
    private const int Turns = 220, Seed = 1;

    private Coach coach = null!;
    private ImmutableArray<RecordedTurn> turns;
    private int next;

    /// <summary>How many times as many rules as the club has.</summary>
    [Params(1, 10)]
    public int RulesTimes { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        coach = ClubRules.CoachOf(RulesTimes);
        turns = RecordedTurns.Of(coach, Turns, Seed);
    }

    [Benchmark]
    public object Turn()
    {
        var turn = turns[next++ % turns.Length];
        return coach.Take(turn.Before, turn.Bike, turn.Incoming, RecordedTurns.Noon);
    }
}
