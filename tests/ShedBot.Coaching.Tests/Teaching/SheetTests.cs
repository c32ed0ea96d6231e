using ShedBot.Coaching.Teaching;

namespace ShedBot.Coaching.Tests.Teaching;

public sealed class SheetTests
{
    [Fact]
    public async Task Write_ACauseThatIsNew_FitsTheShippedRulesAndReadsAloud()
    {
        using var school = new School();
        var written = await school.WriteAsync(School.Ada, "cause", Filled.Cause);
        var text = School.Text(written.Card);
        Assert.Contains("If a cable tie round the frame pinches the clutch cable, riders often (55 to 80 %) say: the clutch drags.", text);
        Assert.Contains("it is very often (80 to 95 %) mended when you cut the tight tie and put a looser one on.", text);
        Assert.DoesNotContain("Does not fit yet", text);
        Assert.DoesNotContain("To look at", text);
        Assert.Equal(ProposalState.Draft, written.Proposal!.State);
    }

    [Fact]
    public async Task Write_AsOnATelephone_ReadsAloudAllTheSame()
    {
        using var school = new School();
        var answers = new Dictionary<string, string[]>(Filled.Cause, StringComparer.Ordinal)
        {
            ["cause-is"] = ["Most likely a cable tie round the frame pinches the clutch cable."],
            ["sign-means"] = ["The ties that hold the clutch cable to the frame."],
            ["repair-does"] = ["Cut the tight tie and put a looser one on."],
        };
        var expected = (await school.WriteAsync(School.Ada, "cause", Filled.Cause)).Proposal!;
        var written = (await school.WriteAsync(School.Ada, "cause", answers)).Proposal!;
        Assert.Equal((expected.Title, expected.Changes), (written.Title, written.Changes));
    }

    [Fact]
    public async Task Write_TheWordsTheWrongWayRound_IsToldWithTheQuestionThatMendsIt()
    {
        using var school = new School();
        var answers = new Dictionary<string, string[]>(Filled.Cause, StringComparer.Ordinal) { ["sign-strength"] = ["almost no chance"] };
        var written = await school.WriteAsync(School.Ada, "cause", answers);
        Assert.Contains("Was that meant the other way round?", School.Text(written.Card), StringComparison.Ordinal);
        Assert.Contains(written.Card.Options, o => TeachPress.Read(o.Id) is { Verb: TeachVerb.GoOn, B: "sign-strength" });
    }

    [Fact]
    public async Task Ask_OfALongSheet_TellsThePartAndShowsWhatIsNearFirst()
    {
        using var school = new School();
        var id = (await school.DoAsync(School.Ada, new BeginSheet("cause"))).Proposal!.Id;
        foreach (var question in new[] { "complaint", "cause-is", "cause-because", "complaint-strength" }) await school.DoAsync(School.Ada, new AnswerSheet(id, question, [.. Filled.Cause[question]]));
        var asked = await school.DoAsync(School.Ada, new AnswerSheet(id, "common", [.. Filled.Cause["common"]]));
        Assert.Contains("Part 3 of 7: what gives it away.", School.Text(asked.Card), StringComparison.Ordinal);
        Assert.Equal("Something that nobody looks at yet", asked.Card.Options[0].Label);
        // "... pinches the clutch cable": of 67 the path of the cable is among the twelve that are shown.
        Assert.Contains(asked.Card.Options, o => o.Label == "The path of the cable");
    }

    [Fact]
    public async Task GoOn_WithAllAnsweredAndTried_ShowsTheTrialBeforeItCanBePublished()
    {
        using var school = new School();
        var id = (await school.WriteAsync(School.Ada, "cause", Filled.Cause)).Proposal!.Id;
        await school.DoAsync(School.Ada, new TryOut(id));
        var text = School.Text((await school.DoAsync(School.Ada, new GoOn(id))).Card);
        Assert.Contains("Tried:", text, StringComparison.Ordinal);
        Assert.Contains("[Publish it]", text, StringComparison.Ordinal);
        Assert.Contains("Measured:", School.Text((await school.DoAsync(School.Ada, new ShowFigures(id))).Card), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Filled.Others), MemberType = typeof(Filled))]
    public async Task Write_EachOfTheOtherSheets_FitsTheShippedRules(string sheet, string[] answers)
    {
        using var school = new School();
        var given = answers.Select(a => a.Split('=', 2)).ToDictionary(p => p[0], p => p[1] == "?" ? School.Shipped.Knowledge!.HowTos.Keys.Take(1).ToArray() : p[1].Split('\n'), StringComparer.Ordinal);
        var written = await school.WriteAsync(School.Ada, sheet, given);
        var text = School.Text(written.Card);
        Assert.Contains("[Try it out]", text);
        Assert.DoesNotContain("Does not fit yet", text);
    }

    [Fact]
    public async Task Answer_InAnyOrder_GivesTheSameChanges()
    {
        // Sheets are functions of their answers: four orders drawn with fixed seeds.
        using var school = new School();
        var expected = (await school.WriteAsync(School.Ada, "cause", Filled.Cause)).Proposal!.Changes;
        for (var seed = 1; seed <= 4; seed++)
        {
            var id = (await school.DoAsync(School.Ada, new BeginSheet("cause"))).Proposal!.Id;
            var left = Filled.Cause.ToList();
            var random = new Random(seed);
            while (left.Count > 0)
            {
                foreach (var (question, values) in left.OrderBy(_ => random.Next()).ToList())
                    await school.DoAsync(School.Ada, new AnswerSheet(id, question, [.. values]));
                var kept = (await school.Shelf.FindProposalAsync(School.Club, id, default))!.Answers;
                left.RemoveAll(a => kept.ContainsKey(a.Key));
            }

            Assert.Equal(expected, (await school.Shelf.FindProposalAsync(School.Club, id, default))!.Changes);
        }
    }

    [Theory]
    [InlineData("It says \"no\": {x} # - [y] 'z' \\ & * ! | > % @ `")]
    [InlineData("Das Öl läuft, 油が漏れる, النفط 🔧")]
    [InlineData("yes")]
    [InlineData("--- ...")]
    public async Task Write_OddText_SurvivesTheWholeWay(string text)
    {
        using var school = new School();
        var answers = new Dictionary<string, string[]>(Filled.Cause, StringComparer.Ordinal) { ["cause-because"] = [text] };
        await school.PublishAsync(School.Ada, "cause", answers);
        var layer = (await school.Shelf.FindEditionAsync(School.Club, 1, default))!.ReadLayer();
        var rules = ShedBot.Knowledge.Layers.LayeredRules.Load(School.Shipped, layer).Knowledge!;
        Assert.Contains(rules.Faults.Values, f => f.Because == text);
    }
}
