using Microsoft.Extensions.Logging;

namespace ShedBot.Discord.Rest;

/// <summary>Events 3100 to 3199. Routes without their ids, numbers of the platform; no words, no tokens.</summary>
internal static partial class RestLog
{
    [LoggerMessage(EventId = 3101, Level = LogLevel.Information, Message = "{Route} was refused with HTTP {Status}, code {Code}; in our request: {Paths}")]
    public static partial void Refused(this ILogger logger, string route, int status, int code, string paths);

    [LoggerMessage(EventId = 3102, Level = LogLevel.Information, Message = "{Route} must wait {Seconds:0.###} s, scope {Scope}")]
    public static partial void Limited(this ILogger logger, string route, double seconds, LimitScope scope);

    [LoggerMessage(EventId = 3103, Level = LogLevel.Information, Message = "{Route} is sent again after {Why}")]
    public static partial void Again(this ILogger logger, string route, string why);

    [LoggerMessage(EventId = 3104, Level = LogLevel.Warning, Message = "{Count} requests within ten minutes were refused; at {Limit} only interactions are still answered")]
    public static partial void ManyInvalid(this ILogger logger, int count, int limit);

    [LoggerMessage(EventId = 3105, Level = LogLevel.Critical, Message = "The bot's token was refused. Nothing more is sent: give ShedBot a valid token and start it again")]
    public static partial void TokenRefused(this ILogger logger);

    [LoggerMessage(EventId = 3106, Level = LogLevel.Warning, Message = "{Route} got no answer: {Why}")]
    public static partial void Unreached(this ILogger logger, string route, string why);

    [LoggerMessage(EventId = 3107, Level = LogLevel.Warning, Message = "{Route} was taken with HTTP {Status}, but the answer could not be read")]
    public static partial void Unreadable(this ILogger logger, string route, int status);
}
