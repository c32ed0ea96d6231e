using NodaTime;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Coaching.Bikes.Kinds;

/// <summary>Who writes a value, and when.</summary>
/// <param name="Units">Of a number that stands alone.</param>
/// <param name="Today">The writer's own day.</param>
public sealed record Writer(Units Units, LocalDate Today);

/// <summary>What a field of the bike sheet can hold. Values are kept as text in one form, in millimetres and ISO days; riders may write them in many.</summary>
public abstract record FieldKind
{
    /// <summary>The code of every refusal here.</summary>
    protected const string Code = "value";

    /// <returns>The value in the form it is kept in, or a refusal that says what to write.</returns>
    public abstract Result<string> Read(string text, Writer by);

    /// <summary>A kept value for the eye; one that cannot be read is shown as it is.</summary>
    public abstract string Show(string value, Units units);

    /// <summary>Whether it says all that there is to say: a nominal size leaves a doubt.</summary>
    public virtual bool IsExact(string value) => true;

    /// <returns>What is still to be found out of a value that is not exact, or null when that is nothing worth saying.</returns>
    public virtual string? Doubt(string value) => null;

    protected static Result<string> Refuse(string text, string write) => new Refusal(Code, $"I cannot read \"{Cards.CleanText.OneLine(text, 40)}\". {write}");
}
