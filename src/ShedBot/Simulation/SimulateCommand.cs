using System.CommandLine;
using System.Globalization;
using ShedBot.Coaching;
using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Understanding;
using ShedBot.Rules;
using ShedBot.Simulation.Learning;
using ShedBot.Simulation.Report;
using ShedBot.Terminal;

namespace ShedBot.Simulation;

/// <summary><c>simulate</c>: invented riders, drawn from the rules, go through the coach and through what it is measured against.</summary>
internal static class SimulateCommand
{
    public const string Name = "simulate";

    private const int UsualRiders = 500, MostRiders = 1_000_000, UsualSeed = 1;

    public static Command Create()
    {
        var riders = Ranged("--riders", "N", UsualRiders, 1, MostRiders, "How many riders to draw.");
        var seed = new Option<int>("--seed") { HelpName = "S", DefaultValueFactory = _ => UsualSeed, Description = "The same seed, rules and options give the same table." };
        var wrong = Chance("--wrong", "The chance that any answer is replaced by another one, on top of the slips that the rules expect.");
        var unsure = Chance("--unsure", "The chance of 'not sure' to any question. Without it: what the rules say of each check.");
        var pick = new Option<bool>("--pick") { Description = "Riders pick their complaint from a list instead of telling it in words: leaves out what is misheard." };
        var complaint = new Option<string?>("--complaint") { HelpName = "ID", Description = "Only riders with this complaint." };
        var fault = new Option<string?>("--fault") { HelpName = "ID", Description = "Only bikes with this fault, and with no other." };
        var confusion = new Option<bool>("--confusion") { Description = "Give every fault its equal share of the riders, alone on the bike, and tell what each was taken for." };
        var json = new Option<bool>("--json") { Description = "One JSON object instead of tables." };
        var picture = new Option<string?>("--picture") { HelpName = "FILE", Description = "Draw how far beliefs could be taken at their word (.png or .svg)." };
        var talk = new Option<int?>("--talk") { HelpName = "NUMBER", Description = "Only the talk of this rider, a line a turn: the riders of a run are numbered from 0." };
        var rules = RulesFolder.Option();
        var command = new Command(
            Name,
            "Invented riders, drawn from the rules, go through the coach: how often the right cause, how many questions, minutes and cost, against a fixed "
            + "order of repairs and against chance. It measures how well the coach uses the rules, not how true the rules are.")
        { riders, seed, wrong, unsure, pick, complaint, fault, confusion, json, picture, talk, rules };
        command.Subcommands.Add(StudyCommand.Create());
        command.Subcommands.Add(TrialCommand.Create());
        command.SetAction((parse, ct) => RunAsync(
            new RunPlan(
                parse.GetValue(riders),
                parse.GetValue(seed),
                new Habits(parse.GetValue(wrong) ?? 0, parse.GetValue(unsure), parse.GetValue(pick)),
                new RidersWanted(parse.GetValue(complaint), parse.GetValue(fault)),
                parse.GetValue(confusion)),
            parse.GetValue(rules), new Shown(parse.GetValue(json), parse.GetValue(picture), parse.GetValue(talk)), ct));
        return command;
    }

    private static async Task<int> RunAsync(RunPlan plan, string? folder, Shown shown, CancellationToken ct)
    {
        if (RulesFolder.Load(folder, Console.Error) is not { } knowledge) return ExitCodes.RulesRefused;
        if (Unknown(knowledge, plan.Wanted) is { } unknown)
        {
            await Console.Error.WriteLineAsync(unknown);
            return ExitCodes.InputHasErrors;
        }

        try
        {
            var options = new CoachOptions();
            var coach = new Coach(knowledge, Listener.For(knowledge), options);
            await using var output = TextOut.Standard();
            if (shown.Talk is { } number)
            {
                foreach (var line in Run.Talk(coach, plan, number)) await output.WriteLineAsync(line);
                return ExitCodes.Fine;
            }

            var summary = Summary.Of(knowledge, options.HazardLimit, plan, Run.All(coach, options, plan, Tell(plan.Riders), ct));
            await output.WriteAsync(shown.Json ? SummaryJson.Of(summary) + "\n" : SummaryText.Of(summary, Again(plan)));
            if (shown.Picture is { } picture) CalibrationPicture.Save(summary, picture);
            return ExitCodes.Fine;
        }
        catch (Exception e) when (e is NoSuchRiderException or IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync(e.Message);
            return ExitCodes.InputHasErrors;
        }
    }

    /// <param name="Talk">The number of the one rider whose talk is shown instead of the table; null for the table.</param>
    private sealed record Shown(bool Json, string? Picture, int? Talk);

    /// <summary>The command that gives this table again.</summary>
    public static string Again(RunPlan plan)
    {
        var text = string.Create(CultureInfo.InvariantCulture, $"simulate --riders {plan.Riders} --seed {plan.Seed}");
        if (plan.Habits.Wrong > 0) text += string.Create(CultureInfo.InvariantCulture, $" --wrong {plan.Habits.Wrong}");
        if (plan.Habits.Unsure is { } unsure) text += string.Create(CultureInfo.InvariantCulture, $" --unsure {unsure}");
        if (plan.Habits.PicksComplaint) text += " --pick";
        if (plan.Wanted.Complaint is { } complaint) text += $" --complaint {complaint}";
        if (plan.Wanted.Fault is { } fault) text += $" --fault {fault}";
        return plan.PerFault ? text + " --confusion" : text;
    }

    /// <summary>Tells on standard error how far it is, every tenth of the way.</summary>
    private static Action<int> Tell(int riders)
    {
        var step = Math.Max(50, riders / 10);
        return done =>
        {
            if (done % step == 0) Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{done} of {riders} riders"));
        };
    }

    private static string? Unknown(KnowledgeBase knowledge, RidersWanted wanted)
    {
        if (wanted.Complaint is { } complaint && !knowledge.Complaints.ContainsKey(complaint))
            return $"No complaint is called '{complaint}'. There are: {string.Join(", ", knowledge.Complaints.Keys)}.";
        return wanted.Fault is { } fault && !knowledge.Model.Faults.Any(f => f.Id == fault)
            ? $"No fault is called '{fault}'. There are: {string.Join(", ", knowledge.Model.Faults.Select(f => f.Id))}."
            : null;
    }

    private static Option<int> Ranged(string name, string help, int usual, int least, int most, string description)
    {
        var option = new Option<int>(name) { HelpName = help, DefaultValueFactory = _ => usual, Description = $"{description} {least} to {most}." };
        option.Validators.Add(result =>
        {
            if (result.Tokens.Count > 0 && int.TryParse(result.Tokens[0].Value, NumberStyles.Integer, CultureInfo.InvariantCulture, out var given) && (given < least || given > most))
                result.AddError(string.Create(CultureInfo.InvariantCulture, $"{name} must be {least} to {most}; {given} was given."));
        });
        return option;
    }

    private static Option<double?> Chance(string name, string description)
    {
        var option = new Option<double?>(name) { HelpName = "P", Description = $"{description} 0 to 1." };
        option.Validators.Add(result =>
        {
            if (result.Tokens.Count > 0 && double.TryParse(result.Tokens[0].Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var given) && given is not (>= 0 and <= 1))
                result.AddError(string.Create(CultureInfo.InvariantCulture, $"{name} must be 0 to 1; {given} was given."));
        });
        return option;
    }
}
