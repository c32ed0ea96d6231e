using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;
using ShedBot.Reasoning.Planning;

namespace ShedBot.Reasoning.Tests.Planning;

/// <summary>Small problems for the planner, written short.</summary>
internal static class Problems
{
    /// <summary>The worked sequencing example: two jobs of 1 and 3 minutes with weights 10 and 2, as chances of 10/12 and 2/12.</summary>
    public static DiagnosticModel TwoJobs { get; } = Model(
        [("A", 10 / 12.0), ("B", 2 / 12.0)], [], [Mend("a", 1, "A"), Mend("b", 3, "B")], [], 1000);

    public static DiagnosticModel ThreeRepairs { get; } = Model(
        [("1", 0.5), ("2", 0.3), ("3", 0.2)], [], [Mend("r1", 30, "1"), Mend("r2", 5, "2"), Mend("r3", 10, "3")], [], 1000);

    public static DiagnosticModel BehindACover { get; } = Model(
        [("A", 0.5), ("B", 0.3), ("D", 0.2)],
        [],
        [Mend("a", 10, "A"), Mend("b", 4, "B", cover: "lid"), Mend("d", 4, "D", cover: "lid")],
        [new("lid", new(10))],
        1000);

    /// <summary>Fuel, spark or something rarer; one check of a minute tells much about the spark.</summary>
    public static DiagnosticModel OneCheck(double unsure = 0, Hazard hazard = Hazard.None) => Model(
        [("F", 0.5), ("S", 0.3), ("X", 0.2)],
        [Ask("spark", 1, 0.1, [("S", 0.9)]) with { Unsure = unsure, Hazard = hazard }],
        [Mend("f", 10, "F"), Mend("s", 4, "S"), Mend("x", 20, "X", success: 0.8)],
        [],
        50);

    public static Asked Ask(string id, double minutes, double leak, (string Fault, double Net)[] links, string? cover = null) =>
        new(Finding.YesNo("finding of " + id, leak, links), minutes, id, cover);

    public static Repair Mend(string id, double minutes, string fault, double success = 1, string? cover = null, Hazard hazard = Hazard.None) =>
        new(id, new(minutes), [new(fault, success)], cover, hazard);

    public static DiagnosticModel Model(
        (string Id, double Prior)[] faults, Asked[] checks, Repair[] repairs, Cover[] covers, double help) => DiagnosticModel.Create(
        faults.Select(f => new Fault(f.Id, f.Prior, f.Id == "other")),
        checks.Select(c => c.Finding),
        checks.Select(c => new Check(c.Id, c.Finding.Id, new(c.Minutes), default, c.Cover, c.Hazard, c.Unsure)),
        repairs,
        covers,
        help);

    public static PlanRequest Request(DiagnosticModel model) =>
        new(Inferrer.InferSingle(model, [])) { Weights = CostWeights.MinutesOnly };

    public static double Cost(DiagnosticModel model, Policy policy) => PolicyCost.ExpectedCost(model, CostWeights.MinutesOnly, policy);

    /// <summary>A check with the finding that it alone observes.</summary>
    public sealed record Asked(Finding Finding, double Minutes, string Id, string? Cover, double Unsure = 0, Hazard Hazard = Hazard.None);
}
