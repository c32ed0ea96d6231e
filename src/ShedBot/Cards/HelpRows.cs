using ShedBot.Coaching.Cards;
using ShedBot.Practice;

namespace ShedBot.Cards;

/// <summary>The helping options side by side, as many to a row as its width takes, each kept whole.</summary>
internal static class HelpRows
{
    public const string Between = "   ";

    /// <summary>Columns that a key takes in front of its label: brackets and a blank.</summary>
    private const int KeyWidth = 4;

    public static IEnumerable<IReadOnlyList<(string Key, string Label)>> Of(AnswerKeys keys, int width)
    {
        var row = new List<(string, string)>();
        var used = 0;
        foreach (var (key, option) in keys.Helps)
        {
            var label = CleanText.OneLine(option.Label, int.MaxValue);
            var needed = KeyWidth + label.Length;
            if (row.Count > 0 && used + Between.Length + needed > width)
            {
                yield return row;
                (row, used) = ([], 0);
            }

            used += needed + (row.Count == 0 ? 0 : Between.Length);
            row.Add((key, label));
        }

        if (row.Count > 0) yield return row;
    }
}
