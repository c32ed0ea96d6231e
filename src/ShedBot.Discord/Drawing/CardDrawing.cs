using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Discord.Pictures;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Drawing;

/// <summary>Cards as messages of the platform. Nothing of a card is lost: what does not fit into one message goes on in the next.</summary>
internal static class CardDrawing
{
    /// <summary>One turn's cards as one or more messages, in order. The options of the last card become the controls of the last message; those of earlier cards are over.</summary>
    /// <param name="mark">The id of the frame in the first message, one more in each further one: so a message is recognised later. From 1,000, clear of the ids that the platform gives out itself.</param>
    public static ImmutableArray<Drawn> Draw(IReadOnlyList<Card> cards, CaseId @case, int mark, CardPictures pictures, DrawContext context)
    {
        if (cards.Count == 0) return [];
        var pages = Paged(cards, pictures, (context.Lead?.Length ?? 0) + (context.Footer?.Length ?? 0));
        var controls = AnswerControls.Of(cards[^1], @case, context.WordsButton);
        return
        [
            .. pages.Select((page, i) =>
            {
                var (first, last) = (i == 0, i == pages.Length - 1);
                return Message(
                    cards, page, mark + i, first ? context.Lead : null, first ? context.Mentions : AllowedMentions.None,
                    last ? controls : [], last ? context.Footer : null);
            }),
        ];
    }

    /// <summary>A card without controls, for an answer that only one member sees; the flag for that is the caller's to add. What goes beyond one message is left out, and said so.</summary>
    /// <param name="lead">A line above it, already in the platform's markup; or null.</param>
    /// <param name="pictures">Null: drawings are shown as text.</param>
    public static Drawn Plain(Card card, string? lead = null, CardPictures? pictures = null)
    {
        var pages = Paged([card], pictures, around: lead?.Length ?? 0);
        return Message([card], pages[0], id: null, lead, AllowedMentions.None, [], pages.Length > 1 ? "There is more than fits here." : null);
    }

    /// <summary>Cards in one message, with controls of their own below. What goes beyond one message is left out, and said so.</summary>
    /// <param name="mark">The id of the frame, by which the message is recognised later; null: none.</param>
    /// <param name="lead">A line above it, already in the platform's markup; or null.</param>
    public static Drawn Single(IReadOnlyList<Card> cards, IReadOnlyList<Component> controls, int? mark, string? lead, AllowedMentions mentions)
    {
        var pages = Pages.Of(cards.SelectMany((card, i) => CardPieces.Of(card, null).Select(p => new Placed(i, p))), Count(controls), lead?.Length ?? 0);
        return Message(cards, pages[0], mark, lead, mentions, controls, pages.Length > 1 ? "There is more than fits here." : null);
    }

    private static ImmutableArray<ImmutableArray<Placed>> Paged(IReadOnlyList<Card> cards, CardPictures? pictures, int around)
    {
        var pieces = cards.SelectMany((card, i) => CardPieces.Of(card, pictures).Select(p => new Placed(i, p)));
        return Pages.Of(pieces, Count(AnswerControls.Of(cards[^1], default, words: true)), around);
    }

    private static Drawn Message(
        IReadOnlyList<Card> cards, ImmutableArray<Placed> page, int? id, string? lead, AllowedMentions mentions, IReadOnlyList<Component> controls, string? footer)
    {
        var sketch = new MessageSketch(id);
        if (lead is not null) sketch.Above(lead);
        foreach (var card in page.GroupBy(p => p.Card)) sketch.Frame(card.Select(p => p.Piece), Signals.Colour(cards[card.Key]));
        sketch.End(controls, footer);
        return sketch.Finish(mentions);
    }

    private static int Count(IEnumerable<Component> components) => components.Sum(c => 1 + Count(c.Components ?? []));
}
