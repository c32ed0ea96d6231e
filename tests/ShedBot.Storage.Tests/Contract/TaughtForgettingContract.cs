using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;
using static ShedBot.Storage.Tests.SampleTeaching;

namespace ShedBot.Storage.Tests.Contract;

/// <summary>What every store promises of forgetting somebody who taught a club, or a club that was taught.</summary>
public abstract class TaughtForgettingContract : CountingContract
{
    private const string Layer = "about:\n  covers: a club's own rules\nretires:\n  - of: fault\n    id: lost-ball\n    because: Heron said so\n    author: Heron\n    said by: Wren\n";

    private static readonly MemberId Heron = Twelve.Member("1");
    private static readonly MemberId Wren = Twelve.Member("7");

    [Fact]
    public async Task ForgetMember_WhoPublished_WhatTheyPublishedStaysWithoutThem()
    {
        var published = ProposalOf("p1") with { State = ProposalState.Published, Changes = """[{"kind":"retire","yaml":"author: Heron","credit":{"author":"Heron","saidBy":"Wren"}}]""" };
        await Teaching.SaveTeachingAsync(Act(EditionOf(1, layer: Layer)) with { Proposal = published }, Ct);
        await Teaching.SaveTeachingAsync(Act(EditionOf(2, person: "2", layer: Layer) with { ByName = "Teal" }) with { Audit = [Line(person: "2", name: "Teal")] }, Ct);

        await Clubs.ForgetMemberAsync(Heron, Ct);
        await ReopenAsync();

        var without = Layer.Replace("author: Heron", "author: somebody who has left", StringComparison.Ordinal);
        Same.Assert(EditionOf(1, layer: without) with { By = null, ByName = "" }, await Teaching.FindEditionAsync(Twelve, 1, Ct));
        Same.Assert(EditionOf(2, person: "2", layer: without) with { ByName = "Teal" }, await Teaching.FindEditionAsync(Twelve, 2, Ct));
        Same.Assert(
            published with
            {
                By = default,
                ByName = "",
                Version = 2,
                Changes = """[{"kind":"retire","yaml":"author: somebody who has left","credit":{"author":"somebody who has left","saidBy":"Wren"}}]""",
            },
            await Teaching.FindProposalAsync(Twelve, "p1", Ct));
        Assert.Equal([("Teal", 2L), ("", 1L)], (await Teaching.AuditAsync(Twelve, long.MaxValue, 10, Ct)).Select(a => (a.Name, a.Number)).ToArray());
        Assert.Null((await Teaching.AuditAsync(Twelve, 2, 1, Ct))[0].Who);
    }

    [Fact]
    public async Task ForgetMember_WhoGaveATip_TheTipGoesAndTheCreditWithIt()
    {
        await Teaching.SaveTeachingAsync(Act(TipOf("t1")) with { Say = [Thanks("one", Wren), Thanks("two", Heron)] }, Ct);
        await Teaching.SaveTeachingAsync(Act(TipOf("t2", person: "8") with { FromName = "Teal", PassedOnBy = Wren }), Ct);
        var open = ProposalOf("p1") with { Answers = NoAnswers.Add("said by", ["Wren"]).Add("which", ["Wren is not one", "lost-ball"]) };
        await Teaching.SaveTeachingAsync(Act(open), Ct);
        await Teaching.SaveTeachingAsync(Act(EditionOf(1, layer: Layer)) with { Audit = [Line(act: AuditAct.Published) with { What = "a tip of Wren's" }] }, Ct);
        await Teaching.SaveTeachingAsync(Act(Line(act: AuditAct.Tried, subject: "p9") with { What = "Wren, the bird" }), Ct);

        await Clubs.ForgetMemberAsync(Wren, Ct);

        Assert.Null(await Teaching.FindTipAsync(Twelve, "t1", Ct));
        Assert.Equal(["t2"], (await Teaching.TipsAsync(Twelve, TipState.Waiting, 10, Ct)).Select(t => t.Id));
        Assert.Equal(Twelve.Member("8"), (await Teaching.FindTipAsync(Twelve, "t2", Ct))!.PassedOnBy);
        Same.Assert(open with { Answers = open.Answers.SetItem("said by", []), Tip = null, Version = 2 }, await Teaching.FindProposalAsync(Twelve, "p1", Ct));
        Assert.Equal(Layer.Replace("said by: Wren", "said by: somebody who has left", StringComparison.Ordinal), (await Teaching.FindEditionAsync(Twelve, 1, Ct))!.Layer);
        Assert.Equal(TeachingPlace.Of(Heron), Assert.Single(await Clubs.UnsaidPlacesAsync(10, Ct)));
        // What a line quotes of the tip, or tells of a proposal made of it, goes; where the word stands for something else it stays.
        Assert.Equal(
            ["Wren, the bird", "a tip of somebody who has left's", "what was done", "what was done", ""],
            (await Teaching.AuditAsync(Twelve, long.MaxValue, 10, Ct)).Select(a => a.What).ToArray());
        await Assert.ThrowsAsync<StaleSaveException>(() => Teaching.SaveTeachingAsync(Act(open with { Version = 2 }), Ct));
    }

