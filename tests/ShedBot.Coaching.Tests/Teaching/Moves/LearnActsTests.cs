using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Knowledge.Compiling;
using static ShedBot.Coaching.Tests.Teaching.Moves.MendedBikes;

namespace ShedBot.Coaching.Tests.Teaching.Moves;

/// <summary>What moderators do about what mended cases say: looked at, proposed, single numbers left out or never learnt, tried, published, turned down, taken back.</summary>
public sealed class LearnActsTests : IDisposable
{
    private readonly School school = new();

    public LearnActsTests() => school.Shelf.Closed.AddRange(Kinked(40));

    public void Dispose() => school.Dispose();

    [Fact]
    public async Task Look_WithEnoughMended_ShowsTheNumbersAndKeepsNothing()
    {
        var look = await school.DoAsync(School.Ada, new ShowLearning());

        var text = School.Text(look.Card);
        Assert.Contains("The cable is kinked", text, StringComparison.Ordinal);
        Assert.Contains("40 closed cases of 12 members, 40 of them mended", text, StringComparison.Ordinal);
        Assert.Contains("[Make it a proposal]", text, StringComparison.Ordinal);
        Assert.Empty(await school.Shelf.AuditAsync(School.Club, long.MaxValue, 10, default));
    }

    [Fact]
    public async Task Look_InAnotherClub_KnowsNothingOfThese()
    {
        var stranger = School.Member("zoe", TeachingRights.All, new ClubId("other-club"));
        var look = await school.DoAsync(stranger, new ShowLearning());

        Assert.Contains("0 closed cases", School.Text(look.Card), StringComparison.Ordinal);
        Assert.Equal("nothing", (await school.DoAsync(stranger, new ProposeLearnt())).Refused?.Code);
        // Nor do cases of others change what is counted here.
        var before = (await ProposeAsync()).Learnt;
        school.Shelf.Closed.AddRange(Kinked(200, from: 1000, club: stranger.Club));
        Assert.Equal(before, (await ProposeAsync()).Learnt);
    }

    [Fact]
    public async Task Propose_TriedAndPublished_ServesTheNumbersAndIsTakenBack()
    {
        var proposal = await ProposeAsync();
        Assert.Equal(ProposalState.Draft, proposal.State);
        var early = await school.DoAsync(School.Ada, new Publish(proposal.Id, proposal.Version));
        Assert.Equal("trial", early.Refused?.Code);
        Assert.Contains("The cable is kinked", School.Text(early.Card), StringComparison.Ordinal);

        var published = await PublishAsync(proposal.Id);

        Assert.Equal(1, published.Edition);
        var edition = (await school.Shelf.FindEditionAsync(School.Club, 1, default))!;
        Assert.Equal("", edition.Layer);
        Assert.InRange(edition.ReadLearnt().TimesOf(Fault), 1.25, 3);
        var log = (await school.Shelf.AuditAsync(School.Club, long.MaxValue, 1, default))[0];
        Assert.Contains("kinked or bent too tightly: from the rules' own word to ", log.What, StringComparison.Ordinal);
        var nothing = School.Text((await school.DoAsync(School.Ada, new ShowLearning())).Card);
        Assert.StartsWith("Nothing new to learn", nothing, StringComparison.Ordinal);
        Assert.Contains("is learnt already", nothing, StringComparison.Ordinal);
        // What is held back is told then as well.
        Assert.Contains("Tried on cases kept aside", nothing, StringComparison.Ordinal);

        var ask = await school.DoAsync(School.Bo, new AskTakeBack(0));
        Assert.Contains("to the rules' own word", School.Text(ask.Card), StringComparison.Ordinal);
        Assert.Equal(2, (await school.DoAsync(School.Bo, new TakeBack(0, 1))).Edition);
        Assert.True((await school.Shelf.FindEditionAsync(School.Club, 2, default))!.ReadLearnt().IsNothing);
    }

