using System.Globalization;
using System.Text.RegularExpressions;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Bikes.Kinds;

/// <summary>A whole number, kept as "44".</summary>
/// <param name="Unit">As in "teeth"; empty for a bare number.</param>
public sealed partial record CountKind(int Least, int Most, string Unit) : FieldKind
{
    public override Result<string> Read(string text, Writer by)
    {
        if (Number().Match(text.Trim()) is { Success: true } found && int.TryParse(found.Groups[1].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n >= Least && n <= Most)
            return n.ToString(CultureInfo.InvariantCulture);
        return Refuse(text, $"Write a whole number from {Least} to {Most}{(Unit.Length > 0 ? $", the {Unit} you count" : "")}.");
    }

    public override string Show(string value, Units units) => Unit.Length > 0 ? $"{value} {Unit}" : value;

    [GeneratedRegex(@"\A(?:no\.?|number|size|#)?\s*(\d{1,4})\s*[-]?(?:t|teeth|tooth)?\.?\z", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Number();
}
