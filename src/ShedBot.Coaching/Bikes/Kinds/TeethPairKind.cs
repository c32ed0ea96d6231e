using System.Globalization;
using System.Text.RegularExpressions;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Bikes.Kinds;

/// <summary>The teeth of two gears that mesh, kept as "82/20", the big one first.</summary>
public sealed partial record TeethPairKind(int LeastBig, int MostBig, int LeastSmall, int MostSmall) : FieldKind
{
    public override Result<string> Read(string text, Writer by)
    {
        if (Pair().Match(text.Trim()) is { Success: true } found)
        {
            var (a, b) = (Whole(found.Groups[1]), Whole(found.Groups[2]));
            var (big, small) = (Math.Max(a, b), Math.Min(a, b));
            if (big >= LeastBig && big <= MostBig && small >= LeastSmall && small <= MostSmall) return string.Create(CultureInfo.InvariantCulture, $"{big}/{small}");
        }

        return Refuse(text, "Write the teeth of both gears, the big one and the small one, like 82/20.");
    }

    public override string Show(string value, Units units) => value.Split('/') is [var big, var small] ? $"{big} and {small} teeth" : value;

    internal static (int Big, int Small)? Kept(string value) =>
        value.Split('/') is [var a, var b] && int.TryParse(a, NumberStyles.None, null, out var big) && int.TryParse(b, NumberStyles.None, null, out var small) ? (big, small) : null;

    private static int Whole(Group group) => int.Parse(group.ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"\A(\d{1,3})\s*(?:t|teeth|tooth)?\s*(?:/|:|x|×|,|\band\b|\bto\b|\s)\s*(\d{1,3})\s*(?:t|teeth|tooth)?\.?\z", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Pair();
}
