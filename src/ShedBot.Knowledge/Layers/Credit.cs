namespace ShedBot.Knowledge.Layers;

/// <summary>Whose word a rule or a change is.</summary>
/// <param name="Author">Who wrote it down.</param>
/// <param name="SaidBy">Whose tip it was, or null.</param>
/// <param name="Source">A published source, or 'common practice'.</param>
/// <param name="Date">The day on which it was written.</param>
public sealed record Credit(string Author, string? SaidBy, string Source, DateOnly Date)
{
    /// <summary>What stands for a source when none is published.</summary>
    public const string CommonPractice = "common practice";

    /// <summary>Written by Ada, said by Bo, common practice, 2026-03-31</summary>
    public override string ToString() =>
        FormattableString.Invariant($"written by {Author}{(SaidBy is null ? "" : $", said by {SaidBy}")}, {Source}, {Date:yyyy-MM-dd}");
}
