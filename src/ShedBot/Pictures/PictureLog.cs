using Microsoft.Extensions.Logging;

namespace ShedBot.Pictures;

/// <summary>Events 2900 to 2999.</summary>
internal static partial class PictureLog
{
    [LoggerMessage(EventId = 2901, Level = LogLevel.Warning, Message = "No plain typeface is installed, so timelines and trials are told in words. Installing one, such as DejaVu Sans, turns them into pictures")]
    public static partial void NoFace(this ILogger logger);

    [LoggerMessage(EventId = 2902, Level = LogLevel.Warning, Message = "A timeline could not be painted; it is told in words")]
    public static partial void NotPainted(this ILogger logger, Exception exception);

    [LoggerMessage(EventId = 2903, Level = LogLevel.Warning, Message = "A trial could not be painted; it is told in words")]
    public static partial void TrialNotPainted(this ILogger logger, Exception exception);
}
