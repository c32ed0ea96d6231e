using System.Collections.Immutable;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Tests.Inference;

/// <summary>Small models that several tests look at.</summary>
internal static class Examples
{
    /// <summary>Faults F .5, S .3, X .2; one check 'c' of a finding 'c' that S shows with .9 (net), leak .1; repairs F, S (success .8), X.</summary>
    public static DiagnosticModel Three(AnswerError error = default, double net = 0.9) => DiagnosticModel.Create(
        [new("F", 0.5), new("S", 0.3), new("X", 0.2)],
        [Finding.YesNo("c", 0.1, ("S", net))],
        [new Check("c", "c", new(1), error)],
        [new("F", new(10), [new("F", 1)]), new("S", new(4), [new("S", 0.8)]), new("X", new(20), [new("X", 1)])],
        [],
        50);

    /// <summary>
    /// A net of any shape as an exactly-one model: each way the world can be is a 'fault', each finding is a two-state one with its own chance
    /// in every world. This puts nets that are not two-level before the same code.
    /// </summary>
    public static DiagnosticModel Worlds(
        IEnumerable<(string World, double Prior)> worlds, params (string Finding, Func<string, double> Yes)[] findings)
    {
        var kept = worlds.Where(w => w.Prior > 0).ToList();
        return DiagnosticModel.Create(
            kept.Select(w => new Fault(w.World, w.Prior)),
            findings.Select(f => Finding.YesNo(f.Finding, 0, kept.Select(w => (w.World, f.Yes(w.World))))),
            findings.Select(f => new Check(f.Finding, f.Finding, new(1))),
            [],
            [],
            50);
    }

    public static ImmutableArray<Evidence> Answers(params (string Check, bool Yes)[] answers) =>
        [.. answers.Select(a => new CheckAnswered(a.Check, a.Yes ? Finding.Yes : Finding.No))];
}
