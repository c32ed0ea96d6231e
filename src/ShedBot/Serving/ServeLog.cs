using Microsoft.Extensions.Logging;

namespace ShedBot.Serving;

/// <summary>Events 3000 to 3099. No names or words of members, no ids of theirs, and never the token.</summary>
internal static partial class ServeLog
{
    [LoggerMessage(EventId = 3001, Level = LogLevel.Information, Message = "ShedBot {Version} serves with rules {Rules}; data in {Data}, health in {Health}")]
    public static partial void Serves(this ILogger logger, string version, string rules, string data, string health);

    [LoggerMessage(EventId = 3002, Level = LogLevel.Warning, Message = "{Advice}")]
    public static partial void Advises(this ILogger logger, string advice);

    [LoggerMessage(EventId = 3003, Level = LogLevel.Information, Message = "{News}")]
    public static partial void RulesTaken(this ILogger logger, string news);

    [LoggerMessage(EventId = 3004, Level = LogLevel.Warning, Message = "{News} {Problems}")]
    public static partial void RulesKept(this ILogger logger, string news, string problems);

    [LoggerMessage(EventId = 3005, Level = LogLevel.Information, Message = "Asked to stop: what came in is dealt with, then the chat is left")]
    public static partial void Stopping(this ILogger logger);

    [LoggerMessage(EventId = 3006, Level = LogLevel.Warning, Message = "What was going on did not end within {Seconds} s; it is left as it is, and taken up after the next start")]
    public static partial void LeftBehind(this ILogger logger, double seconds);

    [LoggerMessage(EventId = 3007, Level = LogLevel.Information, Message = "Stopped")]
    public static partial void Stopped(this ILogger logger);

    [LoggerMessage(EventId = 3008, Level = LogLevel.Critical, Message = "The store has stopped, so ShedBot ends, to be started again: {Why}")]
    public static partial void StoreStopped(this ILogger logger, string why);

    [LoggerMessage(EventId = 3009, Level = LogLevel.Error, Message = "The store's log is {Bytes} bytes long and is no longer put away: start ShedBot again, and look at the disk")]
    public static partial void LogTooLong(this ILogger logger, long bytes);

    [LoggerMessage(EventId = 3010, Level = LogLevel.Critical, Message = "The chat refused us: {Advice}")]
    public static partial void Refused(this ILogger logger, string advice);

    [LoggerMessage(EventId = 3011, Level = LogLevel.Critical, Message = "The chat ended without being asked to")]
    public static partial void ChatEnded(this ILogger logger, Exception? exception);

    [LoggerMessage(EventId = 3012, Level = LogLevel.Error, Message = "A round of {What} failed; the next one comes")]
    public static partial void RoundFailed(this ILogger logger, string what, Exception exception);

    [LoggerMessage(EventId = 3013, Level = LogLevel.Information, Message = "Backup made and read back: {File}, {Bytes} bytes")]
    public static partial void BackedUp(this ILogger logger, string file, long bytes);

    [LoggerMessage(EventId = 3014, Level = LogLevel.Information, Message = "Backup removed, since it is older than {Days} days: {File}")]
    public static partial void BackupRemoved(this ILogger logger, int days, string file);
}
