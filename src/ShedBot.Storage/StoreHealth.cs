namespace ShedBot.Storage;

/// <summary>How the store is doing.</summary>
/// <param name="DataBytes">Length of the data file.</param>
/// <param name="LogBytes">Length of the log: saves that are not yet in the data file.</param>
/// <param name="LogTooLong">True above <see cref="StoreOptions.LogAlarmBytes"/>: the log is no longer put away, so the disk will fill. Start again.</param>
/// <param name="Stopped">Why no more saves are taken, or null.</param>
public sealed record StoreHealth(long DataBytes, long LogBytes, bool LogTooLong, string? Stopped);
