using System.Text.Json.Serialization;

namespace ShedBot.Coaching.Trials.Scoring;

/// <summary>One measure of the same cases under old and new rules.</summary>
/// <param name="Pairs">How many cases; with 0 all figures are 0.</param>
/// <param name="Differ">In how many of them old and new differ at all.</param>
/// <param name="Old">Mean under the old rules.</param>
/// <param name="New">Mean under the new rules.</param>
/// <param name="Low">Lower end of the 99 % interval of the difference, new less old.</param>
/// <param name="High">Its upper end.</param>
public sealed record Compared(Measure Measure, int Pairs, int Differ, double Old, double New, double Low, double High)
{
    /// <summary>Fewer cases that differ than this never make a verdict: eight coins that all fall alike are chance once in 128.</summary>
    public const int FewestThatDiffer = 8;

    [JsonIgnore]
    public double Difference => New - Old;

    /// <summary>Half the width of the interval: about what this trial could tell from no difference.</summary>
    [JsonIgnore]
    public double Precision => (High - Low) / 2;

    /// <summary>Better or worse only where the whole interval lies on that side, the difference is worth having, and enough cases differ.</summary>
    [JsonIgnore]
    public Verdict Verdict
    {
        get
        {
            if (Differ < FewestThatDiffer || Math.Abs(Difference) < Measures.LeastWorth(Measure) || (Low <= 0 && High >= 0)) return Verdict.NoDifference;
            return Difference > 0 == Measures.MoreIsBetter(Measure) ? Verdict.Better : Verdict.Worse;
        }
    }
}
