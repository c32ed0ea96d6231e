using ShedBot.Knowledge.Rules;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;

namespace ShedBot.Coaching.Thinking;

/// <summary>What each answer to a check would make the most likely cause.</summary>
internal static class Pointing
{
    /// <summary>Chances that agree in so many decimals are the same; the cause that stands first in the rules is then told.</summary>
    private const int Decimals = 10;

    public static IEnumerable<(StateRule State, string Fault, double Chance)> Of(CaseView view, CheckRule check)
    {
        foreach (var state in view.Knowledge.Findings[check.Tells].States)
        {
            var after = Inferrer.Infer(view.Model, [.. view.Evidence, new CheckAnswered(check.Id, state.Id)]);
            var (fault, chance) = view.Model.Faults
                .Select((f, i) => (f.Id, Chance: after.Marginal(i)))
                .MaxBy(f => Math.Round(f.Chance, Decimals));
            yield return (state, fault, chance);
        }
    }
}
