using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Bikes.Kinds;

/// <summary>A few words, as they are written.</summary>
/// <param name="Most">Characters; more are refused rather than cut.</param>
public sealed record TextKind(int Most) : FieldKind
{
    public override Result<string> Read(string text, Writer by)
    {
        var line = CleanText.OneLine(text, Most + 1);
        if (line.Length <= Most && line.Any(char.IsLetterOrDigit)) return line;
        return new Refusal(Code, $"Write it in at most {Most} characters.");
    }

    public override string Show(string value, Units units) => value;
}
