using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Learning.Reports;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Knowledge.Understanding;
using ShedBot.Reasoning.Calibration;
using static ShedBot.Coaching.Tests.Learning.Told;

namespace ShedBot.Coaching.Tests.Learning.Reports;

public class ReportTests
{
    private static readonly Listener Listener = Listener.For(Pump.Knowledge);

    private static readonly UnheardReport Unheards = new(Pump.Knowledge, Listener, Listener);

    private static readonly ReportCards Cards = new(Pump.Knowledge);

    [Fact]
    public void WhatFixesWhat_CountsByComplaintAndCause()
    {
        var cases = Many(3, (4, (i, m) => Mended(i, m, "open-tap")), (2, (i, m) => Mended(i, m, "straighten-hose")), (1, Left), (1, (i, m) => Mended(i, m, "new-bearing", "hums")));

        var rows = WhatFixesWhat.Of(Pump.Knowledge, cases);

        Assert.Equal([("no-water", 7, 6), ("hums", 1, 1)], rows.Select(r => (r.Complaint, r.Cases, r.Mended)));
        Assert.Equal([new FixCount("open-tap", "tap-shut", 4, 3), new FixCount("straighten-hose", "hose-kinked", 2, 2)], rows[0].Fixes.AsEnumerable());
        Assert.Contains("4 times: open the tap", Text(Cards.WhatFixesWhat(rows)), StringComparison.Ordinal);
    }

    [Fact]
    public void WhatFixesWhat_MendedOneThatCameBack_IsNotCounted() => Assert.Equal(
        0,
        WhatFixesWhat.Of(Pump.Knowledge, [Case(1, "m", CasePhase.HandedOver, Has("no-water"), Held("open-tap"), Line(EntryKind.CameBack, "open-tap"))])[0].Mended);

    /// <summary>'No water' alone points to the tap; here it was the hose, and only the last one had been asked before the repair was shown.</summary>
    [Fact]
    public void FirstGuesses_TellWhatLedAndWhatItWas()
    {
        var cases = Many(
            5,
            (3, (i, m) => Case(i, m, CasePhase.Solved, Has("no-water"), Line(EntryKind.RepairShown, "straighten-hose"), Held("straighten-hose"))),
            (1, (i, m) => Case(i, m, CasePhase.Solved, Has("no-water"), Said("feel-hose", "kinked"), Said("ask-tap", "open"), Line(EntryKind.RepairShown, "straighten-hose"), Held("straighten-hose"))));

        var report = FirstGuesses.Of(Pump.Knowledge, cases);

        Assert.Equal((4, 0, 1), (report.Judged, report.RightAfterComplaint, report.RightBeforeRepair));
        Assert.Equal(new GuessRow("tap-shut", "hose-kinked", 4, 3), Assert.Single(report.Rows));
        Assert.Contains("Led: the tap at the tank is shut. It was: the hose has a kink.", Text(Cards.FirstGuesses(report)), StringComparison.Ordinal);
    }

    [Fact]
    public void AskedTooMuch_CountsWhatMovedNothing()
    {
        // After a shut tap was seen for sure and the hose felt straight, the bearing has nothing to do with it.
        var cases = Many(3, (3, (i, m) => Asked(6, Case(
            i, m, CasePhase.Solved, Has("no-water"), Said("ask-tap", "shut"), Said("turn-shaft", "smooth"), Line(EntryKind.NotSure, "look-wheel"), Held("open-tap")))));

        var report = AskedTooMuch.Of(Pump.Knowledge, cases);

        Assert.Equal([new QuestionRow("look-wheel", 3, 0, 3, 0), new QuestionRow("turn-shaft", 3, 3, 0, 0), new QuestionRow("ask-tap", 3, 0, 0, 0)], report.Questions.OrderByDescending(q => q.NotSure).ThenByDescending(q => q.MovedNothing));
    }

