using System.Collections.Immutable;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Coaching.Teaching.Reporting;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>Every act with every right, and what others must never reach. A member without the right gets nothing done, whatever they send.</summary>
public sealed class RightsTests
{
    private static readonly ImmutableArray<TeachRequest> Acts =
    [
        new ShowRules(), new ShowWaiting(), new ShowProposal("P1"), new ChooseSheet(), new BeginSheet("cause"), new GoOn("P1"), new AnswerSheet("P1", "complaint", "drags"), new ShowSheet("P1"),
        new HandIn("P1"), new TryOut("P1"), new Publish("P1", 1), new Refuse("P1", "no"), new Withdraw("P1"), new AskTakeBack(0), new TakeBack(0, 1), new UploadRules("a.yaml", []), new DownloadRules(),
        new PassTip("the tie pinches"), new ShowTips(), new ShowTip("T1"), new DeclineTip("T1", "no"), new ShowLog(), new ShowEditions(), new ShowConflicts(), new ShowFigures("P1"), new ShowTeachingSettings(),
        new ChooseTeaching(TwoPeople: true), new ShowLearning(), new ProposeLearnt(), new CountAnew("P1"), new ShowNumbers("P1"), new ShowNumber("P1", "abc"), new LeaveOut("P1", "abc", true),
        new NeverLearn("abc", true),
        new ShowReports(), new ShowReport(ReportKind.WhatFixesWhat), new ShowUnheard(), new ShowUnheardWords("0"), new SearchMeaning("0", "drags"), new TeachMeaning("0", "0"), new DropUnheard("0"),
        new ChooseCheckFor("drags"),
    ];

    /// <summary>Written here by hand, so that a change of what an act needs is noticed.</summary>
    private static TeachingRights Least(TeachRequest act) => act switch
    {
        PassTip => TeachingRights.None,
        Publish or Refuse or AskTakeBack or TakeBack => TeachingRights.Publish,
        ChooseTeaching or NeverLearn => TeachingRights.Manage,
        _ => TeachingRights.Propose,
    };

    [Fact]
    public void Acts_OfThisTable_AreAllThereAre() => Assert.Equal(
        typeof(TeachRequest).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(TeachRequest)) && !t.IsAbstract).Select(t => t.Name).Order(StringComparer.Ordinal),
        Acts.Select(a => a.GetType().Name).Distinct().Order(StringComparer.Ordinal));

    [Fact]
    public async Task Handle_EveryActWithEveryRight_IsRefusedJustWhereTheRightIsMissing()
    {
        using var school = new School();
        for (var rights = TeachingRights.None; rights <= TeachingRights.All; rights++)
        {
            foreach (var act in Acts)
            {
                var before = (await school.Shelf.AuditAsync(School.Club, long.MaxValue, 1, default)).FirstOrDefault()?.Number;
                var answer = await school.DoAsync(School.Member("eve", rights), act);
                Assert.True((answer.Refused?.Code == "rights") == ((rights & Least(act)) != Least(act)), $"{act.GetType().Name} with {rights}: {answer.Refused?.Code}");
                if (answer.Refused?.Code == "rights") Assert.Equal(before, (await school.Shelf.AuditAsync(School.Club, long.MaxValue, 1, default)).FirstOrDefault()?.Number);
            }
        }
    }

    [Fact]
    public async Task Handle_AnotherClubsNames_FindNothing()
    {
        using var school = new School();
        var written = await school.WriteAsync(School.Ada, "cause", Filled.Cause);
        await school.DoAsync(School.Ada, new HandIn(written.Proposal!.Id));
        await school.DoAsync(School.Ada, new PassTip("a tip"));
        var tip = (await school.Shelf.TipsAsync(School.Club, TipState.Waiting, 1, default))[0];
        var stranger = School.Member("ada", TeachingRights.All, new ClubId("other-club"));
        foreach (var act in new TeachRequest[]
        {
            new ShowProposal(written.Proposal.Id), new GoOn(written.Proposal.Id), new AnswerSheet(written.Proposal.Id, "common", "rare"), new HandIn(written.Proposal.Id), new TryOut(written.Proposal.Id),
            new Publish(written.Proposal.Id, 99), new Refuse(written.Proposal.Id, "no"), new Withdraw(written.Proposal.Id), new ShowTip(tip.Id), new DeclineTip(tip.Id, "no"), new BeginSheet("cause", tip.Id),
            new PassTip("words", School.Ada.Who),
        })
            Assert.Equal("gone", (await school.DoAsync(stranger, act)).Refused?.Code);
    }

    [Fact]
    public async Task Handle_AnothersDraft_IsNobodyElses()
    {
        using var school = new School();
        var draft = (await school.DoAsync(School.Ada, new BeginSheet("cause"))).Proposal!;
        foreach (var act in new TeachRequest[] { new ShowProposal(draft.Id), new GoOn(draft.Id), new AnswerSheet(draft.Id, "complaint", "drags"), new HandIn(draft.Id), new Withdraw(draft.Id), new Publish(draft.Id, 1) })
            Assert.Equal("gone", (await school.DoAsync(School.Bo, act)).Refused?.Code);
    }

    [Theory]
    [InlineData("teach")]
    [InlineData("teach|Publish|P1")]
    [InlineData("teach|99|P1||")]
    [InlineData("teach|Nothing|P1||")]
    [InlineData("nudge|20260605|Done|bike|grease")]
    public void Read_OptionsThatWereNeverOurs_AreNone(string option) => Assert.Null(TeachPress.Read(option));

    [Theory]
    [InlineData("teach|Publish|P1|x|")]
    [InlineData("teach|TakeBack|-1|2|")]
    [InlineData("teach|Learning|99||")]
    public void Request_ForgedNumbers_AreNone(string option) => Assert.Null(TeachPress.Read(option)?.Request);
}
