using System.Collections.Immutable;
using ShedBot.Coaching.Logbook;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Nudging;

/// <summary>
/// Reads a typed line as a wish about reminders or settings: a small, strict grammar. A line that is not wholly understood is left to the coach; it is refused,
/// with what to write instead, only where it cannot be a trouble.
/// </summary>
public static class RiderWords
{
    /// <summary>A place has no more words than this; more of them are a story.</summary>
    private const int MostPlaceWords = 3;

    private static readonly ImmutableHashSet<string> Shows = ["reminders", "my reminders", "reminder", "settings", "my settings", "my zone", "my time zone", "my units", "quiet hours", "my quiet hours"];

    private static readonly ImmutableHashSet<string> Yes =
        ["remind me", "please remind me", "remind me please", "yes remind me", "reminders on", "start reminders", "remind me again", "go on reminding me", "keep reminding me"];

    private static readonly ImmutableHashSet<string> No =
    [
        "stop reminders", "stop all reminders", "stop the reminders", "no reminders", "no more reminders", "reminders off", "don't remind me", "do not remind me", "stop reminding me",
        "no reminders please", "don't remind me any more",
    ];

    private static readonly ImmutableHashSet<string> Later = ["later", "tonight", "tomorrow", "saturday", "on saturday", "sunday", "on sunday", "next week", "in a week", "at the weekend"];

    private static readonly ImmutableHashSet<string> All = ["everything", "all", "all of it", "all tasks", "everything again", "all again"];

    /// <returns>Null when the line is no such wish.</returns>
    public static Result<RiderRequest>? Read(string line, KnowledgeBase knowledge)
    {
        var text = string.Join(' ', line.ToLowerInvariant().Replace('’', '\'').Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).TrimEnd('.', '!', '?', ' ');
        if (Shows.Contains(text)) return (RiderRequest)new ShowReminders();
        var bare = text.Replace(",", "", StringComparison.Ordinal);
        if (Yes.Contains(bare)) return (RiderRequest)new RemindMe(null);
        if (No.Contains(bare)) return (RiderRequest)new RemindMeNoMore();
        if (Behind(text, "please ") is { } asked) text = asked;
        if (Behind(text, "remind me ", "reminders ") is { } how) return Remind(how, knowledge);
        if (Behind(text, "quiet hours ", "quiet from ", "my quiet hours ", "quiet ") is { } hours) return Quiet(hours);
        if (Behind(text, "my zone is ", "my zone ", "my time zone is ", "my time zone ", "time zone ", "zone ") is { } zone) return RiderForms.Zone(zone);
        if (Behind(text, "i live in ", "i moved to ", "i have moved to ", "i've moved to ") is { } lives) return Place(lives);
        if (Behind(text, "my units are ", "my units ", "units ") is { } units) return RiderForms.UnitsOf(units);
        // These begin sentences of all kinds.
        return Behind(text, "i think in ", "use ", "show ") is { } use && RiderForms.UnitsOf(use) is { Value: { } known } ? (Result<RiderRequest>?)known : null;
    }

    private static Result<RiderRequest>? Remind(string how, KnowledgeBase knowledge)
    {
        if (Later.Contains(how))
            return new Refusal("later", "I can put off what I wrote to you: answer it with one of its keys. For the time of day that suits you: remind me at 18:00.");
        // "About" may be a time or a task.
        if ((Behind(how, "at ", "around ") ?? (Behind(how, "about ") is { } about && char.IsAsciiDigit(about[0]) ? about : null)) is { } time)
        {
            var read = RiderForms.Time(time);
            return read.Refused is { } refused ? refused : (RiderRequest)new RemindMe(read.Time);
        }

        if (Behind(how, "of ", "about ") is not { } task) return new Refusal("remind", "Write remind me, remind me at 18:00, or remind me of spokes again.");
        if (task.EndsWith(" again", StringComparison.Ordinal)) task = task[..^" again".Length];
        if (All.Contains(task)) return (RiderRequest)new HearAgain(null);
        var found = TaskWords.Find(knowledge, task);
        return found.Refused is { } unclear ? unclear : (RiderRequest)new HearAgain(found.Must.Id);
    }

    /// <summary>"Quiet when idling" is for the coach.</summary>
    private static Result<RiderRequest>? Quiet(string hours)
    {
        if (Behind(hours, "from ") is { } from) hours = from;
        var read = RiderForms.Quiet(hours);
        return read.Refused is null || char.IsAsciiDigit(hours[0]) ? read : (Result<RiderRequest>?)null;
    }

    /// <summary>"I live in a hilly place, and the clutch slips" is for the coach.</summary>
    private static Result<RiderRequest>? Place(string text)
    {
        var read = RiderForms.Zone(text);
        return read.Refused is null || text.Split(' ').Length <= MostPlaceWords ? read : (Result<RiderRequest>?)null;
    }

    /// <returns>What follows one of the beginnings; null when the text has none of them, or nothing follows.</returns>
    private static string? Behind(string text, params ReadOnlySpan<string> beginnings)
    {
        foreach (var beginning in beginnings)
        {
            if (text.StartsWith(beginning, StringComparison.Ordinal) && text.Length > beginning.Length) return text[beginning.Length..];
        }

        return null;
    }
}
