using System.Globalization;
using ShedBot.Coaching.Cards;

namespace ShedBot.Discord.Drawing;

/// <summary>How far a case is, in one line.</summary>
internal static class ProgressLine
{
    public static string Of(CardProgress progress)
    {
        var asked = progress.Asked switch
        {
            0 => "Nothing asked yet",
            1 => "1 question so far",
            var n => string.Create(CultureInfo.InvariantCulture, $"{n} questions so far"),
        };
        return progress is { Leading: { } leading, Word: { } word } ? $"{asked}; in front: {leading}, {word}" : asked;
    }
}
