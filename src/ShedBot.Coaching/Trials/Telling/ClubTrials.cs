using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Trials.Scoring;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Trials.Telling;

/// <summary>Trials as clubs have them: all of one, kept as JSON, told in words.</summary>
/// <param name="options">Asked each time.</param>
/// <param name="riders">How many riders are made up.</param>
public sealed class ClubTrials(Func<CoachOptions> options, RidersTried riders) : ITrials
{
    public async Task<TriedOut> TryAsync(KnowledgeBase old, KnowledgeBase changed, ImmutableArray<ClosedCase> cases, IProgress<double>? progress, CancellationToken ct)
    {
        var report = await Task.Run(() => Trial.Of(new RulesPair(old, changed), cases, options(), riders, progress, ct), ct);
        return new TriedOut(TrialReportJson.Write(report), report.SafetyLost, report.Verdict is Verdict.Worse or Verdict.Mixed);
    }

    public ImmutableArray<CardBlock> Show(string report, KnowledgeBase old, KnowledgeBase changed)
    {
        var told = TrialCards.Of(TrialReportJson.Read(report), old, changed);
        return [new TextBlock($"The trial says: {told.Title}."), .. told.Blocks];
    }

    public ImmutableArray<CardBlock> Figures(string report, KnowledgeBase old, KnowledgeBase changed) => TrialCards.Figures(TrialReportJson.Read(report), old, changed);
}
