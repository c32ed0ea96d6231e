using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Speaking;

namespace ShedBot.Coaching.Logbook;

/// <summary>What is said with the picture of a timeline, or in its place.</summary>
public static class TimelineCards
{
    /// <summary>All that the picture shows.</summary>
    public static Card Whole(Timeline timeline) => timeline.Rows.IsEmpty
        ? new Card(timeline.Title, [Say.Text(timeline.Caption)], [])
        : new Card($"{timeline.Title}, {timeline.Days}", [new ListBlock("", timeline.Words), .. Caption(timeline)], []);

    /// <summary>For below a picture whose description says it all.</summary>
    public static Card Beside(Timeline timeline, Ways ways) => new(
        $"{timeline.Title}, {timeline.Days}", [.. Caption(timeline), Say.Text($"All of it in words: {ways.Whole}")], []);

    /// <summary>The picture in words for those who do not see it, as far as there is room.</summary>
    /// <param name="most">Characters; 200 or more.</param>
    /// <returns>The words, and whether they are all.</returns>
    public static (string Words, bool Whole) Describe(Timeline timeline, int most)
    {
        const string Rest = "The rest is told below the picture.";
        ImmutableArray<string> parts = [$"{timeline.Title}, {timeline.Days}", .. timeline.Words];
        var whole = Sentences(parts) + (timeline.Caption.Length > 0 ? " " + timeline.Caption : "");
        if (whole.Length <= most) return (whole, true);
        // The least pressing come last.
        while (parts.Length > 1 && Sentences(parts).Length + Rest.Length + 1 > most) parts = parts.RemoveAt(parts.Length - 1);
        return (CleanText.OneLine($"{Sentences(parts)} {Rest}", most), false);
    }

    private static string Sentences(IEnumerable<string> parts) => string.Join(' ', parts.Select(p => p + "."));

    private static ImmutableArray<CardBlock> Caption(Timeline timeline) => timeline.Caption.Length > 0 ? [Say.Text(timeline.Caption)] : [];
}
