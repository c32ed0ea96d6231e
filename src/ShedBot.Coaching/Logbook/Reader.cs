using System.Collections.Immutable;
using System.Globalization;

namespace ShedBot.Coaching.Logbook;

/// <summary>Walks through the pieces of a line.</summary>
internal sealed class Reader(ImmutableArray<string> pieces)
{
    private int at;

    public bool AtEnd => at >= pieces.Length;

    /// <summary>The next piece; empty at the end.</summary>
    public string Next => At(0);

    public string At(int ahead) => at + ahead >= 0 && at + ahead < pieces.Length ? pieces[at + ahead] : "";

    public void Skip(int count) => at += count;

    /// <summary>Takes these words when they come next.</summary>
    public bool Take(string words)
    {
        var wanted = words.Split(' ');
        if (!wanted.Select((w, i) => At(i) == w).All(same => same)) return false;
        at += wanted.Length;
        return true;
    }

    /// <summary>Takes the next piece when it is one of these.</summary>
    public bool TakeAny(ImmutableHashSet<string> words)
    {
        if (AtEnd || !words.Contains(Next)) return false;
        at++;
        return true;
    }

    /// <returns>The number that comes next, or null; it is not taken. A comma is read as a point.</returns>
    public static double? Number(string piece) =>
        double.TryParse(piece.Replace(',', '.'), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) ? number : null;
}