    [Fact]
    public async Task LeaveOut_OneNumber_StaysAsItIsAndCanBeTakenInAgain()
    {
        var proposal = await ProposeAsync();
        Assert.NotEqual(1, LearntText.Read(proposal.Learnt).Learnt!.TimesOf(Fault));
        var mark = TargetWords.Mark(Odds);

        var left = (await school.DoAsync(School.Ada, new LeaveOut(proposal.Id, mark, Out: true))).Proposal!;
        Assert.Equal(1, LearntText.Read(left.Learnt).Learnt!.TimesOf(Fault));
        Assert.Contains("Take it in again", School.Text((await school.DoAsync(School.Ada, new ShowNumber(proposal.Id, mark))).Card), StringComparison.Ordinal);

        var back = (await school.DoAsync(School.Ada, new LeaveOut(proposal.Id, mark, Out: false))).Proposal!;
        Assert.Equal(proposal.Learnt, back.Learnt);
        // A draft is its author's: nobody else changes it.
        Assert.Equal("gone", (await school.DoAsync(School.Bo, new LeaveOut(proposal.Id, mark, Out: true))).Refused?.Code);
        Assert.Equal("gone", (await school.DoAsync(School.Ada, new LeaveOut(proposal.Id, "nothing", Out: true))).Refused?.Code);
    }

    [Fact]
    public async Task LeaveOut_All_CannotBePublished()
    {
        var proposal = await ProposeAsync();
        foreach (var key in CountedNumbers.Read(proposal)!.Numbers.Select(n => n.Key)) await school.DoAsync(School.Ada, new LeaveOut(proposal.Id, TargetWords.Mark(key), Out: true));

        Assert.Equal("nothing", (await school.DoAsync(School.Ada, new TryOut(proposal.Id))).Refused?.Code);
        Assert.Contains("Take one in again, or put it away.", School.Text((await school.DoAsync(School.Ada, new ShowProposal(proposal.Id))).Card), StringComparison.Ordinal);
        Assert.Equal(ProposalState.Draft, (await school.Shelf.FindProposalAsync(School.Club, proposal.Id, default))!.State);
    }

