using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Moves;
using static ShedBot.Coaching.Tests.Teaching.Moves.MendedBikes;

namespace ShedBot.Coaching.Tests.Teaching.Moves;

/// <summary>What ShedBot does by itself over an invented club's cases: proposals, one at a time; numbers that go live within the limits; counting anew.</summary>
public sealed class LearningRoundsTests : IDisposable
{
    private readonly School school = new();
    private DateTimeOffset now = School.Noon;

    public LearningRoundsTests() => school.Shelf.Closed.AddRange(Kinked(40));

    public void Dispose() => school.Dispose();

    [Fact]
    public async Task Round_Proposals_PutsOneUpAndReplacesItInPlace()
    {
        Assert.Equal(RoundOutcome.Proposed, (await RoundAsync()).Outcome);
        var first = Assert.Single(await OpenAsync());
        Assert.Equal((default, RoundActs.Name), (first.By, first.ByName));
        Assert.Contains("1 proposal handed in", School.Text((await school.DoAsync(School.Ada, new ShowRules())).Card), StringComparison.Ordinal);
        Assert.Contains("by ShedBot", School.Text((await school.DoAsync(School.Ada, new ShowWaiting())).Card), StringComparison.Ordinal);
        var line = (await school.Shelf.AuditAsync(School.Club, long.MaxValue, 1, default))[0];
        Assert.Equal((null, "", AuditAct.Learnt), (line.Who, line.Name, line.Act));

        Assert.Equal(RoundOutcome.NotDue, (await RoundAsync(days: 3)).Outcome);
        school.Shelf.Closed.AddRange(Kinked(200, members: 60, from: 1000));
        Assert.Equal(RoundOutcome.Proposed, (await RoundAsync(days: 2)).Outcome);
        var second = Assert.Single(await OpenAsync());
        Assert.Equal(first.Id, second.Id);
        Assert.NotEqual(first.Learnt, second.Learnt);
        Assert.Contains("240 closed cases", School.Text((await school.DoAsync(School.Ada, new ShowProposal(second.Id))).Card), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Round_ProposalOfShedBot_IsTriedAndPublishedByOnePersonAlsoWithTheTwoPersonRule()
    {
        await school.DoAsync(School.Ada, new ChooseTeaching(TwoPeople: true));
        await RoundAsync();
        var open = Assert.Single(await OpenAsync());
        var tried = (await school.DoAsync(School.Ada, new TryOut(open.Id))).Proposal!;

        Assert.Equal(1, (await school.DoAsync(School.Ada, new Publish(open.Id, tried.Version))).Edition);
        Assert.Empty(school.Shelf.Said);
        Assert.Equal(RoundOutcome.NotDue, (await RoundAsync(days: 2)).Outcome);
    }

    [Fact]
    public async Task Round_AfterItWasTurnedDown_StaysQuietUntilClearlyMoreCases()
    {
        await RoundAsync();
        await school.DoAsync(School.Ada, new Refuse(Assert.Single(await OpenAsync()).Id, "we do not believe it"));
        Assert.Empty(school.Shelf.Said);

        school.Shelf.Closed.AddRange(Kinked(9, from: 1000));
        Assert.Equal(RoundOutcome.NotDue, (await RoundAsync(days: 2)).Outcome);
        school.Shelf.Closed.AddRange(Kinked(1, from: 1009));
        Assert.Equal(RoundOutcome.Proposed, (await RoundAsync(days: 2)).Outcome);
    }

    [Fact]
    public async Task LeaveOut_LastNumberOfShedBots_PutsItAwayWithALineAndLeavesItAlone()
    {
        await RoundAsync();
        var open = Assert.Single(await OpenAsync());
        var keys = CountedNumbers.Read(open)!.Numbers.Select(n => n.Key).ToList();
        foreach (var key in keys.Skip(1)) await school.DoAsync(School.Ada, new LeaveOut(open.Id, TargetWords.Mark(key), Out: true));
        Assert.Equal(open.Id, Assert.Single(await OpenAsync()).Id);

        var last = await school.DoAsync(School.Ada, new LeaveOut(open.Id, TargetWords.Mark(keys[0]), Out: true));

        Assert.StartsWith("Put away", School.Text(last.Card), StringComparison.Ordinal);
        Assert.Empty(await OpenAsync());
        Assert.Contains("put away, because all of its numbers were left out", School.Text((await school.DoAsync(School.Ada, new ShowLog())).Card), StringComparison.Ordinal);
        school.Shelf.Closed.AddRange(Kinked(9, from: 1000));
        Assert.Equal(RoundOutcome.NotDue, (await RoundAsync(days: 2)).Outcome);
        school.Shelf.Closed.AddRange(Kinked(1, from: 1009));
        Assert.Equal(RoundOutcome.Proposed, (await RoundAsync(days: 2)).Outcome);
    }

    /// <summary>As it was kept before the last number that is left out put a proposal away.</summary>
    [Fact]
    public async Task Round_OpenProposalOfWhichAllIsOut_IsPutAway()
    {
        await RoundAsync();
        var open = Assert.Single(await OpenAsync());
        var counted = CountedNumbers.Read(open)!;
        var allOut = LearnActs.With(open, counted with { Out = [.. counted.Numbers.Select(n => n.Key)] }, ShedBot.Knowledge.Compiling.Learnt.Nothing, now);
        await school.Shelf.SaveTeachingAsync(new Keeping.TeachingSaved(School.Club, allOut, null, null, null, [new AuditEntry(School.Club, 0, null, "", AuditAct.Changed, open.Id, "made up", now)], []), default);

        school.Shelf.Closed.AddRange(Kinked(1, from: 1000));
        Assert.Equal(RoundOutcome.NothingNew, (await RoundAsync(days: 2)).Outcome);

        Assert.Empty(await OpenAsync());
        Assert.Contains("all of its numbers were left out", (await school.Shelf.AuditAsync(School.Club, long.MaxValue, 1, default))[0].What, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Look_WhileShedBotsProposalSaysTheSame_LeadsToItAndNotToASecondOne()
    {
        await RoundAsync();
        var look = School.Text((await school.DoAsync(School.Ada, new ShowLearning())).Card);
        Assert.Contains("[Look at ShedBot's proposal of it]", look, StringComparison.Ordinal);
        Assert.DoesNotContain("[Make it a proposal]", look, StringComparison.Ordinal);

        school.Shelf.Closed.AddRange(Kinked(200, members: 60, from: 1000));
        Assert.Contains("[Make it a proposal]", School.Text((await school.DoAsync(School.Ada, new ShowLearning())).Card), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Round_Automatic_TellsBeforeTheTrialAndOnlyThen()
    {
        var told = new List<int>();
        Task Trying()
        {
            told.Add(school.Trials.Made);
            return Task.CompletedTask;
        }

        await AutomaticAsync();
        await school.Desk.RoundAsync(School.Club, now, default, Trying);
        await school.Desk.RoundAsync(School.Club, now.AddDays(2), default, Trying);
        Assert.Equal([0], told);
    }

    [Fact]
    public async Task Round_WhatTheCasesSayNoMore_IsPutAway()
    {
        await RoundAsync();
        school.Shelf.Closed.Clear();
        school.Shelf.Closed.AddRange(Kinked(2, from: 2000));

        Assert.Equal(RoundOutcome.NothingNew, (await RoundAsync(days: 2)).Outcome);
        Assert.Empty(await OpenAsync());
    }

    [Fact]
    public async Task Round_Off_DoesNothing()
    {
        await school.DoAsync(School.Ada, new ChooseTeaching(Learning: LearningMode.Off));
        Assert.Equal(RoundOutcome.NotDue, (await RoundAsync()).Outcome);
        Assert.Empty(await OpenAsync());
    }

    [Fact]
    public async Task Round_OfOneMembersCases_MovesNothingHoweverMany()
    {
        school.Shelf.Closed.Clear();
        school.Shelf.Closed.AddRange(Kinked(400, members: 1));
        Assert.Equal(RoundOutcome.NothingNew, (await RoundAsync()).Outcome);
    }

    [Fact]
    public async Task Round_Automatic_PublishesOnceByNobodyAndTells()
    {
        await AutomaticAsync();
        var news = await RoundAsync();

        Assert.Equal((RoundOutcome.Published, 1), (news.Outcome, news.Edition));
        var edition = (await school.Shelf.FindEditionAsync(School.Club, 1, default))!;
        Assert.Equal((null, null, "ShedBot"), (edition.By, edition.Proposal, edition.ByName));
        Assert.InRange(edition.ReadLearnt().TimesOf(Fault), 1.25, 10);
        Assert.Equal(1, school.Trials.Made);
        Assert.Contains("ShedBot: Learnt by itself", School.Text((await school.DoAsync(School.Ada, new ShowEditions())).Card), StringComparison.Ordinal);
        Assert.Contains("ShedBot learnt by itself, as the club has chosen", School.Text((await school.DoAsync(School.Ada, new ShowLog())).Card), StringComparison.Ordinal);
        Assert.Equal(RoundOutcome.NotDue, (await RoundAsync(days: 2)).Outcome);
        Assert.Equal(1, await school.Shelf.NewestEditionAsync(School.Club, default));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Round_AutomaticThatDoesHarm_BecomesAProposalWithTheReason(bool unsafely)
    {
        await AutomaticAsync();
        (school.Trials.Lost, school.Trials.Worse) = (unsafely ? ["a stop is no longer found"] : [], !unsafely);

        Assert.Equal(RoundOutcome.Proposed, (await RoundAsync()).Outcome);
        Assert.Equal(0, await school.Shelf.NewestEditionAsync(School.Club, default));
        var open = Assert.Single(await OpenAsync());
        Assert.Equal(!unsafely, open.Trial!.Safe);
        var text = School.Text((await school.DoAsync(School.Ada, new ShowProposal(open.Id))).Card);
        Assert.Contains("It did not go live by itself", text, StringComparison.Ordinal);
        Assert.Equal(!unsafely, text.Contains("[Publish it]", StringComparison.Ordinal));
        // Not tried again and again.
        school.Shelf.Closed.AddRange(Kinked(1, from: 3000, at: now.AddHours(1)));
        Assert.Equal(RoundOutcome.NothingNew, (await RoundAsync(days: 15)).Outcome);
        Assert.Equal(1, school.Trials.Made);
    }

    [Fact]
    public async Task Round_AutomaticWhileSomebodyPublishesOrChoosesOtherwise_PublishesNothing()
    {
        await AutomaticAsync();
        school.Trials.Meanwhile = () => school.DoAsync(School.Ada, new ChooseTeaching(Learning: LearningMode.Off));
        Assert.Equal(RoundOutcome.NotDue, (await RoundAsync()).Outcome);
        await AutomaticAsync();
        school.Trials.Meanwhile = () => school.PublishAsync(School.Bo, "strength", Filled.Commoner);
        Assert.Equal(RoundOutcome.NotDue, (await RoundAsync()).Outcome);
        Assert.Equal(1, await school.Shelf.NewestEditionAsync(School.Club, default));

        // Nothing is lost by it: the next round does it, over what was published.
        Assert.Equal(2, (await RoundAsync()).Edition);
        Assert.Contains("mends:", (await school.Shelf.FindEditionAsync(School.Club, 2, default))!.Layer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Round_OfTwoProcessesAtOnce_PublishesOnce()
    {
        await AutomaticAsync();
        using var other = new TeachDesk(school.Shelf, () => School.Shipped, new FakeTrials());
        RoundNews? theirs = null;
        school.Trials.Meanwhile = async () => theirs = await other.RoundAsync(School.Club, now, default);

        var mine = await RoundAsync();

        Assert.Equal((RoundOutcome.Published, RoundOutcome.NotDue), (theirs!.Outcome, mine.Outcome));
        Assert.Equal(1, await school.Shelf.NewestEditionAsync(School.Club, default));
    }

    [Fact]
    public async Task Round_ThatDiesBeforeOrAfterItIsKept_IsDoneOnceByTheNext()
    {
        await AutomaticAsync();
        school.Shelf.BeforeSave = () => throw new IOException("killed before");
        await Assert.ThrowsAsync<IOException>(() => RoundAsync());
        Assert.Equal(0, await school.Shelf.NewestEditionAsync(School.Club, default));

        using var next = new TeachDesk(school.Shelf, () => School.Shipped, school.Trials);
        Assert.Equal(RoundOutcome.Published, (await next.RoundAsync(School.Club, now, default)).Outcome);
        // Killed right after it was kept: nobody heard the answer, and the next one has nothing to do.
        using var third = new TeachDesk(school.Shelf, () => School.Shipped, school.Trials);
        Assert.Equal(RoundOutcome.NotDue, (await third.RoundAsync(School.Club, now, default)).Outcome);
        Assert.Equal(1, await school.Shelf.NewestEditionAsync(School.Club, default));
    }

    [Fact]
    public async Task Round_AutomaticThatWasTakenBack_IsNotPublishedAgainAtOnce()
    {
        await AutomaticAsync();
        await RoundAsync();
        await school.DoAsync(School.Ada, new TakeBack(0, 1));

        school.Shelf.Closed.AddRange(Kinked(9, from: 1000));
        Assert.Equal(RoundOutcome.NotDue, (await RoundAsync(days: 2)).Outcome);
        school.Shelf.Closed.AddRange(Kinked(1, from: 1009));
        Assert.Equal((RoundOutcome.Published, 3), await RoundAsync(days: 2) is var news ? (news.Outcome, news.Edition) : default);
    }

    [Fact]
    public async Task Round_AfterAMemberWent_CountsAnewWhatWasLearntWithoutTheirCases()
    {
        school.Shelf.Closed.AddRange(Dry(15));
        await AutomaticAsync();
        await RoundAsync();
        var before = (await school.Shelf.FindEditionAsync(School.Club, 1, default))!.ReadLearnt();
        foreach (var gone in new[] { "m0", "m1", "m2" }) school.Shelf.Forget(School.Club.Member(gone));

        var news = await RoundAsync();

        Assert.Equal((RoundOutcome.CountedAnew, 2), (news.Outcome, news.Edition));
        var after = (await school.Shelf.FindEditionAsync(School.Club, 2, default))!;
        Assert.InRange(after.ReadLearnt().TimesOf(Fault), 1, before.TimesOf(Fault) - 0.01);
        // As if they had never been there.
        var limits = LearningLimits.Of(await school.Shelf.TeachingSettingsAsync(School.Club, default));
        Assert.Equal(Learner.CountAnew(School.Shipped.Knowledge!, before, school.Shelf.Closed, limits, now).Learnt, after.ReadLearnt());
        Assert.Contains("ShedBot counted anew what was learnt", School.Text((await school.DoAsync(School.Ada, new ShowLog())).Card), StringComparison.Ordinal);
        Assert.Equal("", (await school.Shelf.LearningBookAsync(School.Club, default)).Anew);
    }

    [Fact]
    public async Task Round_AfterAllWent_HasLearntNothing()
    {
        await AutomaticAsync();
        await RoundAsync();
        foreach (var member in Enumerable.Range(0, 12)) school.Shelf.Forget(School.Club.Member($"m{member}"));

        Assert.Equal(2, (await RoundAsync()).Edition);
        Assert.Equal("", (await school.Shelf.FindEditionAsync(School.Club, 2, default))!.Learnt);
    }

    [Fact]
    public async Task TakeBack_ToAnEditionThatCountedCasesThatAreGone_ServesNoneOfItsNumbersUncounted()
    {
        school.Shelf.Closed.AddRange(Dry(15));
        await AutomaticAsync();
        await RoundAsync();
        await school.DoAsync(School.Ada, new ChooseTeaching(Learning: LearningMode.Off));
        await school.DoAsync(School.Ada, new TakeBack(0, 1));
        foreach (var gone in new[] { "m0", "m1", "m2" }) school.Shelf.Forget(School.Club.Member(gone));
        Assert.Equal(RoundOutcome.NotDue, (await RoundAsync()).Outcome);

        Assert.Contains("counted anew first", School.Text((await school.DoAsync(School.Ada, new AskTakeBack(1))).Card), StringComparison.Ordinal);
        Assert.Equal(3, (await school.DoAsync(School.Ada, new TakeBack(1, 2))).Edition);
        Assert.Equal("", (await school.Shelf.FindEditionAsync(School.Club, 3, default))!.Learnt);
        Assert.Equal((RoundOutcome.CountedAnew, 4), await RoundAsync() is var news ? (news.Outcome, news.Edition) : default);
        var (first, last) = ((await school.Shelf.FindEditionAsync(School.Club, 1, default))!.ReadLearnt(), (await school.Shelf.FindEditionAsync(School.Club, 4, default))!.ReadLearnt());
        Assert.InRange(last.TimesOf(Fault), 1.01, first.TimesOf(Fault) - 0.01);
    }

    [Fact]
    public async Task TakeBack_ToWhatWasPublishedBeforeTheCountAnew_ServesNoneOfItsNumbersUncounted()
    {
        await AutomaticAsync();
        await RoundAsync();
        await school.DoAsync(School.Ada, new ChooseTeaching(Learning: LearningMode.Off));
        school.Shelf.Forget(School.Club.Member("m0"));
        // Somebody was quicker than the count, and took the old numbers along.
        await school.PublishAsync(School.Ada, "strength", Filled.Commoner);
        Assert.Equal(3, (await RoundAsync()).Edition);
        var counted = (await school.Shelf.FindEditionAsync(School.Club, 3, default))!.Learnt;

        await school.DoAsync(School.Ada, new TakeBack(2, 3));

        Assert.Equal("", (await school.Shelf.FindEditionAsync(School.Club, 4, default))!.Learnt);
        Assert.Equal(5, (await RoundAsync()).Edition);
        Assert.Equal(counted, (await school.Shelf.FindEditionAsync(School.Club, 5, default))!.Learnt);
    }

    [Fact]
    public async Task TakeBack_WhileACountAnewStillWaits_KeepsTheWish()
    {
        await AutomaticAsync();
        await RoundAsync();
        await school.DoAsync(School.Ada, new ChooseTeaching(Learning: LearningMode.Off));
        school.Shelf.Forget(School.Club.Member("m0"));
        await school.PublishAsync(School.Ada, "strength", Filled.Commoner);
        await school.DoAsync(School.Ada, new TakeBack(1, 2));

        Assert.Equal("", (await school.Shelf.FindEditionAsync(School.Club, 3, default))!.Learnt);
        Assert.Equal((RoundOutcome.CountedAnew, 4), await RoundAsync() is var news ? (news.Outcome, news.Edition) : default);
        Assert.NotEqual("", (await school.Shelf.FindEditionAsync(School.Club, 4, default))!.Learnt);
    }

    [Fact]
    public async Task Round_OfOneClub_TakesNothingFromAnother()
    {
        var other = new ClubId("other-club");
        school.Shelf.Closed.AddRange(Kinked(10, from: 5000, club: other));
        Assert.Equal(RoundOutcome.Proposed, (await RoundAsync()).Outcome);
        Assert.Equal(RoundOutcome.NotDue, (await school.Desk.RoundAsync(new ClubId("third-club"), now, default)).Outcome);
        await school.Desk.RoundAsync(other, now, default);
        Assert.DoesNotContain(await school.Shelf.ProposalsAsync(other, ProposalState.Proposed, 10, default), p => School.Text(ProposalText(p)).Contains("40 closed", StringComparison.Ordinal));
        Assert.Empty(await school.Shelf.EditionsAsync(other, 10, default));
    }

    private static Cards.Card ProposalText(Proposal proposal) => new("", [.. MoveCards.Blocks(School.Shipped.Knowledge!, proposal)], []);

    private Task<TeachAnswer> AutomaticAsync() => school.DoAsync(School.Ada, new ChooseTeaching(Learning: LearningMode.Automatic, MostFactor: 10));

    private async Task<System.Collections.Immutable.ImmutableArray<Proposal>> OpenAsync() => await school.Shelf.ProposalsAsync(School.Club, ProposalState.Proposed, 10, default);

    private Task<RoundNews> RoundAsync(int days = 0)
    {
        now = now.AddDays(days);
        return school.Desk.RoundAsync(School.Club, now, default);
    }
}
