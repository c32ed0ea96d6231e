using System.Collections.Immutable;
using System.Text;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>What the tests of single acts do over and over with the rules of the small machine.</summary>
internal static class PumpSchool
{
    /// <summary>How often a dry bearing hums.</summary>
    public static Dictionary<string, string[]> Hums { get; } = new(StringComparer.Ordinal) { ["cause"] = ["bearing-dry"], ["what"] = ["+sign"], ["sign"] = ["hums"], ["word"] = ["likely"] };

    /// <summary>How common a kinked hose is.</summary>
    public static Dictionary<string, string[]> Kinks { get; } = new(StringComparer.Ordinal) { ["cause"] = ["hose-kinked"], ["what"] = ["+common"], ["common"] = ["rare"] };

    public static School New() => new(School.OfThePump);

    public static async Task<Proposal> TriedAsync(this School school, Teacher who, IReadOnlyDictionary<string, string[]>? answers = null, string? tip = null)
    {
        var written = await school.WriteAsync(who, "strength", answers ?? Hums, tip);
        return (await school.DoAsync(who, new TryOut(written.Proposal!.Id))).Proposal!;
    }

    /// <summary>The same, handed in.</summary>
    public static async Task<Proposal> HandedInAsync(this School school, Teacher who, IReadOnlyDictionary<string, string[]>? answers = null, string? tip = null) =>
        (await school.DoAsync(who, new HandIn((await school.TriedAsync(who, answers, tip)).Id))).Proposal!;

    public static async Task<Tip> TipAsync(this School school, Teacher from, string words = "a rag in the bearing hums too")
    {
        Assert.Null((await school.DoAsync(from, new PassTip(words))).Refused);
        return (await school.Shelf.TipsAsync(School.Club, TipState.Waiting, 100, default))[^1];
    }

    public static async Task<TipState> StateOfAsync(this School school, Tip tip) => (await school.Shelf.FindTipAsync(School.Club, tip.Id, default))!.State;

    public static async Task<Proposal> FindAsync(this School school, Proposal proposal) => (await school.Shelf.FindProposalAsync(School.Club, proposal.Id, default))!;

    /// <summary>Puts a proposal on the shelf as it is, past the desk.</summary>
    public static Task PutAsync(this School school, Proposal proposal) => school.Shelf.SaveTeachingAsync(
        new TeachingSaved(School.Club, proposal, null, null, null, [new AuditEntry(School.Club, 0, null, "", AuditAct.Changed, proposal.Id, "put", School.Noon)], []), default);

    public static ImmutableArray<byte> File(string text) =>
        [.. Encoding.UTF8.GetBytes("about: {covers: an invented club, author: Ada, source: common practice, date: 2026-05-01}\n" + text)];

    /// <summary>The newest entry of the log.</summary>
    public static async Task<AuditEntry> LastAsync(this School school) => (await school.Shelf.AuditAsync(School.Club, long.MaxValue, 1, default))[0];
}
