using System.Diagnostics;
using System.Globalization;
using ShedBot.Benchmarks.Rules;

namespace ShedBot.Benchmarks.Deciding;

/// <summary>What a turn takes of the processor itself, which other work on the machine does not lengthen as it lengthens the time that passes.</summary>
internal static class Spent
{
    private const int Warmups = 10, Turns = 60, Seed = 1;

    public static void Print(IEnumerable<int> rulesTimes)
    {
        Console.WriteLine("| rules | turns | processor time a turn, mean | time passed a turn, mean |");
        Console.WriteLine("| --- | --: | --: | --: |");
        using var process = Process.GetCurrentProcess();
        foreach (var times in rulesTimes)
        {
            var coach = ClubRules.CoachOf(times);
            var turns = RecordedTurns.Of(coach, Turns, Seed);
            foreach (var turn in turns.Take(Warmups)) coach.Take(turn.Before, turn.Bike, turn.Incoming, RecordedTurns.Noon);
            process.Refresh();
            var (spent, passed) = (process.TotalProcessorTime, Stopwatch.StartNew());
            foreach (var turn in turns) coach.Take(turn.Before, turn.Bike, turn.Incoming, RecordedTurns.Noon);
            process.Refresh();
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| x {times} | {Turns} | {(process.TotalProcessorTime - spent).TotalMilliseconds / Turns:0} ms | {passed.Elapsed.TotalMilliseconds / Turns:0} ms |"));
        }
    }
}
