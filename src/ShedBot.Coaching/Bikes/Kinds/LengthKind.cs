using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Bikes.Kinds;

/// <summary>One measured length, kept as "18.2".</summary>
/// <param name="Least">Millimetres; the least that is plausible.</param>
/// <param name="Most">Millimetres.</param>
public sealed record LengthKind(double Least, double Most) : FieldKind
{
    public override Result<string> Read(string text, Writer by)
    {
        if (LengthText.Read(text, by.Units, Least, Most) is { } mm) return LengthText.Plain(mm);
        return Refuse(text, $"Write a length from {LengthText.Plain(Least)} to {LengthText.Plain(Most)} mm, like {LengthText.Plain(Example)} mm or 3/4 in.");
    }

    public override string Show(string value, Units units) => LengthText.Number(value) is { } mm ? LengthText.Show(mm, units) : value;

    private double Example => Math.Round((Least + Most) / 2, 1);
}
