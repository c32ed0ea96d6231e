namespace ShedBot.Storage;

/// <summary>The store cannot be opened, or a copy cannot be made. Nothing was changed; the message says what to do.</summary>
/// <param name="code">Stable, for logs and tests: see <see cref="RefusalCodes"/>.</param>
public sealed class StoreRefusedException(string code, string message, Exception? inner = null) : Exception(message, inner)
{
    public string Code { get; } = code;
}

/// <summary>Why a store was refused.</summary>
public static class RefusalCodes
{
    public const string NoDirectory = "no-directory";
    public const string CannotWrite = "cannot-write";
    public const string InUse = "in-use";
    public const string StrayFiles = "stray-files";
    public const string LogWithoutData = "log-without-data";
    public const string NotOurFile = "not-our-file";
    public const string NewerSchema = "newer-schema";
    public const string Damaged = "damaged";
    public const string UpgradeFailed = "upgrade-failed";
    public const string TargetExists = "target-exists";
    public const string BadCopy = "bad-copy";
}
