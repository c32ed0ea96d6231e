using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Linting;

/// <summary>R021, R024: the question before hands-on work.</summary>
internal static class TriageLook
{
    public static void Look(LintContext lint)
    {
        var triages = lint.Rules.Triages;
        if (triages.IsEmpty)
            lint.TellAll(ReferenceRules.Triage, "no file has 'before hands on'.", "Add it once: what must be so before hands go near the machine.");
        foreach (var more in triages.Skip(1))
            lint.Tell(ReferenceRules.Triage, more, more.Node, $"'before hands on' stands a second time; the first is in {triages[0].File}.", "Keep one.");
        foreach (var triage in triages)
        {
            for (var i = 0; i < triage.Rule.Dangers.Length; i++)
            {
                var emergency = triage.Rule.Dangers[i].Emergency;
                if (emergency.Length > 0 && !lint.Emergencies.ContainsKey(emergency))
                    lint.Tell(ReferenceRules.Dangling, triage, triage.ItemAt("dangers", i), $"'before hands on' names '{emergency}', which is no emergency.", Nearest.Ask(emergency, lint.Emergencies.Keys));
            }
        }
    }
}
