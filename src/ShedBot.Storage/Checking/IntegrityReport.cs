using System.Collections.Immutable;

namespace ShedBot.Storage.Checking;

/// <summary>What a walk through the whole store found.</summary>
/// <param name="Counts">Documents by collection.</param>
/// <param name="Problems">A sentence each, at most <see cref="MostProblems"/>; empty when the store is sound.</param>
/// <param name="DataBytes">Length of the data file.</param>
/// <param name="LogBytes">Length of the log that was found: saves since it was last put away.</param>
public sealed record IntegrityReport(
    ImmutableSortedDictionary<string, int> Counts, ImmutableArray<string> Problems, int Schema, long DataBytes, long LogBytes)
{
    public const int MostProblems = 20;

    public bool IsSound => Problems.IsEmpty;

    /// <summary>One line for the log.</summary>
    public override string ToString() =>
        $"{(IsSound ? "sound" : $"damaged: {Problems[0]}")}; {string.Join(", ", Counts.Select(c => $"{c.Key} {c.Value}"))}; "
        + $"schema {Schema}; data {DataBytes} bytes, log {LogBytes} bytes";
}
