using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Writing;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>Covers, facts of the bike and service tasks by sheet: read aloud, published, and then in the rules as they were meant. What they say is invented.</summary>
public sealed class BikeSheetTests
{
    [Fact]
    public async Task Cover_WithACheckBehindIt_ComesBeforeThatCheck()
    {
        using var school = new School();
        var text = School.Text((await school.WriteAsync(School.Ada, "cover", Filled.Cover)).Card);
        Assert.Contains("To open first: the leg guard (two wing nuts); 2 minutes, 2 steps.", text);
        Assert.Contains("lies behind the leg guard (two wing nuts).", text);
        Assert.DoesNotContain("Does not fit yet", text);
        var rules = await PublishedAsync(school, "cover", Filled.Cover);
        var cover = Assert.Single(rules.Covers.Values, c => !School.Shipped.Knowledge!.Covers.ContainsKey(c.Id));
        Assert.Equal((cover.Id, true), (rules.Checks["measure-slack"].Cover, rules.Checks["measure-slack"].HandsOn));
    }

    [Fact]
    public async Task Cover_WithACheckFromMemoryBehindIt_PutsTheQuestionForHandsFirst()
    {
        using var school = new School();
        var memory = School.Shipped.Knowledge!.Checks.Values.Where(c => c is { HandsOn: false, Cover: null } && !c.How.IsEmpty).OrderBy(c => c.Id, StringComparer.Ordinal).First();
        var rules = await PublishedAsync(school, "cover", new(Filled.Cover) { ["cover-behind"] = [new RuleKey(RuleKind.Check, memory.Id).ToString()] });
        Assert.True(rules.Checks[memory.Id].HandsOn);
    }

    [Fact]
    public async Task Cover_WithNothingBehindIt_IsToldWithTheQuestionThatMendsIt()
    {
        using var school = new School();
        var answers = new Dictionary<string, string[]>(Filled.Cover);
        answers.Remove("cover-behind");
        var written = await school.WriteAsync(School.Ada, "cover", answers);
        Assert.Contains("Nothing lies behind it yet.", School.Text(written.Card));
        Assert.Contains(written.Card.Options, o => TeachPress.Read(o.Id) is { Verb: TeachVerb.GoOn, B: "cover-behind" });
    }

    [Fact]
    public async Task Fact_New_MovesItsCauseAndLeavesTheRestOfIt()
    {
        using var school = new School();
        var text = School.Text((await school.WriteAsync(School.Ada, "fact", Filled.Fact)).Card);
        Assert.Contains("A fact of the bike: which clutch lever is fitted.", text);
        Assert.Contains("it has 0.2 times the odds", text);
        Assert.DoesNotContain("Does not fit yet", text);
        var rules = await PublishedAsync(school, "fact", Filled.Fact);
        var fact = Assert.Single(rules.Facts.Values, f => !School.Shipped.Knowledge!.Facts.ContainsKey(f.Id));
        Assert.Equal(["lever-kit", "another-one-longer-pull"], fact.Values.Select(v => v.Id));
        var (was, now) = (School.Shipped.Knowledge!.Faults["slack-too-big"], rules.Faults["slack-too-big"]);
        Assert.Equal([.. was.MovedBy, new ProfileCondition(fact.Id, "another-one-longer-pull", 0.2)], now.MovedBy.AsEnumerable());
        Assert.Equal((was.Is, was.Because, was.HowCommon), (now.Is, now.Because, now.HowCommon));
        Assert.Equal(Signs(was), Signs(now));
    }

    [Fact]
    public async Task Fact_ThatIsAsked_MovesTwoMoreCauses()
    {
        using var school = new School();
        var rules = await PublishedAsync(school, "fact", new()
        {
            ["fact"] = ["machine-age"],
            ["fact-moves-1"] = ["slack-too-big"],
            ["fact-moves-1-value"] = ["new-build"],
            ["fact-moves-1-times"] = ["5"],
            ["fact-moves-2"] = ["slack-vanishes-hot"],
            ["fact-moves-2-value"] = ["new-build"],
            ["fact-moves-2-times"] = ["0.5"],
        });
        Assert.Contains(new ProfileCondition("machine-age", "new-build", 5), rules.Faults["slack-too-big"].MovedBy);
        Assert.Contains(new ProfileCondition("machine-age", "new-build", 0.5), rules.Faults["slack-vanishes-hot"].MovedBy);
    }

    [Fact]
    public async Task Service_AgainAndAgainAndOnceAfterFitting_IsDueAsWritten()
    {
        using var school = new School();
        var text = School.Text((await school.WriteAsync(School.Ada, "service", Filled.Task)).Card);
        Assert.Contains("Due 5 riding days after the kit was fitted and every 20 riding days or 365 days, whichever comes first; 3 minutes, no hazard.", text);
        Assert.DoesNotContain("Does not fit yet", text);
        var rules = await PublishedAsync(school, "service", Filled.Task);
        var task = Assert.Single(rules.Service.Values, t => !School.Shipped.Knowledge!.Service.ContainsKey(t.Id));
        Assert.Equal([new Interval(20, Measure.RidingDays), new Interval(365, Measure.Days)], task.Every.AsEnumerable());
        Assert.Equal([new Interval(5, Measure.RidingDays)], Assert.Single(task.After).At.AsEnumerable());
        Assert.Equal([new WeatherFactor("wet", 2)], task.Sooner.AsEnumerable());
        Assert.Equal("No grit left.", task.Steps[0].Note);
        Assert.Equal(["lever-heavy"], task.Reveals.AsEnumerable());
    }

