using NodaTime;
using NodaTime.Text;
using ShedBot.Coaching.Bikes;

namespace ShedBot.Coaching.Nudging;

/// <summary>What can be answered to a reminder. Its names stand in the ids of options: never rename a member.</summary>
public enum NudgeVerb
{
    /// <summary>Yes, remind me.</summary>
    Agree,

    /// <summary>No reminders; said later it is "stop all".</summary>
    Decline,

    /// <summary>Go on, though two digests went unanswered.</summary>
    GoOn,

    /// <summary>All of the digest is done.</summary>
    AllDone,

    /// <summary>What was due on the day of the digest is done; what was coming up is to be told once it is due.</summary>
    DueDone,

    /// <summary>One task is done.</summary>
    Done,
    Tonight,
    Weekend,
    NextWeek,

    /// <summary>Not riding; till when may be told beside.</summary>
    NotRiding,

    /// <summary>A ride today, to be logged.</summary>
    Rode,

    /// <summary>No more of this task.</summary>
    StopTask,

    /// <summary>Shows one task of a digest.</summary>
    Look,

    /// <summary>How it is done.</summary>
    HowTo,

    /// <summary>Doing it has shown trouble: which?</summary>
    Trouble,

    /// <summary>This trouble: a case is opened with the complaint.</summary>
    OpenCase,
}

/// <summary>An answer to a reminder; its text is the id of an option. Says all by itself, so that a press is understood however late it comes.</summary>
/// <param name="Digest">The member's own day of the message that is answered.</param>
/// <param name="Bike">The bike, as the part of its id behind the member's, or the whole id; empty where the answer is about all of the digest.</param>
/// <param name="Subject">The task, or for <see cref="NudgeVerb.OpenCase"/> the complaint; empty where the answer is about all of the digest.</param>
public sealed record NudgeAnswer(NudgeVerb Verb, LocalDate Digest, string Bike = "", string Subject = "")
{
    private const string Prefix = "nudge";
    private const char Between = '|';
    private static readonly LocalDatePattern Day = LocalDatePattern.CreateWithInvariantCulture("uuuuMMdd");

    /// <returns>As in "nudge|20260605|Done|bike|grease".</returns>
    public override string ToString() => string.Join(Between, Prefix, Day.Format(Digest), Verb, Bike, Subject);

    /// <returns>The answer, or null when the text was never one of ours.</returns>
    public static NudgeAnswer? Read(string option) => option.Split(Between) is [Prefix, var day, var verb, var bike, var subject]
        && Day.Parse(day) is { Success: true } read && Enum.IsDefined(typeof(NudgeVerb), verb)
            ? new NudgeAnswer(Enum.Parse<NudgeVerb>(verb), read.Value, bike, subject)
            : null;

    /// <summary>Short, because chats bound the length of an option's id.</summary>
    public static string ShortOf(BikeProfile bike) => bike.Id.Value.StartsWith(bike.Owner.Value + "/", StringComparison.Ordinal)
        ? bike.Id.Value[(bike.Owner.Value.Length + 1)..]
        : bike.Id.Value;
}
