using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Speaking;
using ShedBot.Coaching.Trials.Replaying;
using ShedBot.Coaching.Trials.Scoring;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Trials.Telling;

/// <summary>A report as a card: the verdict, the few lines that matter and what was not tried; and, for whoever asks, the figures old and new side by side.</summary>
public static class TrialCards
{
    /// <param name="old">For names only, as is <paramref name="new"/>; what neither knows is shown by its id.</param>
    public static Card Of(TrialReport report, KnowledgeBase old, KnowledgeBase @new)
    {
        string Cause(string id) => Causes(id, old, @new);
        return new Card(
            TrialWords.Verdict(report),
            [
                .. Say.List("What would be lost", report.SafetyLost.Select(Say.Sentence)),
                .. TrialWords.Sentences(report, Cause).Select(Say.Text),
                .. Next(report.Replay.Next, old, @new),
                .. Stopped(report),
                .. Say.List("What was not tried", TrialWords.NotTried(report)),
            ],
            []);
    }

    /// <summary>All that was measured, old and new side by side.</summary>
    /// <param name="old">For names only, as is <paramref name="new"/>; what neither knows is shown by its id.</param>
    public static ImmutableArray<CardBlock> Figures(TrialReport report, KnowledgeBase old, KnowledgeBase @new) => [.. Figures(report), .. Stops(report, old, @new)];

    /// <summary>What the picture shows, in words.</summary>
    public static string Describe(TrialReport report) => string.Join(' ',
        new[] { TrialWords.Verdict(report) + "." }.Concat(Groups(report).SelectMany(g => new[] { g.Heading + ":" }.Concat(g.Measures.Where(m => Measures.Counts(m.Measure)).Select(m => MeasureWords.Line(m) + ".")))));

    /// <summary>The groups of cases and riders whose figures are told, each with its heading.</summary>
    public static ImmutableArray<(string Heading, ImmutableArray<Compared> Measures)> Groups(TrialReport report) =>
    [
        .. report.Replay.Points.Where(p => p.At == TrialPoint.BeforeRepair && p.Measures.Any(m => m.Pairs > 0))
            .Select(p => ($"{p.Measures[0].Pairs} closed cases, before the first repair", p.Measures)),
        .. report.Worlds.SelectMany(w => Groups(w)),
    ];

    private static IEnumerable<(string Heading, ImmutableArray<Compared> Measures)> Groups(WorldPart world)
    {
        var right = TrialWords.World(world.World);
        if (world.Touched.Riders > 0) yield return ($"{right}, {world.Touched.Riders} riders whom it touches", world.Touched.Measures);
        if (world.AtLarge.Riders > 0) yield return ($"{right}, {world.AtLarge.Riders} riders as they come", world.AtLarge.Measures);
    }

    private static IEnumerable<CardBlock> Figures(TrialReport report) =>
        Groups(report).SelectMany(g => Say.List(g.Heading, g.Measures.Where(m => m.Pairs > 0).Select(MeasureWords.Line)));

    private static IEnumerable<CardBlock> Next(NextSteps next, KnowledgeBase old, KnowledgeBase @new)
    {
        if (next.Cases == 0) yield break;
        yield return Say.Text(next.Changed == 0
            ? $"Right after the complaint the same would be asked in all of the {next.Cases} cases that were looked at."
            : $"Right after the complaint something else would be asked in {next.Changed} of {next.Cases} cases"
                + $" (mostly {Step(next.Commonest[0].New, old, @new)} instead of {Step(next.Commonest[0].Old, old, @new)}).");
    }

    /// <summary>In a sentence, what <see cref="Stops"/> tells one by one.</summary>
    private static IEnumerable<CardBlock> Stopped(TrialReport report)
    {
        var (riders, old, now) = (report.Safety.States.Sum(s => s.Riders), report.Safety.States.Sum(s => s.OldStopped), report.Safety.States.Sum(s => s.NewStopped));
        if (riders > 0) yield return Say.Text($"Of {riders} simulated riders whose bike shows something that means 'do not ride', {old} are told so in time now, and {now} with the change.");
    }

    private static IEnumerable<CardBlock> Stops(TrialReport report, KnowledgeBase old, KnowledgeBase @new) => Say.List(
        "Riders whose bike truly shows what means stop, and how many are told so before it is mended or handed over",
        report.Safety.States.Where(s => s.Riders > 0).Select(s =>
        {
            var finding = old.Findings.GetValueOrDefault(s.Finding) ?? @new.Findings.GetValueOrDefault(s.Finding);
            var state = finding?.States.FirstOrDefault(t => t.Id == s.State)?.Says ?? s.State;
            return $"{Say.Capital(finding?.Means ?? s.Finding)}, \"{state}\": old {s.OldStopped} of {s.Riders}, new {s.NewStopped} of {s.Riders}";
        }));

    private static string Causes(string id, KnowledgeBase old, KnowledgeBase @new) =>
        id == "nothing" ? "no cause" : (@new.Faults.GetValueOrDefault(id) ?? old.Faults.GetValueOrDefault(id))?.Is ?? (id == KnowledgeBase.SomethingElse ? "something that the rules do not list" : id);

    private static string Step(string step, KnowledgeBase old, KnowledgeBase @new) => step.Split(':') switch
    {
        ["check", var id] => $"\"{(@new.Checks.GetValueOrDefault(id) ?? old.Checks.GetValueOrDefault(id))?.Ask ?? id}\"",
        ["fact", var id] => $"\"{(@new.Facts.GetValueOrDefault(id) ?? old.Facts.GetValueOrDefault(id))?.Ask ?? id}\"",
        ["repair", var id] => $"the repair \"{(@new.Repairs.GetValueOrDefault(id) ?? old.Repairs.GetValueOrDefault(id))?.Does ?? id}\"",
        _ => "a helper",
    };
}