    [Theory]
    [InlineData("+each", "", "before every ride")]
    [InlineData("+after", "0", "before the next ride after")]
    [InlineData("+after", "1", "1 hour after")]
    public async Task Service_DueInOtherWays_SaysSo(string when, string after, string says)
    {
        using var school = new School();
        var answers = new Dictionary<string, string[]>(Filled.Task) { ["task-when"] = [when], ["task-after-in"] = ["hours"], ["task-after"] = [after], ["task-event"] = ["set-slack"] };
        answers.Remove("task-wet");
        var text = School.Text((await school.WriteAsync(School.Ada, "service", answers)).Card);
        Assert.Contains(says, text);
        Assert.DoesNotContain("Does not fit yet", text);
    }

    [Fact]
    public async Task Service_DangerousWithoutACaution_CannotBeHandedIn()
    {
        using var school = new School();
        var id = (await school.DoAsync(School.Ada, new BeginSheet("service"))).Proposal!.Id;
        foreach (var (question, values) in new Dictionary<string, string[]>(Filled.Task) { ["task-hazard"] = ["high"] })
            await school.DoAsync(School.Ada, new AnswerSheet(id, question, [.. values]));
        Assert.Equal("task-caution", (await school.DoAsync(School.Ada, new HandIn(id))).Question?.Id);
    }

    [Theory]
    [InlineData("every", "10 riding days\n1 year", "10 riding days|365 days")]
    public async Task Wording_OfHowOftenATaskIs_ReadsAsTyped(string part, string lines, string expected)
    {
        using var school = new School();
        var was = School.Shipped.Knowledge!.Service["look-at-slack"];
        var rules = await PublishedAsync(school, "wording", new() { ["of"] = ["service"], ["rule"] = ["look-at-slack"], ["part"] = [part], ["lines"] = lines.Split('\n') });
        var now = rules.Service["look-at-slack"];
        Assert.Equal(expected.Split('|'), now.Every.Select(ShedBot.Knowledge.Wording.IntervalWords.Text));
        Assert.Equal((was.Called, was.Why, was.After.Length, was.DoneBy.Length, was.OnlyIf.Length), (now.Called, now.Why, now.After.Length, now.DoneBy.Length, now.OnlyIf.Length));
    }

    [Fact]
    public async Task Wording_OfHowOften_ThatNobodyCanRead_IsToldWithTheQuestion()
    {
        using var school = new School();
        var written = await school.WriteAsync(School.Ada, "wording", new Dictionary<string, string[]> { ["of"] = ["service"], ["rule"] = ["look-at-slack"], ["part"] = ["every"], ["lines"] = ["now and then"] });
        Assert.Contains("I cannot read how often.", School.Text(written.Card));
        Assert.Contains(written.Card.Options, o => TeachPress.Read(o.Id) is { Verb: TeachVerb.GoOn, B: "lines" });
    }

    [Theory]
    [InlineData("cover", "arm-side-cover")]
    [InlineData("fact", "machine-age")]
    [InlineData("service", "look-at-slack")]
    public async Task RetireAndRestore_EachOfTheBikesOwn_GoesAndComesBack(string of, string rule)
    {
        using var school = new School();
        await school.PublishAsync(School.Ada, "retire", new Dictionary<string, string[]> { ["of"] = [of], ["rule"] = [rule], ["because"] = ["Not in this club."] });
        var gone = await RulesAsync(school);
        Assert.False(gone.Covers.ContainsKey(rule) || gone.Facts.ContainsKey(rule) || gone.Service.ContainsKey(rule));
        await school.PublishAsync(School.Ada, "restore", new Dictionary<string, string[]> { ["rule"] = [new RuleKey(of == "cover" ? RuleKind.Cover : of == "fact" ? RuleKind.Fact : RuleKind.Service, rule).ToString()] });
        var back = await RulesAsync(school);
        Assert.Equal(School.Shipped.Knowledge!.Version, back.Version);
    }

    [Fact]
    public void All_SheetsTogether_FitOnOneList() => Assert.InRange(Sheets.All.Length, 12, SheetCards.MostOptions);

    private static IEnumerable<(string, string, string)> Signs(FaultRule fault) =>
        fault.ShowsAs.SelectMany(s => s.Value.Select(v => (s.Key, v.Key, v.Value))).Order();

    private static async Task<KnowledgeBase> PublishedAsync(School school, string sheet, Dictionary<string, string[]> answers)
    {
        var published = await school.PublishAsync(School.Ada, sheet, answers);
        Assert.True(published.Refused is null, School.Text(published.Card));
        return await RulesAsync(school);
    }

    private static async Task<KnowledgeBase> RulesAsync(School school)
    {
        var edition = await school.Shelf.FindEditionAsync(School.Club, await school.Shelf.NewestEditionAsync(School.Club, default), default);
        return LayeredRules.Load(School.Shipped, edition!.ReadLayer()).Knowledge!;
    }
}
