using System.Collections.Immutable;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Drawing;

/// <param name="Card">Which card of the turn it belongs to, from 0.</param>
internal readonly record struct Placed(int Card, Piece Piece);

/// <summary>Lays pieces out in messages so that every limit holds, with room left for what surrounds them.</summary>
internal static class Pages
{
    /// <summary>Kept free in every message: for a line above, a small line below, and what was answered.</summary>
    private const int FreeText = 600, FreeBytes = 1500, FreeComponents = 4;

    private const int MostPictures = 10;

    /// <param name="controls">Components that the controls take; kept free in every message, so that the breaks are the same with and without them.</param>
    /// <param name="around">Characters of the lines around; what goes beyond the free room is taken from the pages.</param>
    /// <returns>At least one page; the last is empty only when there are no pieces.</returns>
    public static ImmutableArray<ImmutableArray<Placed>> Of(IEnumerable<Placed> pieces, int controls, int around)
    {
        var room = new Size(Limits.PanelText - Math.Max(FreeText, around), Limits.PanelTextBytes - Math.Max(FreeBytes, around * 3), Limits.Components - FreeComponents - controls);
        var pages = ImmutableArray.CreateBuilder<ImmutableArray<Placed>>();
        var page = new List<Placed>();
        foreach (var placed in pieces)
        {
            page.Add(placed);
            if (page.Count == 1 || Of(page).FitsIn(room)) continue;
            // What does not fit opens the next page, with the headings just before it when they fit there too.
            var kept = page.Count - 1 - HeadsAtEnd(page);
            if (kept == 0 || !Of(page[kept..]).FitsIn(room)) kept = page.Count - 1;
            pages.Add([.. page.Take(kept)]);
            page.RemoveRange(0, kept);
        }

        pages.Add([.. page]);
        return pages.ToImmutable();
    }

    private static int HeadsAtEnd(List<Placed> page) => page.AsEnumerable().Reverse().Skip(1).TakeWhile(p => p.Piece.Heads).Count();

    private static Size Of(List<Placed> page)
    {
        // Every picture and every run of text of one block is a component, and so is the frame of each card.
        var components = 0;
        Placed? before = null;
        foreach (var placed in page)
        {
            if (placed.Card != before?.Card) components++;
            if (placed.Card != before?.Card || placed.Piece.Block != before?.Piece.Block || placed.Piece.Picture is not null || before?.Piece.Picture is not null) components++;
            before = placed;
        }

        // Not every picture is drawn as one, so each counts as its text.
        return page.Count(p => p.Piece.Picture is not null) > MostPictures
            ? Size.TooMuch
            : new Size(page.Sum(p => p.Piece.Text.Length + 1), page.Sum(p => p.Piece.Bytes + 1), components);
    }

    private readonly record struct Size(int Text, int Bytes, int Components)
    {
        public static Size TooMuch { get; } = new(int.MaxValue, int.MaxValue, int.MaxValue);

        public bool FitsIn(Size room) => Text <= room.Text && Bytes <= room.Bytes && Components <= room.Components;
    }
}
