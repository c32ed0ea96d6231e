using System.Globalization;
using System.Text;
using ShedBot.Coaching.Cards;
using ShedBot.Discord.Pictures;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Drawing;

/// <summary>A card's words and drawings in the platform's markup, in order, in pieces of which each fits into a message.</summary>
internal static class CardPieces
{
    /// <summary>A caution up to this size stays whole.</summary>
    private const int MostCaution = 2200, MostCautionBytes = 5500;

    /// <summary>Of a title in the words that stand for a picture; the drawing's own text comes whole or is no picture.</summary>
    private const int MostAltTitle = 200;

    /// <param name="pictures">Null: drawings are shown as text.</param>
    public static IEnumerable<Piece> Of(Card card, CardPictures? pictures)
    {
        var block = 0;
        foreach (var run in TextRuns.Of(Markup.OneLine(card.Title))) yield return new Piece(block, "### " + Markup.SafeLine(run), Heads: true);
        if (card.Progress is { } progress)
        {
            foreach (var run in TextRuns.Of(Markup.OneLine(ProgressLine.Of(progress)))) yield return new Piece(block, "-# " + Markup.SafeLine(run), Heads: true);
        }

        foreach (var part in card.Blocks)
        {
            block++;
            foreach (var piece in Pieces(part, card.Title, pictures)) yield return piece with { Block = block };
        }

        foreach (var answer in AnswerControls.InFull(card)) yield return new Piece(block + 1, answer);
    }

    private static IEnumerable<Piece> Pieces(CardBlock block, string title, CardPictures? pictures) => block switch
    {
        TextBlock b => Paragraph(Markup.Clean(b.Text)),
        CautionBlock b => Caution(b),
        StepsBlock b => Heading(b.Heading).Concat(b.Steps.SelectMany((s, i) => Step(s, b.First + i))),
        ListBlock b => Heading(b.Heading).Concat(b.Items.SelectMany(i => Marked("- ", "  ", Markup.OneLine(i)))),
        DrawingBlock b => Drawing(b.Text, title, pictures),
        BeliefBlock b => TextRuns.Lines(BeliefBars.Of(b)).Select(r => new Piece(0, Markup.Fenced(r))),
        _ => throw new ArgumentOutOfRangeException(nameof(block), block, "A new kind of block needs a way to be drawn."),
    };

    private static IEnumerable<Piece> Heading(string heading) =>
        TextRuns.Of(Markup.OneLine(heading).TrimEnd(':')).Select(r => new Piece(0, $"**{Markup.SafeLine(r)}:**", Heads: true));

    // The number is written out rather than left to a list of the platform's, which would count anew in the next message.
    private static List<Piece> Step(CardStep step, int number)
    {
        var first = string.Create(CultureInfo.InvariantCulture, $"**{number}.** ");
        var does = Marked(first, "", Markup.OneLine(step.Do)).ToList();
        if (step.Note is not { } note || Markup.OneLine(note) is not { Length: > 0 } says) return does;
        var notes = Marked("", "", $"({says})").ToList();
        return does[^1].Text.Length + notes[0].Text.Length < TextRuns.Most
            ? [.. does[..^1], does[^1] with { Text = $"{does[^1].Text} {notes[0].Text}" }, .. notes[1..]]
            : [.. does, .. notes];
    }

    private static IEnumerable<Piece> Marked(string first, string rest, string line) =>
        TextRuns.Of(line).DefaultIfEmpty("").Select((r, i) => new Piece(0, (i == 0 ? first : rest) + Markup.SafeLine(r)));

    /// <summary>Signal word, hazard, consequence, avoidance: the order of ANSI Z535.6. Its alert sign goes before the words that stand for injury, not before a notice.</summary>
    private static IEnumerable<Piece> Caution(CautionBlock caution)
    {
        var word = Markup.OneLine(caution.Word).ToUpperInvariant();
        var sign = Signals.IsInjury(word) ? "⚠ " : "";
        string[] says = [.. new[] { caution.Hazard, caution.Consequence, caution.Avoid }.Select(t => Sentence(Markup.OneLine(t))).Where(t => t.Length > 0)];
        var text = $"> {sign}**{Markup.SafeLine(word)}**\n> " + string.Join(' ', says.Select((t, i) => i == 0 ? $"**{Markup.SafeLine(t)}**" : Markup.SafeLine(t)));
        return text.Length <= MostCaution && Encoding.UTF8.GetByteCount(text) <= MostCautionBytes
            ? [new Piece(0, text)]
            : TextRuns.Of(string.Join(' ', [word + ":", .. says])).Select(r => new Piece(0, "> " + Markup.SafeLine(r)));
    }

    private static IEnumerable<Piece> Drawing(string text, string title, CardPictures? pictures)
    {
        var parts = DrawingParts.Of(Markup.Clean(text));
        return [.. Paragraph(parts.Above), .. Lines(parts.Lines, title, pictures), .. Paragraph(parts.Below)];
    }

    private static List<Piece> Lines(string lines, string title, CardPictures? pictures)
    {
        if (lines.Length == 0) return [];
        var runs = TextRuns.Lines(lines).Select(r => new Piece(0, Markup.Fenced(r))).ToList();
        var alt = $"{TextRuns.Cut(Markup.OneLine(title), MostAltTitle)}\n{lines}";
        return runs.Count == 1 && alt.Length <= Limits.AltText && pictures?.Draw(lines) is { } png
            ? [runs[0] with { Picture = new Picture(png, alt) }]
            : runs;
    }

    private static IEnumerable<Piece> Paragraph(string text) => TextRuns.Of(text).Select(r => new Piece(0, Markup.Safe(r)));

    private static string Sentence(string text) =>
        text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..] + (text[^1] is '.' or '!' or '?' ? "" : ".");
}
