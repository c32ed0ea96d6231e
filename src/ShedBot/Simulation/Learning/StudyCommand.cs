using System.CommandLine;
using System.Globalization;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Loading;
using ShedBot.Rules;
using ShedBot.Terminal;

namespace ShedBot.Simulation.Learning;

/// <summary><c>simulate learning</c>: what learning from closed cases is worth, on simulated clubs whose bikes differ from the rules.</summary>
internal static class StudyCommand
{
    private static readonly Option<int[]> Seeds = new("--seeds")
    {
        HelpName = "S",
        DefaultValueFactory = _ => [1, 2, 3],
        AllowMultipleArgumentsPerToken = true,
        Description = "One simulated club for each seed.",
    };

    private static readonly Option<int[]> Stages = new("--cases")
    {
        HelpName = "N",
        DefaultValueFactory = _ => [50, 200, 1000],
        AllowMultipleArgumentsPerToken = true,
        Description = "After how many cases to measure, rising.",
    };

    private static readonly Option<int> Riders = new("--riders") { HelpName = "N", DefaultValueFactory = _ => 150, Description = "Fresh riders of each club to measure with." };

    private static readonly Option<double> Spread = new("--spread")
    {
        HelpName = "TIMES",
        DefaultValueFactory = _ => 2.5,
        Description = "How far the true odds of faults lie from the rules: the factor at one standard deviation; 1 for none.",
    };

    private static readonly Option<double> Links = new("--links") { HelpName = "P", DefaultValueFactory = _ => 0.25, Description = "The share of strengths that are a word off in truth." };

    private static readonly Option<double> Wrong = new("--wrong-outcomes") { HelpName = "P", DefaultValueFactory = _ => 0.1, Description = "The share of cases whose outcome is told wrongly." };

    private static readonly Option<double> Hostile = new("--hostile") { HelpName = "P", DefaultValueFactory = _ => 0.1, Description = "The share of cases that one hostile member makes up." };

    private static readonly Option<int> Threads = new("--threads") { HelpName = "N", DefaultValueFactory = _ => 1, Description = "Riders side by side; the numbers do not depend on it." };

    private static readonly Option<string?> Keep = new("--keep")
    {
        HelpName = "FOLDER",
        Description = "Keep the cases of the clubs in this folder, and do not ride them again when they are there.",
    };

    public static Command Create()
    {
        var rules = RulesFolder.Option();
        var command = new Command("learning", "Simulated clubs whose bikes differ from the rules: what learning from their closed cases is worth to fresh riders.")
        {
            Seeds, Stages, Riders, Spread, Links, Wrong, Hostile, Threads, Keep, rules,
        };
        foreach (var positive in new[] { Riders, Threads }) positive.Validators.Add(r => Refuse(r, Number(r) is < 1, "1 or more"));
        Spread.Validators.Add(r => Refuse(r, Number(r) is < 1 or > 10, "1 to 10"));
        foreach (var share in new[] { Links, Wrong, Hostile }) share.Validators.Add(r => Refuse(r, Number(r) is < 0 or > 1, "0 to 1"));
        command.SetAction((parse, ct) => RunAsync(
            new StudyPlan(
                [.. parse.GetValue(Seeds)!], [.. parse.GetValue(Stages)!.Order()], parse.GetValue(Riders),
                new WorldSpread(Math.Log(parse.GetValue(Spread)), parse.GetValue(Links)),
                new ClubHabits(25, parse.GetValue(Wrong), parse.GetValue(Hostile)), parse.GetValue(Threads), parse.GetValue(Keep)),
            parse.GetValue(rules), ct));
        return command;
    }

    private static async Task<int> RunAsync(StudyPlan plan, string? asked, CancellationToken ct)
    {
        if (RulesFolder.Load(asked, Console.Error) is not { } knowledge || RulesFolder.FindOrSay(asked, Console.Error) is not { } folder) return ExitCodes.RulesRefused;
        try
        {
            var files = KnowledgeFolder.Read(folder);
            var study = new LearningStudy(
                learnt => KnowledgeLoader.Load(files, CompileOptions.Default with { Learnt = learnt }).Knowledge!, plan, LearningLimits.Default, Console.Error.WriteLine);
            var results = study.Run(ct);
            await using var output = TextOut.Standard();
            await output.WriteAsync(StudyText.Of(plan, results, knowledge.Version, Again(plan)));
            return ExitCodes.Fine;
        }
        catch (Exception e) when (e is NoSuchRiderException or InvalidDataException or IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync(e.Message);
            return ExitCodes.InputHasErrors;
        }
    }

    private static string Again(StudyPlan plan) => string.Create(
        CultureInfo.InvariantCulture,
        $"simulate learning --seeds {string.Join(' ', plan.Seeds)} --cases {string.Join(' ', plan.Stages)} --riders {plan.Riders} --spread {Math.Exp(plan.Spread.Spread):0.##} --links {plan.Spread.LinksMoved} --wrong-outcomes {plan.Habits.WrongOutcomes} --hostile {plan.Habits.Hostile}");

    private static double? Number(System.CommandLine.Parsing.OptionResult result) =>
        result.Tokens.Count > 0 && double.TryParse(result.Tokens[0].Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static void Refuse(System.CommandLine.Parsing.OptionResult result, bool wrong, string range)
    {
        if (wrong) result.AddError($"{result.Option.Name} must be {range}.");
    }
}
