using System.Globalization;
using System.Text.RegularExpressions;
using ShedBot.Coaching.Cards;
using ShedBot.Discord.Drawing;

namespace ShedBot.Discord.Tests.Drawing;

/// <summary>What holds of any cards and the messages that they are drawn as.</summary>
internal static partial class CardLaws
{
    public static void Hold(IReadOnlyList<Card> cards, IReadOnlyList<Drawn> drawn, DrawContext context, int mark)
    {
        Assert.All(drawn, Allowed.Check);
        Assert.Equal(drawn.Select((_, i) => (int?)(mark + i)), drawn.Select(d => Seen.All(d).First(c => c.Type == 17).Id));
        Assert.All(drawn.SkipLast(1), d => Assert.Empty(Seen.OptionIds(d)));
        Assert.All(drawn.Skip(1), d => Assert.Null(d.Body.AllowedMentions!.Users));
        Assert.Equal(cards[^1].Options.OrderBy(o => o.Role).Select(o => o.Id), Seen.OptionIds(drawn[^1]));
        Assert.Equal(context.WordsButton ? 1 : 0, Seen.Buttons(drawn[^1]).Count(b => CustomId.Read(b.CustomId)?.Verb == CustomId.Words));
        AssertInOrder(cards.SelectMany(Words), Seen.Bare(string.Concat(drawn.Select(Seen.Words))));
        AssertNothingCalls(drawn, context);
    }

    /// <summary>Everything that a card says, in the order in which it is to be read.</summary>
    private static IEnumerable<string> Words(Card card)
    {
        yield return card.Title;
        if (card.Progress is { } progress)
        {
            yield return progress.Asked == 0 ? "nothing" : progress.Asked.ToString(CultureInfo.InvariantCulture);
            if (progress.Word is not null) yield return progress.Leading ?? "";
        }

        foreach (var text in card.Blocks.SelectMany(Words)) yield return text;
    }

    private static IEnumerable<string> Words(CardBlock block) => block switch
    {
        TextBlock b => [b.Text],
        CautionBlock b => [b.Word, b.Hazard, b.Consequence, b.Avoid],
        StepsBlock b => b.Steps.SelectMany((s, i) => new[] { (b.First + i).ToString(CultureInfo.InvariantCulture), s.Do, s.Note ?? "" }).Prepend(b.Heading),
        ListBlock b => b.Items.Prepend(b.Heading),
        DrawingBlock b => b.Text.Split('\n'),
        BeliefBlock b => b.Lines.SelectMany(l => new[] { l.Word, l.Cause }),
        _ => throw new InvalidOperationException(block.GetType().Name),
    };

    private static void AssertInOrder(IEnumerable<string> said, string shown)
    {
        var at = 0;
        foreach (var text in said)
        {
            var bare = Seen.Bare(text);
            var found = shown.IndexOf(bare, at, StringComparison.Ordinal);
            Assert.True(found >= 0, $"Lost, or out of order: '{text}'");
            at = found + bare.Length;
        }
    }

    private static void AssertNothingCalls(IReadOnlyList<Drawn> drawn, DrawContext context) =>
        Assert.All(drawn.SelectMany(Seen.Texts).Where(t => t != context.Lead), t => Assert.DoesNotMatch(Call(), t));

    // The forms in which the platform reads a mention; a backslash before it does not stop it.
    [GeneratedRegex("<@[!&]?[0-9]|@everyone|@here", RegexOptions.IgnoreCase)]
    private static partial Regex Call();
}
