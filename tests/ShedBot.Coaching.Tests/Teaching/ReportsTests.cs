using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Reporting;
using static ShedBot.Coaching.Tests.Learning.Told;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>The reports at the desk, held against an invented club small enough to be counted by hand.</summary>
public sealed class ReportsTests : IDisposable
{
    private readonly School school = new();

    public ReportsTests() => school.Shelf.Closed.AddRange(
    [
        // Dragging: seven cases. Mended four: thrice by the slack, once by the flower nut. One came back after it held, one went to a human, one was left.
        Mended(1, Id("ann"), "set-slack", "drags"),
        Mended(2, Id("ben"), "set-slack", "drags"),
        Mended(3, Id("ben"), "set-slack", "drags"),
        Mended(4, Id("cy"), "nut-out-a-notch", "drags"),
        Case(5, Id("ann"), CasePhase.HandedOver, Has("drags"), Held("set-slack"), Line(EntryKind.CameBack, "set-slack")),
        Opened(Case(6, Id("ben"), CasePhase.HandedOver, Has("drags")), "it trots off when Zebedee rides"),
        Opened(Case(7, Id("cy"), CasePhase.Left, Has("drags")), "it trots, my name is zebedee"),
        // Slipping: two, neither mended; one was stopped, which is an answer.
        Case(8, Id("ann"), CasePhase.Left, Has("slips")),
        Case(9, Id("ann"), CasePhase.Stopped, Has("slips")),
        // Nothing that the rules know: two, by two members.
        Opened(Case(10, Id("ann"), CasePhase.HandedOver), "the whatsit whistles"),
        Opened(Case(11, Id("ben"), CasePhase.HandedOver), "my whatsit whistles loudly"),
        // Still open, so in no report.
        Case(12, Id("ann"), CasePhase.Asking, Has("slips")),
        // Another club's.
        Mended(13, new ClubId("other-club").Member("zed").Value, "set-slack", "drags"),
    ]);

    public void Dispose() => school.Dispose();

