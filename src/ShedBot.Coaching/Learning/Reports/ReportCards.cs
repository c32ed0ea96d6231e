using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Learning.Reports;

/// <summary>The reports for moderators as cards. They name nobody, and quote members' words only where nothing else will do.</summary>
public sealed class ReportCards(KnowledgeBase knowledge)
{
    public const int MostRows = 8;

    private const int MostFixes = 4;

    /// <summary>Below so many the intervals reach over nearly everything; a rule of thumb, no source.</summary>
    private const int FewCases = 20;

    public Card WhatFixesWhat(IReadOnlyCollection<MendedRow> rows) => Made(
        "What fixes what",
        rows.Take(MostRows).SelectMany(r => Say.List(
            $"{Complaint(r.Complaint)}: {LearningWords.Of(r.Cases, "case", "cases")}, {r.Mended} mended",
            r.Fixes.Take(MostFixes).Select(f => $"{LearningWords.Of(f.Count, "time", "times")}: {Repair(f.Repair)}; the cause: {Fault(f.Cause)}").DefaultIfEmpty("Nothing was mended yet."))),
        "No closed case yet.");

    public Card FirstGuesses(GuessReport report) => Made(
        "Wrong first guesses",
        report.Judged == 0 ? [] :
        [
            Say.Text($"Of {LearningWords.Of(report.Judged, "mended case", "mended cases")}, what led was what was mended in {report.RightAfterComplaint} right after the complaint and in {report.RightBeforeRepair} when the first repair was shown."),
            .. Say.List("What led, and what it was", report.Rows.Take(MostRows).Select(r =>
                $"Led: {Fault(r.Led)}. It was: {Fault(r.Mended)}. {LearningWords.Of(r.AfterComplaint, "time", "times")} after the complaint, {r.BeforeRepair} still before the first repair.")),
        ],
        "No mended case yet.");

    public Card AskedTooMuch(AskedReport report) => Made(
        "Where the coach asked too much",
        report.Questions.IsEmpty ? [] :
        [
            Say.Text(FormattableString.Invariant($"A case usually has {report.Usual:0.#} {(report.Usual == 1 ? "question" : "questions")}. {report.Many} had {report.ManyFrom:0} or more.")),
            .. Say.List("The long ones, by complaint", report.ManyBy.Take(MostRows).Select(m => $"{Complaint(m.Complaint)}: {m.Cases}")),
            .. Say.List("Questions asked in vain", report.Questions.Where(q => q.InVain > 0).Take(MostRows).Select(q =>
                $"{Check(q.Check)} Asked {LearningWords.Of(q.Asked, "time", "times")}: {q.MovedNothing} answers moved nothing, {q.NotSure} 'not sure', {q.Cannot} could not look.")),
        ],
        "No question was asked yet.");

    public Card Unanswered(IReadOnlyCollection<UnansweredRow> rows) => Made(
        "Complaints nobody could answer",
        Say.List("The next rules to write, most needed first", rows.Take(MostRows).Select(r =>
            $"{(r.Complaint is { } c ? Complaint(c) : "Something that is no complaint of the rules")}: {r.Open} of {LearningWords.Of(r.Cases, "case", "cases")} ({r.HandedOver} handed to a human, {r.Left} left), "
            + $"{LearningWords.Of(r.Members, "member", "members")}.{Words(r.Words)}")),
        "Every case so far had an answer.");

    public static Card Calibration(CalibrationReport report) => Made(
        "Could its chances be taken at their word?",
        report.Cases == 0 ? [] :
        [
            Say.Text($"From {LearningWords.Of(report.Cases, "mended case", "mended cases")}; the others cannot be judged. When it says 70 %, it should be right 7 times in 10.{(report.Cases < FewCases ? " So few cases tell little yet." : "")}"),
            .. Say.List("Right after the complaint", Bins(report.AfterComplaint)),
            .. Say.List("When the first repair was shown", Bins(report.BeforeRepair)),
        ],
        "No mended case yet.");

    /// <summary>What the picture shows, for those who do not see it.</summary>
    public static string Describe(CalibrationReport report) => string.Join(' ', new[]
    {
        $"How often the cause that led was right, against the chance that it was given; {LearningWords.Of(report.Cases, "mended case", "mended cases")}.",
        Pairs("Right after the complaint", report.AfterComplaint),
        Pairs("When the first repair was shown", report.BeforeRepair),
    }.Where(p => p.Length > 0));

    private static string Pairs(string when, CalibrationPoint point) => point.Bins.IsEmpty ? ""
        : $"{when}: {string.Join("; ", point.Bins.Select(b => $"said {LearningWords.Percent(b.Said)}, right in {LearningWords.Percent(b.CameTrue.Value)} of {b.Cases}"))}.";

    private static IEnumerable<string> Bins(CalibrationPoint point) => point.Bins.Select(b =>
        $"It said about {LearningWords.Percent(b.Said)} and was right in {LearningWords.Percent(b.CameTrue.Value)} of {LearningWords.Of(b.Cases, "case", "cases")} (95 % interval {LearningWords.Percent(b.CameTrue.Low)} to {LearningWords.Percent(b.CameTrue.High)})");

    private static string Words(ImmutableArray<RepeatedWord> words) =>
        words.IsEmpty ? "" : $" Words that repeat: {string.Join(", ", words.Select(w => $"{w.Word} ({w.Cases})"))}.";

    private static Card Made(string title, IEnumerable<CardBlock> blocks, string without)
    {
        ImmutableArray<CardBlock> all = [.. blocks];
        return new Card(title, all.IsEmpty ? [Say.Text(without)] : all, []);
    }

    internal string Complaint(string id) => Say.Capital(knowledge.Complaints.TryGetValue(id, out var rule) ? rule.Called : id);

    private string Fault(string id) => id == KnowledgeBase.SomethingElse ? "something that is not listed" : knowledge.Faults.TryGetValue(id, out var rule) ? rule.Is : id;

    private string Repair(string id) => knowledge.Repairs.TryGetValue(id, out var rule) ? rule.Does : id;

    private string Check(string id) => knowledge.Checks.TryGetValue(id, out var rule) ? $"'{rule.Ask}'" : id;
}
