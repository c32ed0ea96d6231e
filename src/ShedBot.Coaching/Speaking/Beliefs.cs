using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Thinking;
using ShedBot.Knowledge;
using ShedBot.Reasoning.Words;

namespace ShedBot.Coaching.Speaking;

/// <summary>What is believed, in words and bars.</summary>
internal static class Beliefs
{
    /// <summary>Below this chance a cause is not worth a bar.</summary>
    private const double Least = 0.02;

    /// <summary>Chances that agree in so many decimals are the same: what lies beyond is rounding, and must not put one cause before the other.</summary>
    private const int Decimals = 10;

    public static string Word(double chance) => LikelihoodWords.Text(LikelihoodWords.For(chance));

    public static string Is(KnowledgeBase knowledge, string fault) =>
        knowledge.Faults.TryGetValue(fault, out var rule) ? rule.Is : "something that my rules do not list";

    /// <summary>Faults and their chances, most likely first.</summary>
    public static IEnumerable<(string Fault, double Chance)> Ranked(CaseView view) => view.Model.Faults
        .Select((f, i) => (f.Id, Chance: view.Belief.Marginal(i)))
        .OrderByDescending(f => Math.Round(f.Chance, Decimals))
        .ThenBy(f => f.Id, StringComparer.Ordinal);

    public static BeliefBlock Bars(CaseView view, int most) => new(
        [.. Ranked(view).Where(f => f.Chance >= Least).Take(most).Select(f => new BeliefLine(Is(view.Knowledge, f.Fault), f.Chance, Word(f.Chance)))]);

    public static CardProgress Progress(CaseView view)
    {
        if (!view.Complaints.Any()) return new CardProgress(view.Asked, null, null);
        var (fault, chance) = Ranked(view).First();
        return chance >= 0.2 ? new CardProgress(view.Asked, Is(view.Knowledge, fault), Word(chance)) : new CardProgress(view.Asked, null, null);
    }
}
