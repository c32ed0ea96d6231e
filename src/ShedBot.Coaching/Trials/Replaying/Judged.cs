using System.Collections.Immutable;
using ShedBot.Knowledge;
using ShedBot.Reasoning.Calibration;

namespace ShedBot.Coaching.Trials.Replaying;

/// <summary>A belief held against what was mended.</summary>
/// <param name="Lead">The cause that leads.</param>
/// <param name="Right">True when it is among the causes that were mended.</param>
/// <param name="Forecast">The chance of the leading cause, and whether it was right.</param>
/// <param name="Brier">(1 - p)^2 of what was mended, and p^2 of every other cause, added up.</param>
/// <param name="Log">-ln p of what was mended, p at least 0.001.</param>
internal sealed record Judged(string Lead, bool Right, Forecast Forecast, double Brier, double Log)
{
    /// <summary>Chances that agree in so many decimals are the same; the cause that stands first in the rules then leads.</summary>
    private const int Decimals = 10;

    /// <param name="chances">By the rules' order of faults, not empty.</param>
    /// <param name="mended">The causes that the repair that held is for; empty where none is known. They count as one: which of them it was nobody saw.</param>
    public static Judged Of(KnowledgeBase knowledge, ImmutableArray<double> chances, ImmutableHashSet<string> mended)
    {
        var faults = knowledge.Model.Faults;
        var (lead, together, others) = (0, 0.0, 0.0);
        for (var i = 0; i < faults.Length; i++)
        {
            if (Math.Round(chances[i], Decimals) > Math.Round(chances[lead], Decimals)) lead = i;
            if (mended.Contains(faults[i].Id)) together += chances[i];
            else others += chances[i] * chances[i];
        }

        together = Math.Min(1, together);
        var right = mended.Contains(faults[lead].Id);
        return new Judged(faults[lead].Id, right, new Forecast(chances[lead], right), ((1 - together) * (1 - together)) + others, Scores.Log([together]));
    }
}