    [Fact]
    public async Task WhatFixesWhat_IsTheHandCount()
    {
        var text = await TextAsync(ReportKind.WhatFixesWhat);
        Assert.Contains("The clutch drags: 7 cases, 4 mended", text, StringComparison.Ordinal);
        Assert.Contains("3 times: set the slack at the arm again", text, StringComparison.Ordinal);
        Assert.Contains("1 time: let the flower nut out by one notch", text, StringComparison.Ordinal);
        Assert.Contains("The clutch slips: 2 cases, 0 mended", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Unanswered_IsTheHandCount_AndWordsThatRepeatNameNobody()
    {
        var text = await TextAsync(ReportKind.Unanswered);
        // Three of the seven were not solved: 5 and 6 handed over, 7 left; of three members.
        Assert.Contains("The clutch drags: 3 of 7 cases (2 handed to a human, 1 left), 3 members. Words that repeat: trots (2).", text, StringComparison.Ordinal);
        Assert.Contains("Something that is no complaint of the rules: 2 of 2 cases (2 handed to a human, 0 left), 2 members. Words that repeat: whatsit (2), whistles (2).", text, StringComparison.Ordinal);
        Assert.Contains("The clutch slips: 1 of 2 cases (0 handed to a human, 1 left), 1 member.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("zebedee", text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Calibration_HasItsNumbersForThePicture_InTheLookThatWasAskedFor()
    {
        var dark = await school.DoAsync(School.Ada, new ShowReport(ReportKind.Calibration));
        var light = await school.DoAsync(School.Ada, TeachPress.Read(dark.Card.Options.Single(o => o.Label == "the picture light").Id)!.Request!);
        Assert.Equal((4, PictureLook.Dark), (dark.Picture!.Report.Cases, dark.Picture.Look));
        Assert.Equal(PictureLook.Light, light.Picture!.Look);
        Assert.Contains("From 4 mended cases", School.Text(dark.Card), StringComparison.Ordinal);
    }

    /// <summary>No id of a member, and no name but the club's rules' own, whatever the report.</summary>
    [Fact]
    public async Task EveryReport_NamesNobody_AndCountsThisClubAlone()
    {
        foreach (var kind in Enum.GetValues<ReportKind>())
        {
            var own = await TextAsync(kind);
            Assert.All(new[] { "ann", "ben", "cy", "zed" }, m => Assert.DoesNotContain(School.Club.Member(m).Value, own, StringComparison.Ordinal));
            var stranger = School.Text((await school.DoAsync(School.Member("ada", TeachingRights.All, new ClubId("third-club")), new ShowReport(kind))).Card);
            Assert.Matches("No closed case yet|No mended case yet|No question was asked yet|Every case so far had an answer", stranger);
        }

        var other = School.Text((await school.DoAsync(School.Member("ada", TeachingRights.All, new ClubId("other-club")), new ShowReport(ReportKind.WhatFixesWhat))).Card);
        Assert.Contains("The clutch drags: 1 case, 1 mended", other, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Unanswered_ATapBeginsACauseOrACheck_WithWhatIsKnown()
    {
        var report = await school.DoAsync(School.Ada, new ShowReport(ReportKind.Unanswered));

        var cause = await PressAsync(report, "A new cause: The clutch drags");
        var fresh = await PressAsync(report, "A new trouble, with its cause");
        var looks = await PressAsync(report, "A new way to look: The clutch drags");
        var first = looks.Card.Options[0];
        var check = await school.DoAsync(School.Ada, TeachPress.Read(first.Id)!.Request!);

        Assert.Equal(("drags", "cause-is"), (Assert.Single(cause.Proposal!.Answers["complaint"]), cause.Question!.Id));
        Assert.Equal("complaint-called", fresh.Question!.Id);
        Assert.Equal(TeachPress.Read(first.Id)!.A, Assert.Single(check.Proposal!.Answers["finding"]));
        Assert.Equal("check-ask", check.Question!.Id);
        var shown = School.Shipped.Knowledge!.Faults.Values.Where(f => f.ShowsAs.ContainsKey("drags")).SelectMany(f => f.ShowsAs.Keys).ToHashSet();
        Assert.All(looks.Card.Options.Select(o => TeachPress.Read(o.Id)!).Where(p => p.Verb == TeachVerb.CheckOf), p => Assert.Contains(p.A, shown));
        Assert.Equal("gone", (await school.DoAsync(School.Ada, new ChooseCheckFor("no-such-trouble"))).Refused?.Code);
    }

    [Fact]
    public async Task Reports_OffersAllOfThem()
    {
        var menu = (await school.DoAsync(School.Ada, new ShowReports())).Card;
        foreach (var option in menu.Options) Assert.Null((await school.DoAsync(School.Ada, TeachPress.Read(option.Id)!.Request!)).Refused);
        Assert.Equal(Enum.GetValues<ReportKind>().Length + 2, menu.Options.Length);
    }

    [Theory]
    [InlineData("teach|Report|Secrets||")]
    [InlineData("teach|Report|0||")]
    public void Report_OfAForgedName_IsNone(string option) => Assert.Null(TeachPress.Read(option)?.Request);

    /// <summary>One who waits for a report keeps nobody from anything.</summary>
    [Fact]
    public async Task Report_CalledOff_Ends()
    {
        using var off = new CancellationTokenSource();
        var progress = new Watching(_ => off.Cancel());
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => school.Desk.HandleAsync(School.Ada, new ShowReport(ReportKind.Calibration), School.Noon, off.Token, progress));
        Assert.Contains("7 cases", await TextAsync(ReportKind.WhatFixesWhat), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("rules report fixes", ReportKind.WhatFixesWhat, PictureLook.Dark)]
    [InlineData("rules report wrong first guesses", ReportKind.FirstGuesses, PictureLook.Dark)]
    [InlineData("rules report questions", ReportKind.AskedTooMuch, PictureLook.Dark)]
    [InlineData("Rules report unanswered.", ReportKind.Unanswered, PictureLook.Dark)]
    [InlineData("rules report chances light", ReportKind.Calibration, PictureLook.Light)]
    public void Words_NameTheReport(string line, ReportKind kind, PictureLook look) => Assert.Equal<TeachLine>(new AskLine(new ShowReport(kind, look)), TeachWords.Read(line)!.Value.Must);

    [Fact]
    public void Words_OfNoReport_SayWhatToType() => Assert.Contains("rules reports", TeachWords.Read("rules report rubbish")!.Value.Refused!.Say, StringComparison.Ordinal);

    private async Task<string> TextAsync(ReportKind kind) => School.Text((await school.DoAsync(School.Ada, new ShowReport(kind))).Card);

    private Task<TeachAnswer> PressAsync(TeachAnswer shown, string label) => school.DoAsync(School.Ada, TeachPress.Read(shown.Card.Options.Single(o => o.Label == label).Id)!.Request!);

    private static string Id(string member) => School.Club.Member(member).Value;

    private static ClosedCase Opened(ClosedCase closed, string words) => closed with { Case = closed.Case with { OpeningWords = words } };

    private sealed class Watching(Action<double> seen) : IProgress<double>
    {
        public void Report(double value) => seen(value);
    }
}