    /// <summary>Tukey's upper fence of 1, 2, ..., 9 and 30: quartiles 3.25 and 7.75, so 7.75 + 1.5 * 4.5 = 14.5; worked by hand.</summary>
    [Fact]
    public void AskedTooMuch_FarAboveTheUsual_IsBeyondTukeysFence()
    {
        var cases = Enumerable.Range(1, 9).Append(30).Select(n => Asked(n, Mended(n, $"m{n}", "open-tap")));

        var report = AskedTooMuch.Of(Pump.Knowledge, cases);

        Assert.Equal((5.5, 15, 1), (report.Usual, report.ManyFrom, report.Many));
        Assert.Equal([("no-water", 1)], report.ManyBy.AsEnumerable());
    }

    [Fact]
    public void Unanswered_RanksWhatNobodyCouldAnswer_WithWordsThatRepeat()
    {
        var cases = Many(
            4,
            (3, (i, m) => Opened(Case(i, m, CasePhase.HandedOver), "it squirts sideways at the collar")),
            (2, (i, m) => Opened(Case(i, m, CasePhase.Left, Has("hums")), i % 2 == 0 ? "hums at night" : "hums in the rain")),
            (5, (i, m) => Mended(i, m, "open-tap")));

        var rows = Unanswered.Of(Pump.Knowledge, cases);

        Assert.Equal([(null, 3, 0), ("hums", 0, 2)], rows.Select(r => (r.Complaint, r.HandedOver, r.Left)));
        Assert.Equal(["collar", "sideways", "squirts"], rows[0].Words.Select(w => w.Word));
        Assert.Equal(["hums"], rows[1].Words.Select(w => w.Word));
    }

    [Fact]
    public void Unanswered_WordsOfOneMember_AreNotShown()
    {
        var cases = Many(1, (4, (i, m) => Opened(Case(i, m, CasePhase.HandedOver), "grandmother's pump squirts")));

        Assert.Empty(Assert.Single(Unanswered.Of(Pump.Knowledge, cases)).Words);
    }

    [Fact]
    public void Calibration_SaysHowOftenWhatLedWasRight()
    {
        var cases = Many(20, (12, (i, m) => Mended(i, m, "open-tap")), (8, (i, m) => Mended(i, m, "straighten-hose")), (7, Left));

        var report = CalibrationReport.Of(Pump.Knowledge, cases);

        Assert.Equal(20, report.Cases);
        Assert.Equal(20, report.AfterComplaint.Bins.Sum(b => b.Cases));
        Assert.Equal(0.6, report.AfterComplaint.Bins.Sum(b => b.Cases * b.CameTrue.Value) / 20, 9);
        Assert.All(report.AfterComplaint.Bins, b => Assert.InRange(b.CameTrue.Value, b.CameTrue.Low, b.CameTrue.High));
        Assert.Empty(report.BeforeRepair.Bins);
    }

    /// <summary>The same was said of all twenty, so they are one bin: of 20, 12 came true. Parted by what came of them they would be bins of 0 and of 100 %.</summary>
    [Fact]
    public void Calibration_WhatWasSaidOfManyAlike_IsOneBin()
    {
        var cases = Many(20, (12, (i, m) => Mended(i, m, "open-tap")), (8, (i, m) => Mended(i, m, "straighten-hose")));

        var bin = Assert.Single(CalibrationReport.Of(Pump.Knowledge, cases).AfterComplaint.Bins);

        Assert.Equal((20, 0.6), (bin.Cases, bin.CameTrue.Value));
    }

    /// <summary>Worked by hand: of twelve a third is four. So 0.1 four times is full; 0.2 twice is not, and takes 0.5 five times in; 0.9 once is too few for a bin of its own.</summary>
    [Fact]
    public void Bins_KeepWhatIsAlikeTogether_AndLeaveNoneTooSmall()
    {
        var forecasts = new[] { (0.1, 4), (0.2, 2), (0.5, 5), (0.9, 1) }.SelectMany(p => Enumerable.Repeat(new Forecast(p.Item1, p.Item1 > 0.3), p.Item2)).ToList();

        var bins = CalibrationBin.Of(forecasts, 5);

        Assert.Equal([4, 8], bins.Select(b => b.Cases));
        Assert.Equal([0, 0.75], bins.Select(b => b.CameTrue.Value));
        Assert.Equal([0.1, ((2 * 0.2) + (5 * 0.5) + 0.9) / 8], bins.Select(b => Math.Round(b.Said, 12)));
    }

