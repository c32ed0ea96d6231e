using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching;

/// <summary>What somebody wants of their club's rules.</summary>
/// <param name="Needs">The rights without which it is refused.</param>
public abstract record TeachRequest(TeachingRights Needs);

/// <summary>What stands and what waits.</summary>
public sealed record ShowRules() : TeachRequest(TeachingRights.Propose);

/// <summary>Proposals that were handed in, and one's own drafts.</summary>
public sealed record ShowWaiting() : TeachRequest(TeachingRights.Propose);

/// <summary>One proposal: what it would change, and its trial.</summary>
public sealed record ShowProposal(string Proposal) : TeachRequest(TeachingRights.Propose);

/// <summary>All that the trial of a proposal measured.</summary>
public sealed record ShowFigures(string Proposal) : TeachRequest(TeachingRights.Propose);

/// <summary>The sheets to choose from.</summary>
/// <param name="Tip">The tip to begin from, or null.</param>
public sealed record ChooseSheet(string? Tip = null) : TeachRequest(TeachingRights.Propose);

/// <param name="Sheet">The name of a guided sheet.</param>
/// <param name="Tip">The tip that it is made of, or null; taken with it.</param>
/// <param name="Given">Answers that are known already, such as those of words that were not understood.</param>
public sealed record BeginSheet(string Sheet, string? Tip = null, ImmutableSortedDictionary<string, ImmutableArray<string>>? Given = null) : TeachRequest(TeachingRights.Propose);

/// <summary>Goes on with a sheet where it was left.</summary>
/// <param name="Question">The question to put once more; null: the next open one.</param>
public sealed record GoOn(string Proposal, string? Question = null) : TeachRequest(TeachingRights.Propose);

/// <summary>One answer or a form of several.</summary>
/// <param name="Answers">By question: a typed text, the lines of a list, the values or names of what was picked; empty to skip.</param>
public sealed record AnswerSheet(string Proposal, ImmutableSortedDictionary<string, ImmutableArray<string>> Answers) : TeachRequest(TeachingRights.Propose)
{
    public AnswerSheet(string proposal, string question, params ImmutableArray<string> values)
        : this(proposal, ImmutableSortedDictionary<string, ImmutableArray<string>>.Empty.WithComparers(StringComparer.Ordinal).Add(question, values))
    {
    }
}

/// <summary>All that a sheet was told so far.</summary>
public sealed record ShowSheet(string Proposal) : TeachRequest(TeachingRights.Propose);

/// <summary>Gives a full sheet to those who may publish.</summary>
public sealed record HandIn(string Proposal) : TeachRequest(TeachingRights.Propose);

/// <summary>Tries the changes beside the rules as they are.</summary>
public sealed record TryOut(string Proposal) : TeachRequest(TeachingRights.Propose);

/// <param name="Version">The version of the proposal that was looked at: nobody publishes what they have not seen.</param>
public sealed record Publish(string Proposal, int Version) : TeachRequest(TeachingRights.Publish);

/// <param name="Reason">For its author.</param>
public sealed record Refuse(string Proposal, string Reason) : TeachRequest(TeachingRights.Publish);

/// <summary>Puts a proposal of one's own away.</summary>
public sealed record Withdraw(string Proposal) : TeachRequest(TeachingRights.Propose);

/// <summary>What taking back to an edition would mean; changes nothing.</summary>
public sealed record AskTakeBack(int Edition) : TeachRequest(TeachingRights.Publish);

/// <summary>Publishes an older edition's text as the next number.</summary>
/// <param name="Edition">The edition to go back to; 0: the project's rules alone.</param>
/// <param name="Newest">The newest edition that was looked at.</param>
public sealed record TakeBack(int Edition, int Newest) : TeachRequest(TeachingRights.Publish);

/// <summary>The club's own rules as a file that was written by hand: becomes a proposal.</summary>
/// <param name="Bytes">At most <see cref="MostBytes"/>.</param>
public sealed record UploadRules(string Name, ImmutableArray<byte> Bytes) : TeachRequest(TeachingRights.Propose)
{
    public const int MostBytes = Layer.MaxBytes;
}

/// <summary>The club's own rules as a file.</summary>
public sealed record DownloadRules() : TeachRequest(TeachingRights.Propose);

/// <summary>Passes on what a member knows. Any member may.</summary>
/// <param name="From">Whose words they are; null: of who passes them on.</param>
/// <param name="Where">Where they were said, as the platform names it; empty for nowhere.</param>
/// <param name="Id">Chosen by the platform from the very event, so that an event that comes twice is one tip; null: chosen here.</param>
public sealed record PassTip(string Words, MemberId? From = null, string FromName = "", string Where = "", string? Id = null) : TeachRequest(TeachingRights.None);

public sealed record ShowTips() : TeachRequest(TeachingRights.Propose);

public sealed record ShowTip(string Tip) : TeachRequest(TeachingRights.Propose);

/// <param name="Reason">For its giver.</param>
public sealed record DeclineTip(string Tip, string Reason) : TeachRequest(TeachingRights.Propose);

/// <summary>What was done to the rules.</summary>
/// <param name="Before">Only entries of a lower number; <see cref="long.MaxValue"/> for the newest.</param>
/// <param name="Whole">False leaves out how drafts were written.</param>
public sealed record ShowLog(long Before = long.MaxValue, bool Whole = false) : TeachRequest(TeachingRights.Propose);

public sealed record ShowEditions() : TeachRequest(TeachingRights.Propose);

/// <summary>Where the project's rules have changed under the club's own, and what of them is set aside.</summary>
public sealed record ShowConflicts() : TeachRequest(TeachingRights.Propose);

public sealed record ShowTeachingSettings() : TeachRequest(TeachingRights.Propose);

/// <summary>What is null stays as it is.</summary>
/// <param name="MostFactor">1 to 10.</param>
/// <param name="MemberShare">Above 0, at most 1.</param>
public sealed record ChooseTeaching(
    ImmutableSortedSet<string>? ProposeRoles = null,
    ImmutableSortedSet<string>? PublishRoles = null,
    bool? TwoPeople = null,
    LearningMode? Learning = null,
    double? MostFactor = null,
    double? MemberShare = null) : TeachRequest(TeachingRights.Manage);
