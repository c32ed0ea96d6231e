using Microsoft.Extensions.Logging;

namespace ShedBot.Discord.Gateway;

/// <summary>What the gateway logs: numbers, names of events and reasons; never a token, a session's id or anybody's words.</summary>
internal static partial class GatewayLog
{
    [LoggerMessage(EventId = 7101, Level = LogLevel.Information, Message = "Shard {Shard}: a new session, {Clubs} clubs")]
    public static partial void SessionBegan(this ILogger log, int shard, int clubs);

    [LoggerMessage(EventId = 7102, Level = LogLevel.Information, Message = "Shard {Shard}: the session goes on, everything missed up to {Sequence} has been told")]
    public static partial void SessionGoesOn(this ILogger log, int shard, long sequence);

    [LoggerMessage(EventId = 7103, Level = LogLevel.Information, Message = "Shard {Shard}: the connection ended ({Reason}, code {Code}); next: {Next} in {Wait}")]
    public static partial void ConnectionEnded(this ILogger log, int shard, string reason, int? code, Next next, TimeSpan wait);

    [LoggerMessage(EventId = 7104, Level = LogLevel.Error, Message = "Shard {Shard}: the platform could not read what we sent (code {Code}); this is a mistake in this program")]
    public static partial void OurMistake(this ILogger log, int shard, int? code);

    [LoggerMessage(EventId = 7105, Level = LogLevel.Critical, Message = "Shard {Shard}: code {Code}. {Advice}")]
    public static partial void Fatal(this ILogger log, int shard, int code, string advice);

    [LoggerMessage(EventId = 7106, Level = LogLevel.Warning, Message = "Shard {Shard}: a frame of {Bytes} bytes is broken")]
    public static partial void BrokenFrame(this ILogger log, int shard, int bytes);

    [LoggerMessage(EventId = 7107, Level = LogLevel.Warning, Message = "Shard {Shard}: an event {Kind} is not as it should be and was passed over ({Trouble})")]
    public static partial void OddEvent(this ILogger log, int shard, EventKind kind, string trouble);

    [LoggerMessage(EventId = 7108, Level = LogLevel.Debug, Message = "Shard {Shard}: unknown operation {Op} was passed over")]
    public static partial void UnknownOp(this ILogger log, int shard, int op);

    [LoggerMessage(EventId = 7109, Level = LogLevel.Error, Message = "Shard {Shard}: an event {Kind} could not be handed on")]
    public static partial void SinkFailed(this ILogger log, Exception e, int shard, EventKind kind);

    [LoggerMessage(EventId = 7110, Level = LogLevel.Error, Message = "Operation {Op} has {Bytes} bytes, more than the platform takes; not sent")]
    public static partial void TooLong(this ILogger log, int op, int bytes);

    [LoggerMessage(EventId = 7111, Level = LogLevel.Warning, Message = "Operation {Op} was left out: too much was sent in the last minute")]
    public static partial void TooMuch(this ILogger log, int op);

    [LoggerMessage(EventId = 7112, Level = LogLevel.Warning, Message = "Shard {Shard}: the session could not be kept")]
    public static partial void ShelfFailed(this ILogger log, Exception e, int shard);

    [LoggerMessage(EventId = 7113, Level = LogLevel.Warning, Message = "No new session may be begun for {Wait}: the platform's daily number is used up")]
    public static partial void NoSessionsLeft(this ILogger log, TimeSpan wait);

    [LoggerMessage(EventId = 7114, Level = LogLevel.Warning, Message = "The platform does not say where its gateway is ({Trouble}); asking again in {Wait}")]
    public static partial void NoAdvice(this ILogger log, string trouble, TimeSpan wait);

    [LoggerMessage(EventId = 7115, Level = LogLevel.Error, Message = "Shard {Shard}: reading failed; this is a mistake in this program")]
    public static partial void ReadingFailed(this ILogger log, Exception e, int shard);
}
