using System.Collections.Immutable;
using ShedBot.Coaching.Trials.Replaying;
using ShedBot.Coaching.Trials.Scoring;
using ShedBot.Coaching.Trials.Worlds;

namespace ShedBot.Coaching.Trials.Telling;

/// <summary>What a trial found, in sentences that a mechanic understands.</summary>
public static class TrialWords
{
    /// <summary>The verdict on one line.</summary>
    public static string Verdict(TrialReport report)
    {
        if (!report.IsSafe) return "This must not go live: something that means stop would not be come upon any more";
        if (report.Scope.IsEmpty) return "No difference: both sets of rules do the same";
        var (right, wrong) = (World(report, TrialWorld.NewRight), World(report, TrialWorld.OldRight));
        return (report.Verdict, right, wrong) switch
        {
            (Scoring.Verdict.Better, _, _) => "Better with the new rules",
            (Scoring.Verdict.Worse, _, _) => "Worse with the new rules",
            (Scoring.Verdict.Mixed, Scoring.Verdict.Better, Scoring.Verdict.Worse) => "Better if the new rules are right, worse if they are not",
            (Scoring.Verdict.Mixed, _, _) => "Better in one thing and worse in another",
            _ when IsSmall(report) => "Too few cases and riders to be sure of a difference",
            _ => "No difference that this trial could see",
        };
    }

    /// <summary>The few sentences that matter, closed cases first.</summary>
    public static ImmutableArray<string> Sentences(TrialReport report, Func<string, string> cause) =>
        [Closed(report.Replay, cause), .. report.Worlds.Select(w => Riders(w, cause))];

    /// <summary>What the figures do not tell.</summary>
    public static ImmutableArray<string> NotTried(TrialReport report)
    {
        var said = ImmutableArray.CreateBuilder<string>();
        if (report.Replay.Cases > 0)
            said.Add("Closed cases were asked and answered under the rules of their day, so they lean to the old rules; and a case that was given up does not tell what it was.");
        if (report.Replay.Unread > 0) said.Add($"{report.Replay.Unread} closed cases could not be read by these rules and are left out.");
        said.Add("Simulated riders show how well rules are used, not whether they are true: only real cases show that.");
        if (!report.Scope.Words) said.Add("The riders picked their trouble from a list, so nothing was misheard. Wording, pictures and order of steps were not tried.");
        else said.Add("How riders were understood was tried with the phrases of the rules only. Wording, pictures and order of steps were not.");
        if (report.Worlds.Any(w => w.Touched.Riders == 0)) said.Add("No kind of rider could be drawn that the change touches by itself, in one of the two worlds or both.");
        if (Precision(report) is { } precision) said.Add(precision);
        if (report.Replay.Next.Cases > 0 && report.Replay.Next.Cases < report.Replay.Cases)
            said.Add($"What would be asked next was looked at for the {report.Replay.Next.Situations} commonest beginnings only, which are those of {report.Replay.Next.Cases} cases.");
        return said.ToImmutable();
    }

    /// <summary>In short: which way each part points.</summary>
    public static string World(TrialWorld world) => world == TrialWorld.NewRight ? "If the new rules are right" : "If the old rules are right";

    /// <summary>Nothing could have made a verdict, however great the difference.</summary>
    private static bool IsSmall(TrialReport report) =>
        report.Replay.Touched < Compared.FewestThatDiffer && report.Worlds.All(w => Math.Max(w.Touched.Riders, w.AtLarge.Riders) < Compared.FewestThatDiffer);

    private static Verdict World(TrialReport report, TrialWorld world) => report.Worlds.FirstOrDefault(w => w.World == world)?.Verdict ?? Scoring.Verdict.NoDifference;

    private static string Closed(ReplayPart replay, Func<string, string> cause)
    {
        if (replay.Cases == 0) return "There are no closed cases yet to try it on.";
        if (replay.Touched == 0) return $"The change cannot touch any of the {Count(replay.Cases, "closed case")}: what was learnt in them has nothing to do with it.";
        var leads = replay.Leads;
        if (leads.Changed == 0) return $"In none of {Count(replay.Cases, "closed case")} would another cause have led ({replay.Touched} could be touched at all).";
        var text = $"{leads.Changed} of {Count(replay.Cases, "closed case")} would have led to another cause; "
            + (leads.Unknown == leads.Changed ? "what it was nobody knows."
            : $"in {leads.ToTruth} of them it was the one that was mended, in {leads.FromTruth} the old rules had it right" + (leads.Unknown > 0 ? $", and of {leads.Unknown} nobody knows." : "."));
        return leads.Commonest.IsEmpty ? text : $"{text} Mostly: {Swap(leads.Commonest[0], cause)}.";
    }

    private static string Riders(WorldPart world, Func<string, string> cause)
    {
        var group = world.Touched.Riders > 0 ? world.Touched : world.AtLarge;
        var who = world.Touched.Riders > 0 ? "simulated riders whom the change touches" : "simulated riders as they come";
        var text = $"{World(world.World)}: {MeasureWords.Word(world.Verdict)}. Of {group.Riders} {who}, {(group.LeadChanged == 0 ? "none" : group.LeadChanged)} would end with another cause in front";
        if (!group.Commonest.IsEmpty) text += $" (mostly {Swap(group.Commonest[0], cause)})";
        return text + $"; mended {Both(group, Measure.Mended)}, cost {Both(group, Measure.Cost)}, questions {Both(group, Measure.Asked)}.";
    }

    private static string Swap(Swap swap, Func<string, string> cause) => $"\"{cause(swap.New)}\" instead of \"{cause(swap.Old)}\"";

    private static string Both(RiderGroup group, Measure measure) => group.Measures.FirstOrDefault(m => m.Measure == measure) is { } m
        ? MeasureWords.Value(measure, m.Old) is var old && MeasureWords.Value(measure, m.New) is var @new && old == @new ? $"{old} both" : $"{MeasureWords.Value(measure, m.Old)} before and {@new} after"
        : "not known";

    private static string? Precision(TrialReport report)
    {
        var costs = report.Worlds.SelectMany(w => new[] { w.Touched, w.AtLarge }).SelectMany(g => g.Measures).Where(m => m is { Measure: Measure.Cost, Pairs: > 0 }).ToList();
        return costs.Count == 0 ? null
            : $"With so few riders a difference in cost of less than about {Count((int)Math.Max(1, Math.Ceiling(costs.Max(c => c.Precision))), "minute")} a case could not be told from none.";
    }

    private static string Count(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";
}
