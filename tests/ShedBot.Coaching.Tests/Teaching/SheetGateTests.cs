using System.Collections.Immutable;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>Beginning and writing a sheet: who may, how many, from which tip, and what an answer does to what was tried.</summary>
public sealed class SheetGateTests
{
    [Fact]
    public async Task Begin_TooManyDrafts_IsToldAndOthersDraftsDoNotCount()
    {
        using var school = PumpSchool.New();
        for (var i = 0; i < SheetActs.MostDrafts; i++)
        {
            Assert.Null((await school.DoAsync(School.Ada, new BeginSheet("strength"))).Refused);
            await school.DoAsync(School.Bo, new BeginSheet("phrase"));
            if (i < 5) await school.DoAsync(School.Bo, new Withdraw((await school.LastAsync()).Subject));
        }

        Assert.Equal("many", (await school.DoAsync(School.Ada, new BeginSheet("strength"))).Refused?.Code);
        Assert.Null((await school.DoAsync(School.Bo, new BeginSheet("strength"))).Refused);
        Assert.Equal("sheet", (await school.DoAsync(School.Bo, new BeginSheet("no such"))).Refused?.Code);
    }

    [Fact]
    public async Task Begin_FromATip_TakesItOnceAndCreditsItsGiver()
    {
        using var school = PumpSchool.New();
        var tip = await school.TipAsync(School.Member("ben", TeachingRights.None));
        Assert.Equal("gone", (await school.DoAsync(School.Ada, new BeginSheet("strength", "T99"))).Refused?.Code);
        var begun = await school.DoAsync(School.Ada, new BeginSheet("strength", tip.Id));
        Assert.Equal((tip.Id, "ben", 1), (begun.Proposal!.Tip, begun.Proposal.Answers["said-by"][0], begun.Proposal.Version));
        Assert.Contains("a rag in the bearing", School.Text(begun.Card), StringComparison.Ordinal);
        var taken = (await school.Shelf.FindTipAsync(School.Club, tip.Id, default))!;
        Assert.Equal((TipState.Taken, begun.Proposal.Id, 2), (taken.State, taken.Proposal, taken.Version));
        Assert.Equal("taken", (await school.DoAsync(School.Bo, new BeginSheet("strength", tip.Id))).Refused?.Code);
        Assert.Equal([AuditAct.TipTaken, AuditAct.Began], (await school.Shelf.AuditAsync(School.Club, long.MaxValue, 2, default)).Select(a => a.Act));
    }

    /// <summary>Who writes from a tip of their own is the author already.</summary>
    [Fact]
    public async Task Begin_FromOnesOwnTip_CreditsNobodyElse()
    {
        using var school = PumpSchool.New();
        var tip = await school.TipAsync(School.Ada);
        Assert.DoesNotContain("said-by", (await school.DoAsync(School.Ada, new BeginSheet("strength", tip.Id))).Proposal!.Answers.Keys);
    }

    /// <summary>What is known already is filled in, as far as it fits, and what does not is asked.</summary>
    [Fact]
    public async Task Begin_WithAnswersGiven_AsksTheRest()
    {
        using var school = PumpSchool.New();
        var given = ImmutableSortedDictionary<string, ImmutableArray<string>>.Empty.WithComparers(StringComparer.Ordinal).Add("of", ["complaint"]).Add("rule", ["no such"]).Add("nonsense", ["x"]);
        var begun = await school.DoAsync(School.Ada, new BeginSheet("phrase", null, given));
        Assert.Equal(("rule", "of"), (begun.Question?.Id, Assert.Single(begun.Proposal!.Answers.Keys)));
        Assert.Equal(AuditAct.Began, (await school.LastAsync()).Act);
        Assert.Equal(begun.Proposal.Answers, (await school.FindAsync(begun.Proposal)).Answers);
    }

