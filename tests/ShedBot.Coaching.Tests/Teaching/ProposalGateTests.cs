using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>A proposal between writing and publishing: whose it is, where it stands, and what becomes of its tip and its trial.</summary>
public sealed class ProposalGateTests
{
    [Fact]
    public async Task HandIn_OnesOwnDraft_IsForThoseWhoPublish()
    {
        using var school = PumpSchool.New();
        var tried = await school.TriedAsync(School.Ada);
        var handed = await school.DoAsync(School.Ada, new HandIn(tried.Id), School.Noon.AddHours(1));
        Assert.Equal((ProposalState.Proposed, tried.Version + 1, School.Noon.AddHours(1)), (handed.Proposal!.State, handed.Proposal.Version, handed.Proposal.ChangedAt));
        Assert.Equal("state", (await school.DoAsync(School.Ada, new HandIn(tried.Id))).Refused?.Code);
        // Others see it by now, and still can neither hand it in nor write on it nor put it away.
        Assert.Null((await school.DoAsync(School.Bo, new ShowProposal(tried.Id))).Refused);
        foreach (var act in new TeachRequest[] { new HandIn(tried.Id), new Withdraw(tried.Id), new GoOn(tried.Id), new ShowSheet(tried.Id), new AnswerSheet(tried.Id, "word", "unlikely") })
            Assert.Equal("gone", (await school.DoAsync(School.Bo, act)).Refused?.Code);
        Assert.Equal(handed.Proposal, await school.FindAsync(tried));
    }

    [Fact]
    public async Task HandIn_WhatChangesNothingOrDoesNotFit_IsNot()
    {
        using var school = PumpSchool.New();
        var tried = await school.TriedAsync(School.Ada);
        var empty = tried with { Id = "P90", Sheet = "", Changes = "", Trial = null, Version = 1 };
        await school.PutAsync(empty);
        Assert.Equal("nothing", (await school.DoAsync(School.Ada, new HandIn("P90"))).Refused?.Code);
        Assert.Equal("nothing", (await school.DoAsync(School.Ada, new TryOut("P90"))).Refused?.Code);
        var broken = empty with { Id = "P91", Changes = ChangesText.Write([new Retire(new(RuleKind.Emergency, "shock"), "x", new("Ada", null, Credit.CommonPractice, new DateOnly(2026, 5, 1)))]) };
        await school.PutAsync(broken);
        Assert.Equal("problems", (await school.DoAsync(School.Ada, new HandIn("P91"))).Refused?.Code);
        Assert.Equal("problems", (await school.DoAsync(School.Ada, new TryOut("P91"))).Refused?.Code);
        Assert.Equal(1, school.Trials.Made);
    }

