using System.Collections.Immutable;
using CsCheck;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Tests.Inference;

/// <summary>A random model with random evidence, each from one seed.</summary>
internal sealed record RandomCase(DiagnosticModel Model, ImmutableArray<Evidence> Evidence)
{
    public static Gen<RandomCase> Any(int mostFaults = 7, bool repairs = true, bool yesNoOnly = false) =>
        Gen.Int[0, int.MaxValue - 1].Select(seed => Make(new Random(seed), mostFaults, repairs, yesNoOnly));

    private static RandomCase Make(Random random, int mostFaults, bool repairs, bool yesNoOnly)
    {
        var faults = Enumerable.Range(0, random.Next(2, mostFaults + 1)).Select(i => new Fault($"f{i}", Between(0.01, 0.4))).ToList();
        var findings = Enumerable.Range(0, random.Next(1, 6)).Select(i =>
        {
            string[] states = yesNoOnly || random.Next(3) > 0 ? ["no", "yes"] : ["normal", "weak", "gone"];
            return new Finding($"g{i}", [.. states], Strengths(states.Length, 0.01, 0.2),
                [.. faults.Where(_ => random.Next(3) == 0).Select(f => new Link(f.Id, Strengths(states.Length, 0.2, 0.97)))]);
        }).ToList();
        var checks = findings.SelectMany(f => Enumerable.Range(0, random.Next(1, 3)).Select(i => new ShedBot.Reasoning.Modelling.Check(
            $"{f.Id}.{i}", f.Id, new(1), yesNoOnly || (i == 0 && random.Next(2) == 0) ? default : new(Between(0, 0.2), Between(0, 0.2))))).ToList();

        // At most one check of a finding is never wrong: two of those could contradict each other outright.
        var mending = Enumerable.Range(0, 3).Select(i => new Repair($"r{i}", new(5), [.. faults.Where(_ => random.Next(3) == 0)
            .Select(f => new Fix(f.Id, Between(0.3, 0.95)))])).ToList();
        var model = DiagnosticModel.Create(faults, findings, checks, mending, [], 100);

        var evidence = ImmutableArray.CreateBuilder<Evidence>();
        for (var stretch = repairs ? random.Next(0, 3) : 0; stretch >= 0; stretch--)
        {
            foreach (var finding in findings)
            {
                string State() => finding.States[random.Next(finding.States.Length)];
                var asked = checks.Where(c => c.Finding == finding.Id && random.Next(2) == 0).ToList();
                foreach (var check in asked) evidence.Add(new CheckAnswered(check.Id, State()));
                if (yesNoOnly) continue;
                if (random.Next(4) == 0) evidence.Add(new FindingTold(finding.Id, State(), new(0.1, 0.05)));
                else if (asked.Count == 0 && random.Next(3) == 0) evidence.Add(new FindingHinted(finding.Id, [.. finding.States.Select(_ => Between(0.1, 5))]));
            }

            if (stretch > 0) evidence.Add(new RepairFailed($"r{random.Next(3)}", random.Next(2) == 0));
        }

        return new(model, evidence.ToImmutable());

        double Between(double low, double high) => low + ((high - low) * random.NextDouble());

        ImmutableArray<double> Strengths(int states, double low, double high)
        {
            var (sum, cut) = (Between(low, high), random.NextDouble());
            return states == 2 ? [0, sum] : [0, sum * cut, sum * (1 - cut)];
        }
    }
}