    [Fact]
    public async Task Look_SomeLearntAlready_SaysHowMany()
    {
        var proposal = await ProposeAsync();
        var count = CountedNumbers.Read(proposal)!.Numbers.Length;
        await school.DoAsync(School.Ada, new LeaveOut(proposal.Id, TargetWords.Mark(Odds), Out: true));
        await PublishAsync(proposal.Id);

        var text = School.Text((await school.DoAsync(School.Ada, new ShowLearning())).Card);

        Assert.StartsWith("1 number could move", text, StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"{count - 1} more numbers that the cases speak for are learnt already."), text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Never_OneNumber_IsNotCountedUntilItIsUndone()
    {
        var mark = TargetWords.Mark(Odds);
        await school.DoAsync(School.Ada, new NeverLearn(mark, Never: true));

        Assert.Equal([Odds], (await school.Shelf.TeachingSettingsAsync(School.Club, default)).Off);
        Assert.DoesNotContain("kinked or bent too tightly: behind about", School.Text((await school.DoAsync(School.Ada, new ShowLearning())).Card), StringComparison.Ordinal);
        var settings = School.Text((await school.DoAsync(School.Ada, new ShowTeachingSettings())).Card);
        Assert.Contains("Numbers that are never learnt: 1", settings, StringComparison.Ordinal);
        Assert.Contains("Learn again how common it is that the cable is kinked", settings, StringComparison.Ordinal);
        Assert.Contains("never to be learnt", (await school.Shelf.AuditAsync(School.Club, long.MaxValue, 1, default))[0].What, StringComparison.Ordinal);

        await school.DoAsync(School.Ada, new NeverLearn(mark, Never: false));
        Assert.Contains("kinked or bent too tightly: behind about", School.Text((await school.DoAsync(School.Ada, new ShowLearning())).Card), StringComparison.Ordinal);
        Assert.Equal("rights", (await school.DoAsync(School.Member("eve", TeachingRights.Propose | TeachingRights.Publish), new NeverLearn(mark, Never: true))).Refused?.Code);
    }

    [Fact]
    public async Task Publish_AfterACountedCaseWentAway_IsToldStaleUntilItIsCountedAnew()
    {
        var proposal = await TriedAsync((await ProposeAsync()).Id);
        school.Shelf.Forget(School.Club.Member("m3"));

        Assert.Equal("stale", (await school.DoAsync(School.Ada, new Publish(proposal.Id, proposal.Version))).Refused?.Code);
        Assert.Equal("stale", (await school.DoAsync(School.Ada, new TryOut(proposal.Id))).Refused?.Code);
        var anew = (await school.DoAsync(School.Ada, new CountAnew(proposal.Id))).Proposal!;
        Assert.Contains("36 closed cases of 11 members", School.Text((await school.DoAsync(School.Ada, new ShowProposal(anew.Id))).Card), StringComparison.Ordinal);
        Assert.Null(anew.Trial);
        Assert.Equal(1, (await PublishAsync(anew.Id)).Edition);
    }

    [Fact]
    public async Task Publish_AfterOnlyMoreCasesWereClosed_IsStillGood()
    {
        var proposal = await TriedAsync((await ProposeAsync()).Id);
        school.Shelf.Closed.AddRange(Kinked(5, from: 500, at: School.Noon.AddHours(1)));

        Assert.Equal(1, (await school.DoAsync(School.Ada, new Publish(proposal.Id, proposal.Version), School.Noon.AddHours(2))).Edition);
    }

    [Fact]
    public async Task Publish_AfterAnotherEditionOrOtherLimits_IsToldStale()
    {
        var proposal = await TriedAsync((await ProposeAsync()).Id);
        await school.DoAsync(School.Ada, new ChooseTeaching(MostFactor: 1.5));
        Assert.Equal("stale", (await school.DoAsync(School.Ada, new Publish(proposal.Id, proposal.Version))).Refused?.Code);

        var anew = (await school.DoAsync(School.Ada, new CountAnew(proposal.Id))).Proposal!;
        Assert.InRange(LearntText.Read(anew.Learnt).Learnt!.TimesOf(Fault), 1.25, 1.5);
        await school.PublishAsync(School.Bo, "strength", Filled.Commoner);
        Assert.Equal("stale", (await school.DoAsync(School.Ada, new TryOut(anew.Id))).Refused?.Code);
    }

    [Fact]
    public async Task Publish_WhatTheTrialFoundUnsafe_IsRefused()
    {
        school.Trials.Lost = ["a stop is no longer found"];
        var proposal = await TriedAsync((await ProposeAsync()).Id);

        Assert.Equal("unsafe", (await school.DoAsync(School.Ada, new Publish(proposal.Id, proposal.Version))).Refused?.Code);
    }

    [Fact]
    public async Task Count_WhileItGoesOn_NobodyWaitsBehindIt()
    {
        // Another act of the very same member is done while cases are read for counting: the gate is not held meanwhile.
        var counting = school.DoAsync(School.Ada, new ShowLearning());
        var other = await school.DoAsync(School.Ada, new ShowRules());
        Assert.Null(other.Refused);
        Assert.Null((await counting).Refused);
    }

    [Fact]
    public async Task Choose_OutsideOfItsRange_IsToldAndKeepsNothing()
    {
        foreach (var wrong in new[] { new ChooseTeaching(MostFactor: 0.5), new ChooseTeaching(MostFactor: 11), new ChooseTeaching(MemberShare: 0), new ChooseTeaching(MemberShare: 1.1), new ChooseTeaching(MostFactor: double.NaN) })
            Assert.Equal("range", (await school.DoAsync(School.Ada, wrong)).Refused?.Code);
        Assert.Equal(0, (await school.Shelf.TeachingSettingsAsync(School.Club, default)).Version);

        await school.DoAsync(School.Ada, new ChooseTeaching(Learning: LearningMode.Automatic, MostFactor: 2, MemberShare: 0.1));
        var settings = await school.Shelf.TeachingSettingsAsync(School.Club, default);
        Assert.Equal((LearningMode.Automatic, 2, 0.1), (settings.Learning, settings.MostFactor, settings.MemberShare));
        Assert.Contains("goes live by itself", (await school.Shelf.AuditAsync(School.Club, long.MaxValue, 1, default))[0].What, StringComparison.Ordinal);
    }

    private async Task<Proposal> ProposeAsync() => (await school.DoAsync(School.Ada, new ProposeLearnt())).Proposal!;

    private async Task<Proposal> TriedAsync(string id) => (await school.DoAsync(School.Ada, new TryOut(id))).Proposal!;

    private async Task<TeachAnswer> PublishAsync(string id)
    {
        var tried = await TriedAsync(id);
        return await school.DoAsync(School.Ada, new Publish(id, tried.Version));
    }
}
