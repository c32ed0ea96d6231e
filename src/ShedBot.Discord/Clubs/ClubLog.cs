using Microsoft.Extensions.Logging;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Discord.Rest;

namespace ShedBot.Discord.Clubs;

/// <summary>What is worth writing down; never a member's words, name or id, nor a secret.</summary>
internal static partial class ClubLog
{
    [LoggerMessage(LogLevel.Information, "Case {Case}: turn {Turn}, now {Phase}, {Milliseconds} ms after the event came in.")]
    public static partial void Took(this ILogger log, CaseId @case, int turn, CasePhase phase, double milliseconds);

    [LoggerMessage(LogLevel.Warning, "What was decided could not be said yet ({Trouble}); it is kept and tried again.")]
    public static partial void NotSaid(this ILogger log, Trouble trouble, Exception why);

    [LoggerMessage(LogLevel.Information, "A room is gone; its case is kept, nothing more is said there.")]
    public static partial void RoomGone(this ILogger log, Exception why);

    [LoggerMessage(LogLevel.Debug, "A message or thread could not be tidied ({Trouble}).")]
    public static partial void NotTidied(this ILogger log, Trouble trouble, Exception why);

    [LoggerMessage(LogLevel.Warning, "An interaction got no first answer in time, or another process answered it ({Trouble}). Twice in a row: look whether two processes use one token.")]
    public static partial void NotAnswered(this ILogger log, Trouble trouble, Exception why);

    [LoggerMessage(LogLevel.Error, "Something that came in could not be dealt with; it was not kept.")]
    public static partial void Failed(this ILogger log, Exception why);

    [LoggerMessage(LogLevel.Information, "Something that came in was cut off by the end of the program; it is dealt with after the next start.")]
    public static partial void CutOff(this ILogger log, Exception why);

    [LoggerMessage(LogLevel.Warning, "{Why}")]
    public static partial void NoPictures(this ILogger log, string why);

    [LoggerMessage(LogLevel.Information, "Ready in {Clubs} clubs; {Rooms} places have something still to be said.")]
    public static partial void Began(this ILogger log, int clubs, int rooms);

    [LoggerMessage(LogLevel.Warning, "Club {Club}: in the help channel I lack: {Rights}. A moderator can give it to ShedBot's role in the channel's settings.")]
    public static partial void Lacks(this ILogger log, string club, string rights);

    [LoggerMessage(LogLevel.Information, "Club {Club}: no help channel is set up yet; a moderator can do it with /club set-up.")]
    public static partial void NotSetUp(this ILogger log, string club);

    [LoggerMessage(LogLevel.Information, "Club {Club} has sent ShedBot away; what is kept of it is removed in {Days} days unless it comes back.")]
    public static partial void SentAway(this ILogger log, string club, double days);

    [LoggerMessage(LogLevel.Information, "Club {Club}: all that was kept of it is removed ({Cases} cases, {Bikes} bikes).")]
    public static partial void Removed(this ILogger log, string club, int cases, int bikes);

    [LoggerMessage(LogLevel.Information, "The commands were registered ({Count}).")]
    public static partial void Registered(this ILogger log, int count);

    [LoggerMessage(LogLevel.Information, "A member asked to be forgotten: removed {Cases} cases, {Bikes} bikes.")]
    public static partial void Forgot(this ILogger log, int cases, int bikes);

    [LoggerMessage(LogLevel.Information, "Caught up on {Messages} messages that came while nobody listened.")]
    public static partial void CaughtUp(this ILogger log, int messages);

    [LoggerMessage(LogLevel.Error, "A member could not be looked at for reminders; it is tried again in the next round.")]
    public static partial void NotLookedAt(this ILogger log, Exception why);

    [LoggerMessage(LogLevel.Information, "A member takes no direct messages from us (code {Code}); none is tried until they ask.")]
    public static partial void DmRefused(this ILogger log, int code);

    [LoggerMessage(LogLevel.Information, "What became of a member's tip or proposal could not be told them: they take no direct messages from us (code {Code}). It waits for their next command.")]
    public static partial void WordRefused(this ILogger log, int code);

    [LoggerMessage(LogLevel.Information, "How a trial stands could not be told ({Trouble}); its result is kept with the proposal.")]
    public static partial void TrialNotTold(this ILogger log, Trouble trouble, Exception why);

    [LoggerMessage(LogLevel.Information, "A mention could not be made ({Trouble}); a note at the member's next command takes its place.")]
    public static partial void NotMentioned(this ILogger log, Trouble trouble);

    [LoggerMessage(LogLevel.Information, "Club {Club}: its closed cases were looked over ({Outcome}, edition {Edition}).")]
    public static partial void LookedOver(this ILogger log, string club, RoundOutcome outcome, int? edition);

    [LoggerMessage(LogLevel.Error, "Club {Club}: its closed cases could not be looked over; it is tried again later.")]
    public static partial void NotLookedOver(this ILogger log, string club, Exception why);

    [LoggerMessage(LogLevel.Warning, "The chat lets us open no more direct conversations for a while; those that are open go on, the others wait {Hours} hours.")]
    public static partial void OpensTooFast(this ILogger log, double hours, Exception why);
}
