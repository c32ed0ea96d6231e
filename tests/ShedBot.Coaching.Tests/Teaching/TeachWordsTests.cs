using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Reporting;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>The typed grammar as a table: lines, and what they mean. Our own words.</summary>
public sealed class TeachWordsTests
{
    [Theory]
    [InlineData("tip of the lever broke")]
    [InlineData("tip of lever broke off")]
    [InlineData("Tip bent on the cable end")]
    [InlineData("tip came off the arm")]
    [InlineData("tip - it slips")]
    [InlineData("tipped over and now it drags")]
    [InlineData("tips over when I let go of it")]
    [InlineData("tip top, but it slips")]
    [InlineData("tip")]
    [InlineData("tip:")]
    [InlineData("a tip from the cable sticks out")]
    [InlineData("rulesy lever")]
    [InlineData("the rules of thumb do not help, it drags")]
    [InlineData("my clutch drags")]
    [InlineData("publish")]
    [InlineData("mend the clutch")]
    [InlineData("new cable and it drags")]
    [InlineData("try again")]
    [InlineData("back 3")]
    [InlineData("")]
    public void Read_ATroubleOfARider_IsForTheCoach(string line) => Assert.Null(TeachWords.Read(line));

    public static TheoryData<string, TeachRequest> Requests => new()
    {
        { "rules", new ShowRules() },
        { "  The   rules. ", new ShowRules() },
        { "rules new", new ChooseSheet() },
        { "rules write", new ChooseSheet() },
        { "rules new cause", new BeginSheet("cause") },
        { "rules new fault", new BeginSheet("cause") },
        { "rules new way to look", new BeginSheet("check") },
        { "rules new fix", new BeginSheet("repair") },
        { "rules new how to", new BeginSheet("how-to") },
        { "rules new cover", new BeginSheet("cover") },
        { "rules new fact", new BeginSheet("fact") },
        { "RULES NEW FACT OF THE BIKE", new BeginSheet("fact") },
        { "rules new service", new BeginSheet("service") },
        { "rules new task", new BeginSheet("service") },
        { "rules mend", new BeginSheet("wording") },
        { "rules mend strength", new BeginSheet("strength") },
        { "rules strength", new BeginSheet("strength") },
        { "rules mend phrases", new BeginSheet("phrase") },
        { "rules phrase", new BeginSheet("phrase") },
        { "rules retire", new BeginSheet("retire") },
        { "rules bring back", new BeginSheet("restore") },
        { "rules restore!", new BeginSheet("restore") },
        { "rules waiting", new ShowWaiting() },
        { "rules tips", new ShowTips() },
        { "rules words", new ShowUnheard() },
        { "rules not understood", new ShowUnheard() },
        { "tips", new ShowTips() },
        { "tip t3", new ShowTip("T3") },
        { "tip T3.", new ShowTip("T3") },
        { "tip: a dry cable drags", new PassTip("a dry cable drags") },
        { "Tip : A dry cable drags.", new PassTip("A dry cable drags.") },
        { "a tip: oil it", new PassTip("oil it") },
        { "rules log", new ShowLog() },
        { "rules log all", new ShowLog(Whole: true) },
        { "rules editions", new ShowEditions() },
        { "rules conflicts", new ShowConflicts() },
        { "rules settings", new ShowTeachingSettings() },
        { "rules two people", new ChooseTeaching(TwoPeople: true) },
        { "rules two people off", new ChooseTeaching(TwoPeople: false) },
        { "rules back 3", new AskTakeBack(3) },
        { "rules take back to 0", new AskTakeBack(0) },
        { "rules back to 12", new AskTakeBack(12) },
        { "rules file", new DownloadRules() },
        { "rules file out", new DownloadRules() },
    };

    [Theory]
    [MemberData(nameof(Requests))]
    public void Read_ALineForTheDesk_IsThatRequest(string line, TeachRequest request) =>
        Assert.Equal(request, Assert.IsType<AskLine>(TeachWords.Read(line)!.Value.Must).Request);

    [Theory]
    [InlineData("rules mend check cover screws", "check", "cover screws")]
    [InlineData("rules mend repair Set the slack", "repair", "Set the slack")]
    [InlineData("rules mend trouble", "complaint", null)]
    [InlineData("rules mend how-to grease", "how-to", "grease")]
    [InlineData("rules mend cover arm side", "cover", "arm side")]
    [InlineData("rules mend fact", "fact", null)]
    [InlineData("rules mend service grease", "service", "grease")]
    public void Read_MendWithWhatAndWhich_HasAnsweredTheFirstQuestions(string line, string of, string? rule)
    {
        var begin = Assert.IsType<BeginSheet>(Assert.IsType<AskLine>(TeachWords.Read(line)!.Value.Must).Request);
        Assert.Equal(("wording", of, rule), (begin.Sheet, begin.Given!["of"][0], begin.Given.GetValueOrDefault("rule") is { IsDefault: false } given ? given[0] : null));
    }

    [Theory]
    [InlineData("rules try", TeachVerb.Try, null, "")]
    [InlineData("rules try P12", TeachVerb.Try, "P12", "")]
    [InlineData("rules publish p3", TeachVerb.Publish, "P3", "")]
    [InlineData("rules hand in", TeachVerb.HandIn, null, "")]
    [InlineData("rules refuse P3: it is too strong", TeachVerb.Refuse, "P3", "it is too strong")]
    [InlineData("rules refuse because it is wrong", TeachVerb.Refuse, null, "because it is wrong")]
    [InlineData("rules decline T2 we have that", TeachVerb.Decline, "T2", "we have that")]
    [InlineData("rules put away", TeachVerb.Withdraw, null, "")]
    [InlineData("rules go on P1", TeachVerb.GoOn, "P1", "")]
    [InlineData("rules show P9", TeachVerb.Look, "P9", "")]
    [InlineData("rules all so far", TeachVerb.Sheet, null, "")]
    public void Read_SomethingToDoWithAProposal_SaysWhichAndWhy(string line, TeachVerb verb, string? proposal, string words) =>
        Assert.Equal(new ProposalLine(verb, proposal, words), TeachWords.Read(line)!.Value.Must);

    [Theory]
    [InlineData("rules file out my rules.yaml", true, "my rules.yaml")]
    [InlineData("rules file in C:/club.yaml", false, "C:/club.yaml")]
    public void Read_AFile_SaysWhichWay(string line, bool way, string path) => Assert.Equal(new FileLine(way, path), TeachWords.Read(line)!.Value.Must);

    [Fact]
    public void Read_Help_IsHelp() => Assert.IsType<HelpLine>(TeachWords.Read("rules help")!.Value.Must);

    [Theory]
    [InlineData("rules pubish", "rules help")]
    [InlineData("rules back three", "rules back 3")]
    [InlineData("rules mend chain", "rules mend check")]
    public void Read_AlmostAWord_SaysWhatToType(string line, string says) => Assert.Contains(says, TeachWords.Read(line)!.Value.Refused!.Say);
}
