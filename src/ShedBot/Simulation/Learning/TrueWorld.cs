using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Simulation.Learning;

/// <summary>How far the bikes of a simulated club differ from the rules.</summary>
/// <param name="Spread">Standard deviation of the natural logarithm of the factor on the odds of each fault; 0 for bikes that follow the rules.</param>
/// <param name="LinksMoved">The share of link strengths, and of repairs' chances, that are a word higher or lower than the rules say, in [0, 1].</param>
internal sealed record WorldSpread(double Spread, double LinksMoved);

/// <summary>Draws what is true of a simulated club's bikes.</summary>
internal static class TrueWorld
{
    /// <summary>What would have to be learnt to the digit, drawn by the seed.</summary>
    public static Learnt Draw(KnowledgeBase rules, WorldSpread spread, int seed)
    {
        var luck = new Luck(seed, 0);
        return Learnt.Of(
            spread.Spread == 0 ? [] : rules.Faults.Keys.Select(f => new LearntOdds(f, Math.Clamp(Math.Exp(spread.Spread * Normal(luck, f)), Learnt.LeastTimes, Learnt.MostTimes))),
            rules.Faults.Values.SelectMany(f => f.ShowsAs.SelectMany(s => s.Value.Select(w => (f.Id, Finding: s.Key, State: w.Key, Word: w.Value))))
                .Where(l => Moves(luck, spread, $"{l.Id}>{l.Finding}/{l.State}"))
                .Select(l => new LearntLink(l.Id, l.Finding, l.State, Beside(luck, l.Word, $"{l.Id}>{l.Finding}/{l.State}"))),
            rules.Repairs.Values.SelectMany(r => r.Mends.Select(m => (r.Id, Fault: m.Key, Word: m.Value)))
                .Where(m => Moves(luck, spread, $"{m.Id}!{m.Fault}"))
                .Select(m => new LearntMend(m.Id, m.Fault, Beside(luck, m.Word, $"{m.Id}!{m.Fault}"))));
    }

    private static bool Moves(Luck luck, WorldSpread spread, string what) => luck.Happens(spread.LinksMoved, $"{what}:moves");

    /// <summary>The chance of the word above or below, by chance; of the only neighbour at the ends of the scale.</summary>
    private static double Beside(Luck luck, string word, string what)
    {
        var scale = ChanceWords.Scale;
        var at = Enumerable.Range(0, scale.Length).First(i => scale[i].Word == word);
        var beside = at + (luck.Happens(0.5, $"{what}:way") ? 1 : -1);
        return scale[beside < 0 ? 1 : beside == scale.Length ? at - 1 : beside].Chance;
    }

    /// <summary>A draw of the standard normal distribution (Box and Muller 1958).</summary>
    private static double Normal(Luck luck, string what) =>
        Math.Sqrt(-2 * Math.Log(1 - luck.Roll($"{what}:size"))) * Math.Cos(2 * Math.PI * luck.Roll($"{what}:angle"));
}
