using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>Each gate before an edition, on both sides.</summary>
public sealed class PublishGateTests
{
    [Fact]
    public async Task Publish_OnesOwnWithoutTheTwoPersonRule_IsPublished()
    {
        using var school = PumpSchool.New();
        var tried = await school.TriedAsync(School.Ada);
        var done = await school.DoAsync(School.Ada, new Publish(tried.Id, tried.Version));
        Assert.Equal((1, ProposalState.Published, 1), (done.Edition, done.Proposal!.State, done.Proposal.Edition));
        Assert.Equal(tried.Version + 1, done.Proposal.Version);
        Assert.Null(done.Refused);
        // Nobody is told of what they did themselves.
        Assert.Empty(school.Shelf.Said);
        Assert.Equal((AuditAct.Published, "1"), ((await school.LastAsync()).Act, (await school.LastAsync()).Subject));
        var edition = (await school.Shelf.FindEditionAsync(School.Club, 1, default))!;
        Assert.Equal((tried.Id, School.Ada.Who, School.Noon), (edition.Proposal, edition.By!.Value, edition.At));
        Assert.Contains("edition: 1", edition.Layer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Publish_Twice_IsDoneOnce()
    {
        using var school = PumpSchool.New();
        var tried = await school.TriedAsync(School.Ada);
        var done = await school.DoAsync(School.Ada, new Publish(tried.Id, tried.Version));
        Assert.Equal("state", (await school.DoAsync(School.Ada, new Publish(tried.Id, done.Proposal!.Version))).Refused?.Code);
        Assert.Equal(1, await school.Shelf.NewestEditionAsync(School.Club, default));
    }

    [Fact]
    public async Task Publish_WithdrawnOrRefused_IsNot()
    {
        using var school = PumpSchool.New();
        var (one, two) = (await school.HandedInAsync(School.Ada), await school.HandedInAsync(School.Ada, PumpSchool.Kinks));
        var withdrawn = await school.DoAsync(School.Ada, new Withdraw(one.Id));
        var refused = await school.DoAsync(School.Bo, new Refuse(two.Id, "not so here"));
        Assert.Equal("state", (await school.DoAsync(School.Ada, new Publish(one.Id, withdrawn.Proposal!.Version))).Refused?.Code);
        Assert.Equal("state", (await school.DoAsync(School.Ada, new Publish(two.Id, refused.Proposal!.Version))).Refused?.Code);
        Assert.Equal("state", (await school.DoAsync(School.Ada, new TryOut(two.Id))).Refused?.Code);
    }

    [Fact]
    public async Task Publish_WithSomethingMissing_AsksForIt()
    {
        using var school = PumpSchool.New();
        var begun = (await school.DoAsync(School.Ada, new BeginSheet("strength"))).Proposal!;
        var answer = await school.DoAsync(School.Ada, new Publish(begun.Id, begun.Version));
        Assert.Equal(("missing", "cause"), (answer.Refused?.Code, answer.Question?.Id));
        Assert.Equal("missing", (await school.DoAsync(School.Ada, new TryOut(begun.Id))).Refused?.Code);
        Assert.Equal("missing", (await school.DoAsync(School.Ada, new HandIn(begun.Id))).Refused?.Code);
        Assert.Equal(0, school.Trials.Made);
    }

    /// <summary>A trial of the same changes against another edition or under other rules of the project's is none.</summary>
    [Fact]
    public async Task Publish_AfterTheRulesMoved_WantsANewTrial()
    {
        using var school = PumpSchool.New();
        var mine = await school.TriedAsync(School.Ada);
        Assert.DoesNotContain("Try it once more", School.Text((await school.DoAsync(School.Ada, new ShowProposal(mine.Id))).Card), StringComparison.Ordinal);
        var theirs = await school.TriedAsync(School.Bo, PumpSchool.Kinks);
        await school.DoAsync(School.Bo, new Publish(theirs.Id, theirs.Version));
        var told = await school.DoAsync(School.Ada, new Publish(mine.Id, mine.Version));
        Assert.Equal("trial", told.Refused?.Code);
        Assert.Contains("changed since", told.Refused!.Say, StringComparison.Ordinal);
        var again = (await school.DoAsync(School.Ada, new TryOut(mine.Id))).Proposal!;
        school.Rules = RuleBase.Of([RuleText.FromText("pump.yaml", Pump.Text.Replace("    minutes: 30\n", "    minutes: 31\n", StringComparison.Ordinal))]);
        Assert.Equal("trial", (await school.DoAsync(School.Ada, new Publish(again.Id, again.Version))).Refused?.Code);
        school.Rules = School.OfThePump;
        Assert.Equal(2, (await school.DoAsync(School.Ada, new Publish(again.Id, again.Version))).Edition);
    }

    /// <summary>The changes are looked over once more at the last moment, whatever a trial that was kept says.</summary>
    [Fact]
    public async Task Publish_LessSafeWithATrialThatCallsItSafe_IsRefused()
    {
        using var school = PumpSchool.New();
        var up = (await school.DoAsync(School.Ada, new UploadRules("ours.yaml", PumpSchool.File("mends:\n  - {of: check, id: turn-shaft, key: minutes, was: \"1\", now: \"2\"}\n")))).Proposal!;
        Assert.Equal(1, up.Version);
        var weaker = up with { Changes = ChangesText.Write([new MendValue(new(RuleKind.Check, "look-wheel"), new("minutes"), "2", "60", new("Ada", null, Credit.CommonPractice, new DateOnly(2026, 5, 1)))]), Version = 2 };
        await school.PutAsync(weaker with { Trial = new ProposalTrial(ProposalCards.Mark(weaker), 0, School.OfThePump.Knowledge!.Version, "", true, School.Noon) });
        Assert.Equal("problems", (await school.DoAsync(School.Ada, new Publish(up.Id, 2))).Refused?.Code);
        Assert.Equal(0, await school.Shelf.NewestEditionAsync(School.Club, default));
    }

    [Fact]
    public async Task Publish_AnothersProposal_TellsItsAuthor()
    {
        using var school = PumpSchool.New();
        var handed = await school.HandedInAsync(School.Ada);
        await school.DoAsync(School.Bo, new Publish(handed.Id, handed.Version));
        var word = Assert.Single(school.Shelf.Said);
        Assert.Equal((TeachingPlace.Of(School.Ada.Who), "Your proposal is published"), (word.Place, word.Card.Title));
    }

    /// <summary>A tip is thanked for only where it is still this proposal's.</summary>
    [Theory]
    [InlineData(TipState.Taken, true, true)]
    [InlineData(TipState.Taken, false, false)]
    [InlineData(TipState.Declined, true, false)]
    [InlineData(TipState.Waiting, true, false)]
    public async Task Publish_OfATip_ThanksOnlyForItsOwn(TipState state, bool itsOwn, bool thanked)
    {
        using var school = PumpSchool.New();
        var tip = await school.TipAsync(School.Member("ben", TeachingRights.None));
        var tried = await school.TriedAsync(School.Ada, tip: tip.Id);
        var taken = (await school.Shelf.FindTipAsync(School.Club, tip.Id, default))!;
        Assert.Equal((TipState.Taken, tried.Id), (taken.State, taken.Proposal));
        var moved = taken with { State = state, Proposal = itsOwn ? tried.Id : "P99", Version = taken.Version + 1 };
        await school.Shelf.SaveTeachingAsync(new TeachingSaved(School.Club, null, moved, null, null, [new AuditEntry(School.Club, 0, null, "", AuditAct.TipTaken, tip.Id, "moved", School.Noon)], []), default);
        Assert.Equal(1, (await school.DoAsync(School.Ada, new Publish(tried.Id, tried.Version))).Edition);
        Assert.Equal(thanked ? TipState.Used : state, await school.StateOfAsync(tip));
        Assert.Equal(thanked ? 1 : 0, school.Shelf.Said.Count);
        Assert.Equal(thanked ? AuditAct.TipUsed : AuditAct.Published, (await school.LastAsync()).Act);
    }

    [Fact]
    public async Task TakeBack_ToWhatIsThereAlready_OrNever_IsTold()
    {
        using var school = PumpSchool.New();
        Assert.Equal("same", (await school.DoAsync(School.Ada, new TakeBack(0, 0))).Refused?.Code);
        Assert.Contains("no rules of its own", (await school.DoAsync(School.Ada, new AskTakeBack(0))).Refused!.Say, StringComparison.Ordinal);
        await school.PublishAsync(School.Ada, "strength", PumpSchool.Hums);
        Assert.Contains("Edition 1 is the one", (await school.DoAsync(School.Ada, new AskTakeBack(1))).Refused!.Say, StringComparison.Ordinal);
        foreach (var number in new[] { 2, -1 })
        {
            Assert.Equal("gone", (await school.DoAsync(School.Ada, new AskTakeBack(number))).Refused?.Code);
            Assert.Equal("gone", (await school.DoAsync(School.Ada, new TakeBack(number, 1))).Refused?.Code);
        }

        var asked = await school.DoAsync(School.Ada, new AskTakeBack(0));
        Assert.Null(asked.Refused);
        Assert.Contains(asked.Card.Options, o => TeachPress.Read(o.Id)?.Request == new TakeBack(0, 1));
        Assert.Equal(1, await school.Shelf.NewestEditionAsync(School.Club, default));
    }

    /// <summary>What was learnt goes back with the rules, and stays where rules alone are published.</summary>
    [Fact]
    public async Task TakeBack_ToAnEditionWithSomethingLearnt_BringsItBack()
    {
        using var school = PumpSchool.New();
        await school.PublishAsync(School.Ada, "strength", PumpSchool.Hums);
        var first = (await school.Shelf.FindEditionAsync(School.Club, 1, default))!;
        Assert.Equal("", first.Learnt);
        await school.DoAsync(School.Bo, new TakeBack(0, 1));
        var back = await school.DoAsync(School.Bo, new TakeBack(1, 2));
        Assert.Equal(3, back.Edition);
        var third = (await school.Shelf.FindEditionAsync(School.Club, 3, default))!;
        Assert.Null(third.Proposal);
        Assert.Equal((School.Bo.Who, first.Layer.Replace("edition: 1", "edition: 3", StringComparison.Ordinal)), (third.By!.Value, third.Layer));
        Assert.Equal((AuditAct.TookBack, "3"), ((await school.LastAsync()).Act, (await school.LastAsync()).Subject));
    }

    /// <summary>An edition that was as safe as the project's rules of its day may hide an emergency that they have learnt to hear since.</summary>
    [Fact]
    public async Task TakeBack_ToWhatIsLessSafeByNow_IsRefused()
    {
        using var school = new School(Smoking("a haze stands over the motor"));
        var up = await school.DoAsync(School.Ada, new UploadRules("ours.yaml", PumpSchool.File("words:\n  - {concept: pump, riders say: [smoke from the pump]}\n")));
        var tried = (await school.DoAsync(School.Ada, new TryOut(up.Proposal!.Id))).Proposal!;
        Assert.Equal(1, (await school.DoAsync(School.Ada, new Publish(tried.Id, tried.Version))).Edition);
        await school.DoAsync(School.Ada, new TakeBack(0, 1));
        school.Rules = Smoking("smoke from the pump");
        var told = await school.DoAsync(School.Ada, new TakeBack(1, 2));
        Assert.Equal("unsafe", told.Refused?.Code);
        Assert.Contains("smoke from the pump", told.Refused!.Say, StringComparison.Ordinal);
        Assert.Equal(2, await school.Shelf.NewestEditionAsync(School.Club, default));
    }

    /// <param name="phrase">What riders say when the pump smokes.</param>
    private static RuleBase Smoking(string phrase) => RuleBase.Of([RuleText.FromText("pump.yaml", Pump.Text.Replace("smoke comes out of the pump", phrase, StringComparison.Ordinal))]);
}
