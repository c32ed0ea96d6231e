using System.Text.Json.Serialization;

namespace ShedBot.Serving.Health;

/// <summary>How the service is, for those who watch over it. Figures only: no ids, no names, no words, no secret.</summary>
/// <param name="When">When this was written.</param>
/// <param name="Started">When the service began.</param>
/// <param name="Ready">Whether the chat has let us in since the start.</param>
/// <param name="LastHeard">When something last came in from the chat.</param>
/// <param name="Busy">Pieces of work going on or waiting.</param>
/// <param name="TokenRefused">The chat no longer takes the token.</param>
/// <param name="Store">The data file.</param>
/// <param name="Rules">The version of the rules in use.</param>
/// <param name="RulesBroken">Rule files have changed and cannot be used; the last good ones are.</param>
/// <param name="MemoryBytes">What the process holds of the machine's memory.</param>
/// <param name="HeapBytes">What of it is the heap.</param>
/// <param name="LastBackup">When the newest backup was made; null when none is there, or none are to be made.</param>
/// <param name="Totals">Since the start: what was counted.</param>
/// <param name="Times">Since the start: what was timed.</param>
internal sealed record HealthReport(
    DateTimeOffset When,
    DateTimeOffset Started,
    bool Ready,
    DateTimeOffset? LastHeard,
    int Busy,
    bool TokenRefused,
    StoreReport Store,
    string Rules,
    bool RulesBroken,
    long MemoryBytes,
    long HeapBytes,
    DateTimeOffset? LastBackup,
    SortedDictionary<string, double> Totals,
    SortedDictionary<string, Timed> Times);

/// <param name="DataBytes">Length of the data file.</param>
/// <param name="LogBytes">Length of its log.</param>
/// <param name="LogTooLong">The log is no longer put away.</param>
/// <param name="Stopped">No more saves are taken.</param>
internal sealed record StoreReport(long DataBytes, long LogBytes, bool LogTooLong, bool Stopped);

/// <summary>What was timed, seconds.</summary>
internal sealed record Timed(long Count, double Seconds, double Longest);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(HealthReport))]
internal sealed partial class HealthJson : JsonSerializerContext;
