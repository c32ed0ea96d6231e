using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Learning.Reports;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Teaching.Reporting;

/// <summary>Counts reports from closed cases. That can take seconds, so nobody waits behind it, and one is counted at a time for all clubs together.</summary>
internal sealed class ReportRoom(ITeachingStore store) : IDisposable
{
    /// <summary>The newest of more are counted.</summary>
    public const int MostCases = 20_000;

    private readonly SemaphoreSlim one = new(1);

    public async Task<TeachAnswer> MakeAsync(RulesNow rules, Teacher teacher, ShowReport request, IProgress<double>? progress, CancellationToken ct)
    {
        await one.WaitAsync(ct);
        try
        {
            var cases = await store.ClosedCasesAsync(teacher.Club, MostCases, ct);
            return await Task.Run(() => Made(rules.Knowledge, cases, request, progress, ct), ct);
        }
        finally
        {
            one.Release();
        }
    }

    public void Dispose() => one.Dispose();

    private static TeachAnswer Made(KnowledgeBase knowledge, ImmutableArray<ClosedCase> cases, ShowReport request, IProgress<double>? progress, CancellationToken ct)
    {
        var (cards, told) = (new ReportCards(knowledge), RetoldCase.All(knowledge, cases, progress, ct));
        switch (request.Kind)
        {
            case ReportKind.WhatFixesWhat:
                return Of(cards.WhatFixesWhat(WhatFixesWhat.From(told)), cases);
            case ReportKind.FirstGuesses:
                return Of(cards.FirstGuesses(FirstGuesses.From(knowledge, told)), cases);
            case ReportKind.AskedTooMuch:
                return Of(cards.AskedTooMuch(AskedTooMuch.From(told)), cases);
            case ReportKind.Unanswered:
                var rows = Unanswered.From(told, new Discreet(knowledge).Bare);
                return Of(cards.Unanswered(rows), cases, ReportMenu.NextRules(cards, rows));
            default:
                var report = CalibrationReport.From(knowledge, told);
                return Of(ReportCards.Calibration(report), cases, ReportMenu.Looks(request.Look)) with { Picture = report.Cases == 0 ? null : new CalibrationPicture(report, request.Look) };
        }
    }

    private static TeachAnswer Of(Card card, ImmutableArray<ClosedCase> cases, params ImmutableArray<CardOption> options) => new(card with
    {
        Blocks = cases.Length < MostCases ? card.Blocks : [.. card.Blocks, Say.Text($"From the {MostCases:N0} cases that were closed last.")],
        Options = [.. options, new TeachPress(TeachVerb.Reports).Option("the other reports", OptionRole.Help)],
    });
}
