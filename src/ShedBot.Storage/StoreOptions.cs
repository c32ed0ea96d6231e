namespace ShedBot.Storage;

/// <summary>Where the store lives and how careful it is.</summary>
public sealed record StoreOptions
{
    /// <summary>The data file, for example <c>data/shed.db</c>; its directory must exist, on a local disk. Beside it live its log and its lock.</summary>
    public required string Path { get; init; }

    /// <summary>
    /// True: a save returns once it is on the disk, so that it outlives a power cut. False: once the system has it, so that it outlives the
    /// death of the process only; a power cut may then take back every save since the log was last put away.
    /// </summary>
    public bool Durable { get; init; } = true;

    /// <summary>The log is put away into the data file when it is longer than this, in bytes: 1 MiB to 64 MiB.</summary>
    public long CheckpointBytes { get; init; } = 6L << 20;

    /// <summary>A log longer than this, in bytes, means that it can no longer be put away: see <see cref="StoreHealth"/>. At least twice <see cref="CheckpointBytes"/>.</summary>
    public long LogAlarmBytes { get; init; } = 32L << 20;

    internal void ThrowIfOutOfRange()
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(Path);
        ArgumentOutOfRangeException.ThrowIfLessThan(CheckpointBytes, 1L << 20);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(CheckpointBytes, 64L << 20);
        ArgumentOutOfRangeException.ThrowIfLessThan(LogAlarmBytes, 2 * CheckpointBytes);
    }
}