    [Fact]
    public async Task GoOn_WithAQuestionNamed_AsksThatOne()
    {
        using var school = PumpSchool.New();
        var tried = await school.TriedAsync(School.Ada);
        Assert.Equal("word", (await school.DoAsync(School.Ada, new GoOn(tried.Id, "word"))).Question?.Id);
        // One that is not asked here, and none named: what it comes to.
        Assert.Null((await school.DoAsync(School.Ada, new GoOn(tried.Id, "common"))).Question);
        Assert.Null((await school.DoAsync(School.Ada, new GoOn(tried.Id))).Question);
        Assert.NotNull((await school.DoAsync(School.Ada, new ShowSheet(tried.Id))).Sheet);
    }

    [Fact]
    public async Task Answer_OfWhatCameAsAFile_IsRefused()
    {
        using var school = PumpSchool.New();
        var up = (await school.DoAsync(School.Ada, new UploadRules("ours.yaml", PumpSchool.File("words:\n  - {concept: wheel, riders say: [impeller]}\n")))).Proposal!;
        Assert.Equal("sheet", (await school.DoAsync(School.Ada, new AnswerSheet(up.Id, "word", "likely"))).Refused?.Code);
        Assert.Null((await school.DoAsync(School.Ada, new GoOn(up.Id))).Question);
        Assert.Null((await school.DoAsync(School.Ada, new ShowSheet(up.Id))).Refused);
    }

    /// <summary>A change takes a proposal that was handed in back to its author; the same answer once more keeps the trial.</summary>
    [Fact]
    public async Task Answer_OfWhatWasHandedIn_MakesItADraftAgain()
    {
        using var school = PumpSchool.New();
        var handed = await school.HandedInAsync(School.Ada);
        var same = (await school.DoAsync(School.Ada, new AnswerSheet(handed.Id, "word", "likely"), School.Noon.AddHours(1))).Proposal!;
        Assert.Equal((ProposalState.Draft, handed.Version + 1, School.Noon.AddHours(1), handed.Trial), (same.State, same.Version, same.ChangedAt, same.Trial));
        Assert.Equal("answered as before", (await school.LastAsync()).What);
        var other = (await school.DoAsync(School.Ada, new AnswerSheet(handed.Id, "word", "unlikely"))).Proposal!;
        Assert.Null(other.Trial);
        Assert.NotEqual(handed.Changes, other.Changes);
        Assert.Contains("likely", (await school.LastAsync()).What, StringComparison.Ordinal);
    }

    /// <summary>Of a form with several answers what fits is kept, and the first that does not is asked again.</summary>
    [Fact]
    public async Task Answer_AFormWithAWrongAnswer_KeepsTheOthers()
    {
        using var school = PumpSchool.New();
        var begun = (await school.DoAsync(School.Ada, new BeginSheet("strength"))).Proposal!;
        var form = ImmutableSortedDictionary<string, ImmutableArray<string>>.Empty.WithComparers(StringComparer.Ordinal)
            .Add("cause", ["bearing-dry"]).Add("what", ["+sign"]).Add("sign", ["no such"]).Add("word", ["now and then"]).Add("common", ["rare"]);
        var answer = await school.DoAsync(School.Ada, new AnswerSheet(begun.Id, form));
        Assert.Equal("sign", answer.Question?.Id);
        Assert.NotNull(answer.Refused);
        Assert.Equal(["cause", "what"], (await school.FindAsync(begun)).Answers.Keys);
        Assert.Equal(begun.Version + 1, answer.Proposal!.Version);
        // Nothing but a wrong answer changes nothing.
        var wrong = await school.DoAsync(School.Ada, new AnswerSheet(begun.Id, "sign", "no such"));
        Assert.Equal(answer.Proposal.Version, wrong.Proposal!.Version);
        // Passing over what must be answered and was leaves the answer.
        await school.DoAsync(School.Ada, new AnswerSheet(begun.Id, "cause"));
        Assert.Equal("bearing-dry", (await school.FindAsync(begun)).Answers["cause"][0]);
    }
}
