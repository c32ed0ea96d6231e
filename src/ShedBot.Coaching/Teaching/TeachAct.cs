using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Coaching.Teaching.Writing;

namespace ShedBot.Coaching.Teaching;

/// <summary>One act on a club's rules while it is done: who, when, and what the rules are.</summary>
internal sealed record TeachAct(ITeachingStore Store, RulesNow Rules, Teacher Teacher, DateTimeOffset At, CancellationToken Ct)
{
    /// <summary>Of what an entry of the log says.</summary>
    private const int MostWhat = 1500;

    public ClubId Club => Teacher.Club;

    /// <summary>What they are called, made safe to show.</summary>
    public string Name => NameOf(Teacher.Name);

    public static string NameOf(string name) => CleanText.OneLine(name, 80) is { Length: > 0 } clean ? clean : "a member";

    /// <summary>Who did something that is kept: their name goes when they leave.</summary>
    public static string DoerOf(string name) => name.Length > 0 ? NameOf(name) : "somebody who has left";

    public AuditEntry Audit(AuditAct act, string subject, string what) =>
        new(Club, 0, Teacher.Who, Name, act, subject, what.Length <= MostWhat ? what : string.Concat(what.AsSpan(0, MostWhat - 1), "…"), At);

    public Task SaveAsync(
        ImmutableArray<AuditEntry> audit, Proposal? proposal = null, Tip? tip = null, TeachingSettings? settings = null, RulesEdition? edition = null, ImmutableArray<OutboxMessage> say = default,
        LearningBook? book = null) =>
        Store.SaveTeachingAsync(new TeachingSaved(Club, proposal, tip, settings, edition, audit, say.IsDefault ? [] : say, book), Ct);

    /// <returns>The proposal, or null when there is none that this teacher may see: a draft is its author's alone.</returns>
    public async Task<Proposal?> FindAsync(string id) =>
        await Store.FindProposalAsync(Club, id, Ct) is { } found && (found.State != ProposalState.Draft || found.By == Teacher.Who) ? found : null;

    /// <summary>A short name that nothing in the club has: a letter and the number of the next entry of the log.</summary>
    public async Task<string> NextIdAsync(char letter, Func<string, Task<bool>> taken)
    {
        var newest = await Store.AuditAsync(Club, long.MaxValue, 1, Ct);
        var number = (newest.IsEmpty ? 0 : newest[0].Number) + 1;
        string id;
        do id = letter + TeachPress.Text(number++);
        while (await taken(id));
        return id;
    }

    /// <summary>Words to a member alone. The same act taken twice says them once.</summary>
    /// <param name="about">What the words are about: unique among what is ever said to the member.</param>
    public OutboxMessage Word(MemberId to, string about, Card card) => new($"{TeachingPlace.Of(to)}/{about}", new CaseId(TeachingPlace.Of(to)), TeachingPlace.Of(to), card, At);

    public SheetState? SheetOf(Proposal proposal) =>
        Sheets.Find(proposal.Sheet) is { } sheet ? SheetState.Of(sheet, new SheetContext(proposal.Answers, Rules.Knowledge, Rules.Layer)) : null;

    public static TeachAnswer Gone { get; } = TeachAnswer.No("gone", "I cannot find that here. It may be put away by now; rules shows what there is.");
}
