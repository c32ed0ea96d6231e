using BenchmarkDotNet.Running;
using ShedBot.Benchmarks.Deciding;
using ShedBot.Benchmarks.Keeping;
using ShedBot.Benchmarks.Loading;

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
    default:
        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
        break;
}