    [Fact]
    public async Task ForgetMember_WithProposals_OnlyThePublishedStay()
    {
        foreach (var state in Enum.GetValues<ProposalState>())
        {
            await Teaching.SaveTeachingAsync(Act(ProposalOf($"{state}") with { State = state }), Ct);
        }

        await Clubs.ForgetMemberAsync(Heron, Ct);

        foreach (var state in Enum.GetValues<ProposalState>())
        {
            Assert.Equal(state == ProposalState.Published ? 1 : 0, (await Teaching.ProposalsAsync(Twelve, state, 10, Ct)).Length);
        }

        await Assert.ThrowsAsync<StaleSaveException>(() => Teaching.SaveTeachingAsync(Act(ProposalOf("Draft") with { Version = 2 }), Ct));
    }

    [Fact]
    public async Task ForgetMember_CalledAsAnotherIs_LeavesTheOthersCredit()
    {
        await Teaching.SaveTeachingAsync(Act(EditionOf(1, layer: Layer)), Ct);
        await Teaching.SaveTeachingAsync(Act(TipOf("t1") with { FromName = "Heron" }), Ct);

        await Clubs.ForgetMemberAsync(Wren, Ct);

        Same.Assert(EditionOf(1, layer: Layer), await Teaching.FindEditionAsync(Twelve, 1, Ct));
        Assert.Equal("Heron", (await Teaching.AuditAsync(Twelve, 2, 1, Ct))[0].Name);
    }

    [Fact]
    public async Task ForgetMember_SayingNothingUnderstood_TheirWordsGo()
    {
        foreach (var (id, member) in new[] { ("a", "12/7"), ("b", "12/77"), ("c", "13/7"), ("d", "12/7") })
        {
            await Shed.SaveAsync(Sample.Opened(id, member).Next().Saying() with { Unheard = Unheard("brr " + id, member) }, Ct);
        }

        await Clubs.ForgetMemberAsync(Wren, Ct);

        Assert.Equal("brr b", Assert.Single(await Teaching.UnheardAsync(Twelve, 10, Ct)).Words);
        Assert.Equal("brr c", Assert.Single(await Teaching.UnheardAsync(Thirteen, 10, Ct)).Words);
        Assert.Empty((await Teaching.ClosedCasesAsync(Twelve, 10, Ct)).Select(c => c.Case.Id));
    }

    [Fact]
    public async Task ForgetClub_ThatWasTaught_LeavesNothingOfItAndAllOfOthers()
    {
        foreach (var club in new[] { "12", "120", "1", "13" })
        {
            await Teaching.SaveTeachingAsync(
                new TeachingSaved(new(club), ProposalOf("p1", club), TipOf("t1", club), SettingsOf(club), EditionOf(1, club), [Line(club)], [Thanks(club, new(club + "/7"))]), Ct);
            await Shed.SaveAsync(Sample.Opened(club, club + "/1").Next().Saying() with { Unheard = Unheard("brr", club + "/1") }, Ct);
        }

        await Clubs.ForgetClubAsync(Twelve, Ct);
        await ReopenAsync();

        foreach (var (club, kept) in new[] { ("12", 0), ("120", 1), ("1", 1), ("13", 1) })
        {
            Assert.Equal(kept, await KeptOfAsync(new(club)));
        }

        // Begins anew, from one.
        await Teaching.SaveTeachingAsync(Act(EditionOf(1)), Ct);
        Assert.Equal(1, Assert.Single(await Teaching.AuditAsync(Twelve, long.MaxValue, 10, Ct)).Number);
    }

    /// <returns>How much of everything is kept of a club, which is the same of each kind.</returns>
    private async Task<int> KeptOfAsync(ShedBot.Coaching.Clubs.ClubId club) => Assert.Single(new HashSet<int>
    {
        await Teaching.FindEditionAsync(club, 1, Ct) is null ? 0 : 1,
        (await Teaching.EditionsAsync(club, 10, Ct)).Length,
        (await Teaching.ProposalsAsync(club, ProposalState.Draft, 10, Ct)).Length,
        (await Teaching.TipsAsync(club, TipState.Waiting, 10, Ct)).Length,
        (await Teaching.AuditAsync(club, long.MaxValue, 10, Ct)).Length,
        (await Teaching.TeachingSettingsAsync(club, Ct)).Version,
        (await Teaching.UnheardAsync(club, 10, Ct)).Length,
        (await Shed.UnsaidAsync(TeachingPlace.Of(club.Member("7")), 10, Ct)).Length,
    });
}
