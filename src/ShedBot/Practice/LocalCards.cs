using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;

namespace ShedBot.Practice;

/// <summary>What the practice terminal itself has to say: its words, the member's cases, their bike.</summary>
internal static class LocalCards
{
    private const int MostWords = 60;

    public static Card Help { get; } = new(
        "How to talk with me here",
        [
            new TextBlock("Type the number of an answer, the letter of a help, or your own words. You may say more than was asked, and correct yourself at any time."),
            new TextBlock("These letters are the same on every card:"),
            new DrawingBlock("""
                n   not sure                 b   back: take the last answer back
                c   can't do that now        e   change an earlier answer
                s   show me how              h   I'd rather have a helper
                w   why do you ask?          l   leave it for now
                                             r   it came back
                """.ReplaceLineEndings("\n")),
            new TextBlock("These lines go into your bike's logbook:"),
            new DrawingBlock("""
                rode 12 km wet yesterday           or: rode, rode 40 min, rode 8 miles dusty on sunday
                not riding till 1 march            or: not riding till I say, riding again
                about 4 days a week, 10 km         your pace, once
                kit fitted 1 march                 when the engine kit was fitted
                plan, plan all                     what is due, and when
                how grease-bar-ball-cam            how a task of the plan is done
                done grease-bar-ball-cam           done today; a day may follow
                undo                               take the last entry back
                timeline, timeline light           done, due and coming, as words and as a picture
                export                             your rides, work and bike as files
                bike bar length 18.2 mm            a fact of your bike; bike bar length unknown
                bikes, bike new red cruiser        more bikes than one; bike use, bike name, bike remove
                """.ReplaceLineEndings("\n")),
            new TextBlock("I can write to you when something is due; here that happens between two lines:"),
            new DrawingBlock("""
                remind me, stop reminders          begin and stop; remind me at 18:00
                reminders                          how it stands
                quiet 21:00 to 8:00, quiet none    when I do not write
                my zone Europe/Lisbon              your clock, by its largest city
                my units miles                     or km
                remind me of spokes again          after "no more of this one"
                """.ReplaceLineEndings("\n")),
            new TextBlock("These words are for the terminal, not for the coach:"),
            new DrawingBlock("""
                belief    what the coach thinks so far, as bars
                cases     your cases
                bike      what is known of your bike, its rides and the work done on it
                set up    a few short questions about your bike; skip, back, stop
                as NAME   talk as another member
                skip      with --now: go on to the next reminder, or due day;
                          or skip 7 days, skip to 1 june
                rules     the rules of the practice club: write, try and publish; rules help
                help      this
                bye       stop; everything is kept, and we go on where we were
                """.ReplaceLineEndings("\n")),
        ],
        []);

    public static Card Cases(IReadOnlyCollection<Case> cases) => new(
        "Your cases",
        cases.Count == 0
            ? [new TextBlock("None yet. Tell me what the bike does.")]
            : [new ListBlock("", [.. cases.Select(c => $"{Day(c.OpenedAt)}, {Phase(c.Phase)}: {Words(c)}")])],
        []);

    private static string Words(Case c) => c.OpeningWords.Length == 0 ? "nothing told yet" : $"\"{CleanText.OneLine(c.OpeningWords, MostWords)}\"";

    private static string Phase(CasePhase phase) => phase switch
    {
        CasePhase.Opening => "just begun",
        CasePhase.Asking => "finding the cause",
        CasePhase.Resting => "resting until you are at the bike",
        CasePhase.Repairing => "being mended",
        CasePhase.Proving => "to be proved",
        CasePhase.Solved => "mended",
        CasePhase.HandedOver => "handed to a helper",
        CasePhase.Stopped => "stopped for safety",
        CasePhase.Left => "left",
        _ => throw new ArgumentOutOfRangeException(nameof(phase), phase, null),
    };

    private static string Day(DateTimeOffset at) => at.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
