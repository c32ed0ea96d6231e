using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using ShedBot.Benchmarks.Rules;
using ShedBot.Coaching;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Tests.Trials;
using ShedBot.Coaching.Trials;
using ShedBot.Coaching.Trials.Replaying;
using ShedBot.Coaching.Trials.Safety;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Benchmarks.Trying;

/// <summary>One rule tried on a club's closed cases; beside it in the same run the full computation, which works out what the change cannot touch as well.</summary>
/// <remarks>Not by the benchmark runner: one run takes from seconds to minutes, and what it takes of the processor is told beside the time that passes.</remarks>
internal static class ClosedCases
{
    private const int Warmups = 200;

    private static readonly CoachOptions Options = new();

    /// <param name="count">How many closed cases are tried.</param>
    /// <param name="full">How many of them both ways go through side by side.</param>
    public static void Print(int count, int full)
    {
        var under = RuleBase.Of(ClubRules.Files);
        var cases = MadeCases.Of(under.Knowledge!, count);
        Console.WriteLine("| what is changed | cases | touched | way | time passed | processor time | allocated |");
        Console.WriteLine("| --- | --: | --: | --- | --: | --: | --: |");
        foreach (var (what, layer) in new[] { ("the strength of one sign", ClubEditions.Strength), ("a new cause with its check and repair", ClubEditions.Cause(1)) })
        {
            var rules = new RulesPair(under.Knowledge!, ClubEditions.Over(under, layer));
            Run(rules, cases[..Math.Min(Warmups, count)], skip: false);
            var skipping = Tell(what, rules, cases[..full], skip: true);
            var whole = Tell(what, rules, cases[..full], skip: false);
            if (skipping != whole) throw new InvalidOperationException("What the change cannot touch was worked out, and the report came out otherwise.");
            if (full < count) Tell(what, rules, cases, skip: true);
        }
    }

    private static string Tell(string what, RulesPair rules, ImmutableArray<ClosedCase> cases, bool skip)
    {
        using var process = Process.GetCurrentProcess();
        var (spent, allocated, clock) = (process.TotalProcessorTime, GC.GetTotalAllocatedBytes(), Stopwatch.StartNew());
        var part = Run(rules, cases, skip);
        process.Refresh();
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"| {what} | {part.Cases:N0} | {part.Touched:N0} | {(skip ? "as it is" : "full computation")} | {clock.Elapsed.TotalSeconds:0.0} s | {(process.TotalProcessorTime - spent).TotalSeconds:0.0} s | {(GC.GetTotalAllocatedBytes() - allocated) / 1e6:N0} MB |"));
        return TrialReportJson.Write(new TrialReport("", "", new TrialScope([], [], [], [], [], false, false), part, [], SafetyPart.None));
    }

    private static ReplayPart Run(RulesPair rules, ImmutableArray<ClosedCase> cases, bool skip) => new Replay(rules, Options).Of(cases, skip, null, CancellationToken.None);
}