    [Fact]
    public async Task Show_ATrialOfTheRulesAsTheyStand_IsShownToWhoPublishes()
    {
        using var school = PumpSchool.New();
        var handed = await school.HandedInAsync(School.Ada);
        Assert.Contains("Tried:", School.Text((await school.DoAsync(School.Bo, new ShowProposal(handed.Id))).Card), StringComparison.Ordinal);
        await school.PutAsync(handed with { Trial = handed.Trial! with { Report = "" }, Version = handed.Version + 1 });
        Assert.DoesNotContain("Tried:", School.Text((await school.DoAsync(School.Bo, new ShowProposal(handed.Id))).Card), StringComparison.Ordinal);
        await school.PutAsync(handed with { Trial = handed.Trial! with { Edition = 7 }, Version = handed.Version + 2 });
        var stale = await school.DoAsync(School.Bo, new ShowProposal(handed.Id));
        Assert.DoesNotContain("Tried:", School.Text(stale.Card), StringComparison.Ordinal);
        Assert.DoesNotContain(stale.Card.Options, o => TeachPress.Read(o.Id)?.Request is Publish);
        await school.PutAsync(handed with { State = ProposalState.Withdrawn, Version = handed.Version + 3 });
        Assert.DoesNotContain("Tried:", School.Text((await school.DoAsync(School.Bo, new ShowProposal(handed.Id))).Card), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", false)]
    [InlineData("  ... !", false)]
    [InlineData("no", true)]
    [InlineData("7", true)]
    public async Task Refuse_WithAReason_TellsItsAuthor(string reason, bool done)
    {
        using var school = PumpSchool.New();
        var handed = await school.HandedInAsync(School.Ada);
        var answer = await school.DoAsync(School.Bo, new Refuse(handed.Id, reason), School.Noon.AddHours(2));
        Assert.Equal(done ? null : "reason", answer.Refused?.Code);
        var after = await school.FindAsync(handed);
        Assert.Equal(done ? ProposalState.Refused : ProposalState.Proposed, after.State);
        Assert.Equal(done ? 1 : 0, school.Shelf.Said.Count);
        if (!done) return;
        Assert.Equal((reason, handed.Version + 1, School.Noon.AddHours(2)), (after.Reason, after.Version, after.ChangedAt));
        Assert.Equal(TeachingPlace.Of(School.Ada.Who), school.Shelf.Said[0].Place);
        Assert.Equal("state", (await school.DoAsync(School.Bo, new Refuse(handed.Id, reason))).Refused?.Code);
    }

    [Fact]
    public async Task Refuse_OnesOwn_TellsNobodyAndADraftIsNone()
    {
        using var school = PumpSchool.New();
        var draft = await school.TriedAsync(School.Ada);
        Assert.Equal("state", (await school.DoAsync(School.Ada, new Refuse(draft.Id, "no"))).Refused?.Code);
        await school.DoAsync(School.Ada, new HandIn(draft.Id));
        Assert.Null((await school.DoAsync(School.Ada, new Refuse(draft.Id, "better so"))).Refused);
        Assert.Empty(school.Shelf.Said);
    }

    /// <summary>A tip goes back to where others can take it up, if it is still this proposal's.</summary>
    [Theory]
    [InlineData(true, TipState.Taken, true, TipState.Waiting)]
    [InlineData(false, TipState.Taken, true, TipState.Waiting)]
    [InlineData(true, TipState.Taken, false, TipState.Taken)]
    [InlineData(true, TipState.Declined, true, TipState.Declined)]
    public async Task RefuseOrWithdraw_OfATip_SetsItFree(bool refuse, TipState state, bool itsOwn, TipState after)
    {
        using var school = PumpSchool.New();
        var tip = await school.TipAsync(School.Member("ben", TeachingRights.None));
        var handed = await school.HandedInAsync(School.Ada, tip: tip.Id);
        var taken = (await school.Shelf.FindTipAsync(School.Club, tip.Id, default))!;
        await school.Shelf.SaveTeachingAsync(
            new TeachingSaved(School.Club, null, taken with { State = state, Proposal = itsOwn ? handed.Id : "P99", Version = taken.Version + 1 }, null, null, [new AuditEntry(School.Club, 0, null, "", AuditAct.TipTaken, tip.Id, "moved", School.Noon)], []), default);
        Assert.Null((await school.DoAsync(refuse ? School.Bo : School.Ada, refuse ? new Refuse(handed.Id, "no") : new Withdraw(handed.Id))).Refused);
        Assert.Equal(after, await school.StateOfAsync(tip));
        if (after == TipState.Waiting) Assert.Null((await school.Shelf.FindTipAsync(School.Club, tip.Id, default))!.Proposal);
    }

    [Fact]
    public async Task Withdraw_OnesOwn_IsPutAwayOnce()
    {
        using var school = PumpSchool.New();
        var draft = (await school.DoAsync(School.Ada, new BeginSheet("strength"))).Proposal!;
        var away = (await school.DoAsync(School.Ada, new Withdraw(draft.Id), School.Noon.AddHours(3))).Proposal!;
        Assert.Equal((ProposalState.Withdrawn, draft.Version + 1, School.Noon.AddHours(3)), (away.State, away.Version, away.ChangedAt));
        Assert.Equal("state", (await school.DoAsync(School.Ada, new Withdraw(draft.Id))).Refused?.Code);
        Assert.Equal(AuditAct.Withdrew, (await school.LastAsync()).Act);
    }

    [Fact]
    public void Reason_OfALongText_IsCutShort()
    {
        Assert.Equal(ProposalActs.MostReason, ProposalActs.Reason(new string('x', 600))!.Length);
        Assert.Equal(ProposalActs.MostReason, ProposalActs.Reason(new string('x', 500))!.Length);
        Assert.Null(ProposalActs.Reason("?!"));
    }

    /// <summary>A trial is of the rules and the changes that it began with, of the cases that are closed, and is kept once.</summary>
    [Fact]
    public async Task TryOut_OfWhatFits_KeepsWhatItFound()
    {
        using var school = PumpSchool.New();
        school.Shelf.Closed.AddRange(Trials.MadeCases.Of(School.OfThePump.Knowledge!, 3).Select(c => c with { Case = c.Case with { Member = School.Ada.Who } }));
        var written = await school.WriteAsync(School.Ada, "strength", PumpSchool.Hums);
        var tried = await school.DoAsync(School.Ada, new TryOut(written.Proposal!.Id));
        Assert.Null(tried.Refused);
        Assert.Equal((written.Proposal.Version + 1, true, 0), (tried.Proposal!.Version, tried.Proposal.Trial!.Safe, tried.Proposal.Trial.Edition));
        Assert.EndsWith(" 3", tried.Proposal.Trial.Report, StringComparison.Ordinal);
        Assert.Contains("Tried:", School.Text(tried.Card), StringComparison.Ordinal);
        Assert.Equal(tried.Proposal, await school.FindAsync(written.Proposal));
        Assert.Equal((AuditAct.Tried, written.Proposal.Id), ((await school.LastAsync()).Act, (await school.LastAsync()).Subject));
    }

    [Fact]
    public async Task TryOut_ThatLosesSafety_IsKeptAsUnsafe()
    {
        using var school = PumpSchool.New();
        school.Trials.Lost = ["a stop is no longer found", "nor another"];
        var written = await school.WriteAsync(School.Ada, "strength", PumpSchool.Hums);
        var tried = await school.DoAsync(School.Ada, new TryOut(written.Proposal!.Id));
        Assert.Equal(("unsafe", false), (tried.Refused?.Code, tried.Proposal!.Trial!.Safe));
        Assert.Contains("nor another", School.Text(tried.Card), StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(tried.Card.Options, o => TeachPress.Read(o.Id)?.Request is Publish);
        Assert.Equal("unsafe", (await school.DoAsync(School.Ada, new Publish(written.Proposal.Id, tried.Proposal.Version))).Refused?.Code);
    }

    /// <summary>What happens to a proposal while its trial runs counts, and the trial is not kept with what it is not of.</summary>
    [Fact]
    public async Task TryOut_WhilePutAwayOrPublishedUnder_KeepsNothing()
    {
        using var school = PumpSchool.New();
        var (one, two) = (await school.WriteAsync(School.Ada, "strength", PumpSchool.Hums), await school.TriedAsync(School.Bo, PumpSchool.Kinks));
        school.Trials.Meanwhile = () => school.DoAsync(School.Bo, new Publish(two.Id, two.Version));
        Assert.Equal("stale", (await school.DoAsync(School.Ada, new TryOut(one.Proposal!.Id))).Refused?.Code);
        school.Trials.Meanwhile = () => school.DoAsync(School.Ada, new Withdraw(one.Proposal.Id));
        Assert.Equal("state", (await school.DoAsync(School.Ada, new TryOut(one.Proposal.Id))).Refused?.Code);
        Assert.Null((await school.FindAsync(one.Proposal)).Trial);
        Assert.Equal("gone", (await school.DoAsync(School.Ada, new TryOut("P99"))).Refused?.Code);
    }
}
