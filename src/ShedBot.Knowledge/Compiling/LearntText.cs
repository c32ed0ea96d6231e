using System.Globalization;
using System.Text;

namespace ShedBot.Knowledge.Compiling;

/// <summary>What came of reading learnt numbers.</summary>
/// <param name="Learnt">Null exactly when something is wrong.</param>
/// <param name="Wrong">A sentence about it, with the line; null when all is well.</param>
public sealed record LearntReading(Learnt? Learnt, string? Wrong);

/// <summary>Learnt numbers as plain lines, the same numbers always in the same text. The first line says what it is; each other line is one number.</summary>
/// <example>
/// <code>
/// learnt 1
/// odds worn-pads 1.84
/// link worn-pads lever-feel slack 0.71
/// mend new-pads worn-pads 0.9
/// </code>
/// </example>
public static class LearntText
{
    /// <summary>A text that is longer is refused unread.</summary>
    public const int MostLetters = 400_000;

    private const string Head = "learnt 1", Odds = "odds", Link = "link", Mend = "mend";

    public static string Write(Learnt learnt)
    {
        var text = new StringBuilder(Head).Append('\n');
        foreach (var odds in learnt.Odds) text.Append(CultureInfo.InvariantCulture, $"{Odds} {odds.Fault} {odds.Times}\n");
        foreach (var link in learnt.Links) text.Append(CultureInfo.InvariantCulture, $"{Link} {link.Fault} {link.Finding} {link.State} {link.Chance}\n");
        foreach (var mend in learnt.Mends) text.Append(CultureInfo.InvariantCulture, $"{Mend} {mend.Repair} {mend.Fault} {mend.Chance}\n");
        return text.ToString();
    }

    /// <summary>Never throws for what the text holds.</summary>
    public static LearntReading Read(string text)
    {
        if (text.Length > MostLetters) return Refused($"The learnt numbers are {text.Length} letters long; {MostLetters} is the most.");
        var lines = text.Split('\n');
        if (lines[0].TrimEnd('\r') != Head) return Refused($"Line 1: learnt numbers begin with '{Head}'.");
        var (odds, links, mends) = (new List<LearntOdds>(), new List<LearntLink>(), new List<LearntMend>());
        for (var at = 1; at < lines.Length; at++)
        {
            var words = lines[at].TrimEnd('\r').Split(' ');
            if (words is [""]) continue;
            if (!double.TryParse(words[^1], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number))
                return Refused($"Line {at + 1}: a number is expected at the end, such as 0.75.");
            switch (words)
            {
                case [Odds, var fault, _]:
                    odds.Add(new LearntOdds(fault, number));
                    break;
                case [Link, var fault, var finding, var state, _]:
                    links.Add(new LearntLink(fault, finding, state, number));
                    break;
                case [Mend, var repair, var fault, _]:
                    mends.Add(new LearntMend(repair, fault, number));
                    break;
                default:
                    return Refused($"Line {at + 1}: expected '{Odds} fault number', '{Link} fault finding state number' or '{Mend} repair fault number'.");
            }
        }

        var learnt = Learnt.Ordered(odds, links, mends);
        return LearntCheck.Wrong(learnt) is { } wrong ? Refused(wrong) : new LearntReading(learnt, null);
    }

    private static LearntReading Refused(string why) => new(null, why);
}
