using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Learning.Reports;

/// <summary>What mended a complaint.</summary>
/// <param name="Complaint">Its id.</param>
/// <param name="Cases">How many cases told it.</param>
/// <param name="Fixes">Most often first.</param>
public sealed record MendedRow(string Complaint, int Cases, int Mended, ImmutableArray<FixCount> Fixes);

/// <param name="Cause">The id of the fault that was most likely mended by it.</param>
/// <param name="Members">Of how many members.</param>
public sealed record FixCount(string Repair, string Cause, int Count, int Members);

/// <summary>What fixes what, by complaint, counted from cases that were mended and stayed so.</summary>
public static class WhatFixesWhat
{
    /// <returns>The complaint with most cases first. A case with two complaints stands under both.</returns>
    public static ImmutableArray<MendedRow> Of(KnowledgeBase knowledge, IEnumerable<ClosedCase> cases) => From(RetoldCase.All(knowledge, cases));

    internal static ImmutableArray<MendedRow> From(IEnumerable<RetoldCase> cases) =>
    [
        .. cases.SelectMany(c => c.Complaints.Select(complaint => (complaint, c)))
            .GroupBy(c => c.complaint, c => c.c, StringComparer.Ordinal)
            .Select(g => new MendedRow(g.Key, g.Count(), g.Count(c => c.Mended), Fixes(g)))
            .OrderByDescending(r => r.Cases).ThenBy(r => r.Complaint, StringComparer.Ordinal),
    ];

    private static ImmutableArray<FixCount> Fixes(IEnumerable<RetoldCase> cases) =>
    [
        .. cases.Select(c => (c.Closed, Cause: c.Cause()))
            .Where(c => c.Cause is not null)
            .GroupBy(c => (Repair: c.Closed.Outcome.Repair!, Cause: c.Cause!))
            .Select(g => new FixCount(g.Key.Repair, g.Key.Cause, g.Count(), g.Select(c => c.Closed.Case.Member).Distinct().Count()))
            .OrderByDescending(f => f.Count).ThenBy(f => f.Repair, StringComparer.Ordinal).ThenBy(f => f.Cause, StringComparer.Ordinal),
    ];
}
