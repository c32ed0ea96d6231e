using Microsoft.Extensions.Logging;
using ShedBot.Coaching.Cases;

namespace ShedBot.Practice;

/// <summary>Events 2000 to 2099. Ids, never names or words of members.</summary>
internal static partial class PracticeLog
{
    [LoggerMessage(EventId = 2001, Level = LogLevel.Information, Message = "Practice opened with rules {Version}")]
    public static partial void Opened(this ILogger logger, string version);

    [LoggerMessage(EventId = 2002, Level = LogLevel.Information, Message = "Case {Case} took turn {Turn} and is {Phase}")]
    public static partial void Took(this ILogger logger, CaseId @case, int turn, CasePhase phase);

    [LoggerMessage(EventId = 2003, Level = LogLevel.Error, Message = "A turn failed; nothing of it was kept")]
    public static partial void TurnFailed(this ILogger logger, Exception exception);

    [LoggerMessage(EventId = 2004, Level = LogLevel.Information, Message = "Changed rules taken: {Version}")]
    public static partial void RulesTaken(this ILogger logger, string version);

    [LoggerMessage(EventId = 2005, Level = LogLevel.Information, Message = "Changed rules not taken: {Errors} errors; {Version} stays")]
    public static partial void RulesKept(this ILogger logger, int errors, string version);

    [LoggerMessage(EventId = 2006, Level = LogLevel.Error, Message = "A member could not be looked at for reminders")]
    public static partial void LookFailed(this ILogger logger, Exception exception);
}
