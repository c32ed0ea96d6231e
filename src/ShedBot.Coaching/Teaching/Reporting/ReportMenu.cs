using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Learning.Reports;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Speaking;
using ShedBot.Coaching.Teaching.Writing;

namespace ShedBot.Coaching.Teaching.Reporting;

/// <summary>What can be done from reports.</summary>
public static class ReportMenu
{
    private const int MostFindings = 20;

    public static Card Card { get; } = new(
        "Reports",
        [Say.Text("Counted from your club's closed cases, by its rules of today. They name nobody.")],
        [
            .. Enum.GetValues<ReportKind>().Select(k => new TeachPress(TeachVerb.Report, k.ToString()).Option(Called(k))),
            new TeachPress(TeachVerb.Unheard).Option("Words that were not understood"),
            new TeachPress(TeachVerb.Rules).Option("the rules", OptionRole.Help),
        ]);

    public static string Called(ReportKind kind) => kind switch
    {
        ReportKind.WhatFixesWhat => "What fixes what",
        ReportKind.FirstGuesses => "Wrong first guesses",
        ReportKind.AskedTooMuch => "Where the coach asked too much",
        ReportKind.Unanswered => "Complaints nobody could answer",
        _ => "Could its chances be taken at their word?",
    };

    internal static ImmutableArray<CardOption> Looks(PictureLook look)
    {
        var other = look == PictureLook.Dark ? PictureLook.Light : PictureLook.Dark;
        return [new TeachPress(TeachVerb.Report, nameof(ReportKind.Calibration), other.ToString()).Option($"the picture {(other == PictureLook.Light ? "light" : "dark")}", OptionRole.Help)];
    }

    /// <summary>A rule can be begun for each complaint that found no answer.</summary>
    internal static ImmutableArray<CardOption> NextRules(ReportCards cards, IReadOnlyCollection<UnansweredRow> rows) =>
    [
        .. rows.Take(ReportCards.MostRows).SelectMany(r => r.Complaint is { } complaint
            ? [
                new TeachPress(TeachVerb.CauseFor, complaint).Option($"A new cause: {cards.Complaint(complaint)}"),
                new TeachPress(TeachVerb.CheckFor, complaint).Option($"A new way to look: {cards.Complaint(complaint)}"),
            ]
            : new[]
            {
                new TeachPress(TeachVerb.CauseFor).Option("A new trouble, with its cause"),
                new TeachPress(TeachVerb.Unheard).Option("Words that were not understood"),
            }),
    ];

    /// <summary>What the causes of a complaint show in. What there are fewest ways to look at comes first: there a new one helps most.</summary>
    internal static TeachAnswer CheckFor(TeachAct act, string complaint)
    {
        var knowledge = act.Rules.Knowledge;
        if (!knowledge.Complaints.TryGetValue(complaint, out var rule)) return TeachAct.Gone;
        var ways = knowledge.Checks.Values.GroupBy(c => c.Tells, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
        var shown = knowledge.Faults.Values.Where(f => f.ShowsAs.ContainsKey(complaint)).SelectMany(f => f.ShowsAs.Keys).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<Choice> findings = [.. Existing.Findings(knowledge).Where(f => shown.Contains(f.Value)).OrderBy(f => ways.GetValueOrDefault(f.Value)).Take(MostFindings)];
        return new TeachAnswer(new Card(
            $"A new way to look, when {rule.Called}",
            [Say.Text("Which of these should be looked at in another way, quicker or with fewer tools? They are what its causes show in; what there are fewest ways to look at comes first.")],
            [
                .. findings.Select(f => new TeachPress(TeachVerb.CheckOf, f.Value).Option($"{f.Says} ({ways.GetValueOrDefault(f.Value)} so far)")),
                new TeachPress(TeachVerb.Report, nameof(ReportKind.Unanswered)).Option("back to the report", OptionRole.Help),
            ]));
    }
}
