using System.CommandLine;
using System.Globalization;
using Microsoft.Extensions.Logging.Abstractions;
using ShedBot.Cards;
using ShedBot.Coaching;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Trials;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;
using ShedBot.Pictures;
using ShedBot.Rules;
using ShedBot.Terminal;

namespace ShedBot.Simulation;

/// <summary><c>simulate trial</c>: a club's own rules from a file, tried on simulated riders beside the rules without them, as a club's trial is.</summary>
internal static class TrialCommand
{
    private const int Width = 100;

    private static readonly Argument<string> Changed = new("FILE") { Description = "A club's own rules, as 'rules file out' writes them." };

    private static readonly Option<int> Riders = new("--riders") { HelpName = "N", DefaultValueFactory = _ => new RidersTried().Riders, Description = "Riders in each of the two worlds. 4 to 20000." };

    private static readonly Option<int> Stops = new("--stops") { HelpName = "N", DefaultValueFactory = _ => new RidersTried().Stops, Description = "Riders for each finding that means 'stop riding'. 0 to 200." };

    private static readonly Option<int> Seed = new("--seed") { HelpName = "S", DefaultValueFactory = _ => new RidersTried().Seed, Description = "The same seed, rules and numbers give the same report." };

    private static readonly Option<string?> Report = new("--report") { HelpName = "FILE", Description = "Keep the report as JSON." };

    private static readonly Option<string?> Picture = new("--picture") { HelpName = "FILE", Description = "Draw it (.png)." };

    public static Command Create()
    {
        var rules = RulesFolder.Option();
        var command = new Command("trial", "Tries a club's own rules on simulated riders beside the rules without them, and tells in words what would change. No closed cases are in it.")
        {
            Changed, Riders, Stops, Seed, Report, Picture, rules,
        };
        Within(Riders, 4, 20_000);
        Within(Stops, 0, 200);
        command.SetAction((parse, ct) => RunAsync(
            parse.GetValue(Changed)!, new RidersTried(parse.GetValue(Riders), parse.GetValue(Seed), parse.GetValue(Stops)), parse.GetValue(rules),
            parse.GetValue(Report), parse.GetValue(Picture), ct));
        return command;
    }

    private static async Task<int> RunAsync(string file, RidersTried riders, string? folder, string? report, string? picture, CancellationToken ct)
    {
        if (RulesFolder.LoadBase(folder, Console.Error) is not { } under) return ExitCodes.RulesRefused;
        try
        {
            if (Laid(under, RuleText.FromText(file, await File.ReadAllTextAsync(file, ct)), Console.Error) is not { } changed) return ExitCodes.RulesRefused;
            var tried = await Task.Run(() => Trial.Of(new RulesPair(under.Knowledge!, changed), [], new CoachOptions(), riders, null, ct), ct);
            var card = TrialCards.Of(tried, under.Knowledge!, changed);
            await using (var output = TextOut.Standard())
            {
                foreach (var line in card.Blocks.Concat(TrialCards.Figures(tried, under.Knowledge!, changed)).SelectMany(b => PlainBlocks.Lines(b, Width).Prepend("")).Prepend(card.Title)) await output.WriteLineAsync(line);
            }

            if (report is not null) await File.WriteAllTextAsync(report, TrialReportJson.Write(tried) + "\n", ct);
            return picture is null || await PaintAsync(tried, picture, ct) ? ExitCodes.Fine : ExitCodes.InputHasErrors;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync(e.Message);
            return ExitCodes.InputHasErrors;
        }
    }

    /// <returns>Null where they do not fit, or are less safe; <paramref name="errors"/> says why.</returns>
    private static KnowledgeBase? Laid(RuleBase under, RuleText text, TextWriter errors)
    {
        var read = Layer.Read(text);
        var load = read.Layer is { } layer ? LayeredRules.Load(under, layer) : null;
        foreach (var problem in load?.Problems ?? read.Problems) errors.WriteLine(problem);
        return load?.Knowledge;
    }

    private static async Task<bool> PaintAsync(TrialReport tried, string path, CancellationToken ct)
    {
        if (new TrialPictures(PlainFace.UsualFolders, NullLogger.Instance).Paint(tried, PictureLook.Light) is { } png)
        {
            await File.WriteAllBytesAsync(path, [.. png], ct);
            return true;
        }

        await Console.Error.WriteLineAsync("It could not be painted: is there a common typeface, such as DejaVu Sans, on this machine?");
        return false;
    }

    private static void Within(Option<int> option, int least, int most) => option.Validators.Add(result =>
    {
        if (result.Tokens.Count > 0 && int.TryParse(result.Tokens[0].Value, NumberStyles.Integer, CultureInfo.InvariantCulture, out var given) && (given < least || given > most))
            result.AddError(string.Create(CultureInfo.InvariantCulture, $"{option.Name} must be {least} to {most}; {given} was given."));
    });
}