    [Fact]
    public void Unheard_SameWordsOfSeveralMembersFirst_WithWhatTheyMayMean()
    {
        var rows = Unheards.Rows([Unheard("a", "squirts at the collar"), Unheard("b", "hose?!"), Unheard("b", "wibble"), Unheard("c", "Hose"), Unheard("b", "wibble")]).ToList();

        Assert.Equal([("Hose", 2, 2), ("wibble", 2, 1), ("squirts at the collar", 1, 1)], rows.Select(r => (r.Words.TrimEnd('?', '!') is "hose" ? "Hose" : r.Words, r.Times, r.Members)));
        Assert.Equal([false, true, true], rows.Select(r => r.OfOneMember));
        Assert.Contains(rows[0].MayMean, g => g.Subject is "no-water" or "hose");
        Assert.Empty(rows[1].MayMean);
    }

    [Fact]
    public void Cards_NothingYet_SayWhatIsMissing()
    {
        Assert.Contains("No closed case yet.", Text(Cards.WhatFixesWhat(WhatFixesWhat.Of(Pump.Knowledge, []))), StringComparison.Ordinal);
        Assert.Contains("No mended case yet.", Text(Cards.FirstGuesses(FirstGuesses.Of(Pump.Knowledge, []))), StringComparison.Ordinal);
        Assert.Contains("No question was asked yet.", Text(Cards.AskedTooMuch(AskedTooMuch.Of(Pump.Knowledge, []))), StringComparison.Ordinal);
        Assert.Contains("Every case so far had an answer.", Text(Cards.Unanswered(Unanswered.Of(Pump.Knowledge, []))), StringComparison.Ordinal);
        Assert.Contains("No mended case yet.", Text(ReportCards.Calibration(CalibrationReport.Of(Pump.Knowledge, []))), StringComparison.Ordinal);
        Assert.Contains("Nothing to learn yet", LearningCards.Of(Learner.Learn(Pump.Knowledge, [], LearningLimits.Default, Now)).Title, StringComparison.Ordinal);
    }

    /// <summary>No card holds a member's id, whatever is in the cases.</summary>
    [Fact]
    public void Cards_NameNobody()
    {
        var cases = Many(
            30,
            (30, (i, m) => Asked(i, Opened(Case(i, $"zz-{m}", CasePhase.Solved, Has("no-water"), Said("feel-hose", "kinked"), Line(EntryKind.RepairShown, "straighten-hose"), Held("straighten-hose")), "zz words of mine"))),
            (9, (i, m) => Opened(Case(i, $"zz-{m}", CasePhase.HandedOver, Has("hums")), "hums")));
        var report = Learner.Learn(Pump.Knowledge, cases, LearningLimits.Default with { LeastChange = 1 }, Now);

        var texts = new[]
        {
            LearningCards.Of(report), Cards.WhatFixesWhat(WhatFixesWhat.Of(Pump.Knowledge, cases)), Cards.FirstGuesses(FirstGuesses.Of(Pump.Knowledge, cases)),
            Cards.AskedTooMuch(AskedTooMuch.Of(Pump.Knowledge, cases)), Cards.Unanswered(Unanswered.Of(Pump.Knowledge, cases)),
            ReportCards.Calibration(CalibrationReport.Of(Pump.Knowledge, cases)),
        }.Select(Text).ToList();

        Assert.NotEmpty(report.Moves);
        Assert.All(texts, t => Assert.DoesNotContain("zz", t, StringComparison.Ordinal));
    }

    private static ClosedCase Left(int number, string member) => Case(number, member, CasePhase.Left, Has("no-water"));

    private static ClosedCase Asked(int count, ClosedCase closed) => closed with { Outcome = closed.Outcome with { Asked = count } };

    private static ClosedCase Opened(ClosedCase closed, string words) => closed with { Case = closed.Case with { OpeningWords = words } };

    private static UnheardWords Unheard(string member, string words) => new(new MemberId(member), words, UnheardWords.Trouble, Now);

    private static string Text(Card card) => string.Join('\n', card.Blocks.Select(b => b switch
    {
        TextBlock text => text.Text,
        ListBlock list => $"{list.Heading}\n{string.Join('\n', list.Items)}",
        _ => "",
    }).Prepend(card.Title));
}
