using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Speaking;

namespace ShedBot.Coaching.Learning;

/// <summary>What learning says to moderators. Cards without options: the place that shows them adds what can be done.</summary>
public static class LearningCards
{
    /// <summary>More would not be read at once; the rest is counted.</summary>
    public const int MostShown = 12;

    public static Card Of(LearningReport report)
    {
        if (report.Moves.IsEmpty) return Nothing(report);
        var blocks = ImmutableArray.CreateBuilder<CardBlock>();
        blocks.Add(Say.Text($"From {Cases(report)}. Each line is one number that would move; nothing else would."));
        var shown = report.Moves.Take(MostShown).ToList();
        blocks.AddRange(Say.List("How common causes are", shown.Where(m => m.Target is OddsTarget).Select(m => m.Says)));
        blocks.AddRange(Say.List("How often causes show", shown.Where(m => m.Target is LinkTarget).Select(m => m.Says)));
        blocks.AddRange(Say.List("How often repairs help", shown.Where(m => m.Target is MendTarget).Select(m => m.Says)));
        if (report.Moves.Length > shown.Count) blocks.Add(Say.Text($"And {LearningWords.Of(report.Moves.Length - shown.Count, "smaller move", "smaller moves")}."));
        blocks.AddRange(Tests(report));
        blocks.Add(Say.Text(
            "Counts are shared out where a case leaves its cause open, old cases count for a little less, and one member's for a share at most: so they need not be whole. "
            + "Cases that ended without a proof blame nothing. Try it before it goes live."));
        return new Card($"{LearningWords.Of(report.Moves.Length, "number", "numbers")} could move", blocks.ToImmutable(), []);
    }

    private static Card Nothing(LearningReport report) => report.Tests.IsEmpty
        ? new Card(
            "Nothing to learn yet",
            [Say.Text($"From {Cases(report)}. What bears on any one rule is too little, comes from too few members, or agrees with the rules.")],
            [])
        : new Card(
            "Nothing sure enough to learn",
            [Say.Text($"From {Cases(report)}. By the counts some numbers would move, but none is proved, so all stay as they are."), .. Tests(report)],
            []);

    /// <summary>How what was counted stood the test; what is held back among it.</summary>
    public static IEnumerable<CardBlock> Tests(LearningReport report) => Say.List("Tried on cases kept aside", report.Tests.Select(t => t.Says));

    private static string Cases(LearningReport report) =>
        $"{LearningWords.Of(report.Cases, "closed case", "closed cases")} of {LearningWords.Of(report.Members, "member", "members")}, {report.Mended} of them mended and stayed so";
}
