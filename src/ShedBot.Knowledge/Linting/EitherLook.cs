using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Linting;

/// <summary>R021: what the answers that tell two troubles apart mean.</summary>
internal static class EitherLook
{
    public static void Look(LintContext lint)
    {
        foreach (var either in lint.Rules.Eithers)
        {
            for (var i = 0; i < either.Rule.Answers.Length; i++)
            {
                var means = either.Rule.Answers[i].Means;
                if (means.Length == 0 || lint.Complaints.ContainsKey(means) || lint.Emergencies.ContainsKey(means)) continue;
                lint.Tell(ReferenceRules.Dangling, either, either.ItemAt("answers", i), $"an answer of '{either.Rule.Id}' means '{means}', which is no complaint and no emergency.", Nearest.Ask(means, lint.Complaints.Keys.Concat(lint.Emergencies.Keys)));
            }
        }
    }
}
