using System.Globalization;
using BenchmarkDotNet.Running;
using ShedBot.Benchmarks.Clubs;
using ShedBot.Benchmarks.Deciding;
using ShedBot.Benchmarks.Keeping;
using ShedBot.Benchmarks.Loading;
using ShedBot.Benchmarks.Trying;

switch (args)
{
    case ["memory"]:
        Kept.Print();
        break;
    case ["processor"]:
        Spent.Print([1, 10]);
        break;
    case ["growth"]:
        await Growth.PrintAsync();
        break;
    case ["trial", var cases, var full]:
        ClosedCases.Print(int.Parse(cases, CultureInfo.InvariantCulture), int.Parse(full, CultureInfo.InvariantCulture));
        break;
    case ["publish", var runs]:
        await PublishToFirstUse.PrintAsync(int.Parse(runs, CultureInfo.InvariantCulture));
        break;
    case ["clubs", var clubs, var turns]:
        await ThousandClubs.PrintAsync(int.Parse(clubs, CultureInfo.InvariantCulture), int.Parse(turns, CultureInfo.InvariantCulture));
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
        break;
}
