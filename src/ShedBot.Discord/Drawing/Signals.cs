using System.Collections.Immutable;
using ShedBot.Coaching.Cards;

namespace ShedBot.Discord.Drawing;

/// <summary>The signal words of ANSI Z535.6, the most serious first.</summary>
internal static class Signals
{
    // The safety colours that ANSI Z535.4 gives the words: red, orange, yellow, blue. The shades are ours, and the word is always there in letters.
    private static readonly ImmutableArray<(string Word, int Colour, bool Injury)> Words =
    [
        ("DANGER", 0xB00000, true),
        ("WARNING", 0xF58200, true),
        ("CAUTION", 0xF5CD00, true),
        ("NOTICE", 0x0046A0, false),
    ];

    public static bool IsInjury(string word) => Words.Any(w => w.Word == word && w.Injury);

    /// <returns>The colour of the most serious caution of the card, or null when there is none.</returns>
    public static int? Colour(Card card) => Words
        .Where(w => card.Blocks.OfType<CautionBlock>().Any(c => c.Word == w.Word))
        .Select(w => (int?)w.Colour)
        .FirstOrDefault();
}
