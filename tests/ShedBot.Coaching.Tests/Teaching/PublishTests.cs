using ShedBot.Coaching.Teaching;

namespace ShedBot.Coaching.Tests.Teaching;

public sealed class PublishTests
{
    [Fact]
    public async Task Publish_ThenTakeBack_MakesTheNextEditionsAndNamesThemInTheLog()
    {
        using var school = new School();
        var published = await school.PublishAsync(School.Ada, "cause", Filled.Cause);
        Assert.Equal(1, published.Edition);
        Assert.Contains("cable-tie", (await school.Shelf.FindEditionAsync(School.Club, 1, default))!.Layer);
        var back = await school.DoAsync(School.Bo, new TakeBack(0, 1));
        Assert.Equal(2, back.Edition);
        Assert.Equal("", (await school.Shelf.FindEditionAsync(School.Club, 2, default))!.Layer);
        var again = await school.DoAsync(School.Bo, new TakeBack(1, 2));
        Assert.Equal(3, again.Edition);
        Assert.Contains("cable-tie", (await school.Shelf.FindEditionAsync(School.Club, 3, default))!.Layer);
        Assert.Contains("took back to edition 1", School.Text((await school.DoAsync(School.Ada, new ShowLog())).Card));
    }

    [Fact]
    public async Task Publish_WithoutATrial_IsRefused()
    {
        using var school = new School();
        var written = await school.WriteAsync(School.Ada, "cause", Filled.Cause);
        Assert.Equal("trial", (await school.DoAsync(School.Ada, new Publish(written.Proposal!.Id, written.Proposal.Version))).Refused?.Code);
        Assert.Equal(0, await school.Shelf.NewestEditionAsync(School.Club, default));
    }

    [Fact]
    public async Task Publish_WhatWasNotLookedAt_IsRefused()
    {
        using var school = new School();
        var written = await school.WriteAsync(School.Ada, "cause", Filled.Cause);
        var tried = await school.DoAsync(School.Ada, new TryOut(written.Proposal!.Id));
        var changed = await school.DoAsync(School.Ada, new AnswerSheet(written.Proposal.Id, "common", "rare"));
        Assert.Equal("stale", (await school.DoAsync(School.Ada, new Publish(written.Proposal.Id, tried.Proposal!.Version))).Refused?.Code);
        Assert.Equal("trial", (await school.DoAsync(School.Ada, new Publish(written.Proposal.Id, changed.Proposal!.Version))).Refused?.Code);
    }

    [Fact]
    public async Task Publish_WhatTheTrialFoundUnsafe_IsRefused()
    {
        using var school = new School();
        school.Trials.Lost = ["a stop is no longer found"];
        Assert.Equal("unsafe", (await school.PublishAsync(School.Ada, "cause", Filled.Cause)).Refused?.Code);
    }

    [Fact]
    public async Task Publish_OnesOwnWithTheTwoPersonRule_NeedsSomebodyElse()
    {
        using var school = new School();
        await school.DoAsync(School.Ada, new ChooseTeaching(TwoPeople: true));
        Assert.Equal("two-people", (await school.PublishAsync(School.Ada, "cause", Filled.Cause)).Refused?.Code);
        var own = (await school.Shelf.ProposalsAsync(School.Club, ProposalState.Draft, 1, default))[0];
        var handed = await school.DoAsync(School.Ada, new HandIn(own.Id));
        var other = await school.DoAsync(School.Bo, new Publish(own.Id, handed.Proposal!.Version));
        Assert.Equal(1, other.Edition);
        Assert.Contains(school.Shelf.Said, m => m.Place == TeachingPlace.Of(School.Ada.Who));
    }

    [Fact]
    public async Task Publish_WhileAnotherPublishes_IsToldAndOverwritesNothing()
    {
        using var school = new School();
        var mine = await TriedAsync(school, School.Ada, "uncommon");
        var theirs = await school.WriteAsync(School.Bo, "strength", Filled.Commoner);
        var tried = await school.DoAsync(School.Bo, new TryOut(theirs.Proposal!.Id));
        school.Shelf.BeforeSave = () => school.DoAsync(School.Bo, new Publish(tried.Proposal!.Id, tried.Proposal.Version));
        var late = await school.DoAsync(School.Ada, new Publish(mine.Id, mine.Version));
        Assert.Equal("trial", late.Refused?.Code);
        Assert.Equal(1, await school.Shelf.NewestEditionAsync(School.Club, default));
        var anew = await school.DoAsync(School.Ada, new TryOut(mine.Id));
        Assert.Equal(2, (await school.DoAsync(School.Ada, new Publish(mine.Id, anew.Proposal!.Version))).Edition);
        Assert.Contains("mends:", (await school.Shelf.FindEditionAsync(School.Club, 2, default))!.Layer);
    }

    [Fact]
    public async Task TryOut_WhileItIsChanged_KeepsNoTrial()
    {
        using var school = new School();
        var written = await school.WriteAsync(School.Ada, "cause", Filled.Cause);
        school.Trials.Meanwhile = () => school.DoAsync(School.Ada, new AnswerSheet(written.Proposal!.Id, "common", "rare"));
        Assert.Equal("stale", (await school.DoAsync(School.Ada, new TryOut(written.Proposal!.Id))).Refused?.Code);
        Assert.Null((await school.Shelf.FindProposalAsync(School.Club, written.Proposal.Id, default))!.Trial);
    }

    [Fact]
    public async Task TakeBack_AfterAnotherPublished_IsTold()
    {
        using var school = new School();
        await school.PublishAsync(School.Ada, "cause", Filled.Cause);
        Assert.Equal("stale", (await school.DoAsync(School.Bo, new TakeBack(0, 0))).Refused?.Code);
    }

    [Fact]
    public async Task Publish_OfATip_ThanksItsGiver()
    {
        using var school = new School();
        await school.DoAsync(School.Member("ben", TeachingRights.None), new PassTip("look at the cable ties @everyone"));
        var tip = (await school.Shelf.TipsAsync(School.Club, TipState.Waiting, 1, default))[0];
        var written = await school.WriteAsync(School.Ada, "cause", Filled.Cause, tip.Id);
        var tried = await school.DoAsync(School.Ada, new TryOut(written.Proposal!.Id));
        await school.DoAsync(School.Ada, new Publish(written.Proposal.Id, tried.Proposal!.Version));
        Assert.Equal(TipState.Used, (await school.Shelf.FindTipAsync(School.Club, tip.Id, default))!.State);
        Assert.Equal(TeachingPlace.Of(tip.From), Assert.Single(school.Shelf.Said).Place);
    }

    [Fact]
    public async Task Answers_OfADeskThatDied_AreThereForTheNext()
    {
        using var school = new School();
        var begun = await school.DoAsync(School.Ada, new BeginSheet("cause"));
        await school.DoAsync(School.Ada, new AnswerSheet(begun.Proposal!.Id, "complaint", "drags"));
        using var next = new TeachDesk(school.Shelf, () => School.Shipped, school.Trials);
        var on = await next.HandleAsync(School.Ada, new GoOn(begun.Proposal.Id), School.Noon, CancellationToken.None);
        Assert.Equal("cause-is", on.Question!.Id);
    }

    private static async Task<Proposal> TriedAsync(School school, Teacher who, string common)
    {
        var written = await school.WriteAsync(who, "cause", new Dictionary<string, string[]>(Filled.Cause, StringComparer.Ordinal) { ["common"] = [common] });
        return (await school.DoAsync(who, new TryOut(written.Proposal!.Id))).Proposal!;
    }
}
