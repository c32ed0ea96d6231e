using System.Collections.Immutable;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Wording;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching.Learning.Counting;

/// <summary>The rules without anything learnt, in the form in which many cases are weighed quickly.</summary>
internal sealed class RuleSheet
{
    private readonly FindingSheet?[] findings;
    private readonly double[]?[] mends;

    public RuleSheet(KnowledgeBase knowledge)
    {
        Knowledge = knowledge;
        Odds = [.. Model.Faults.Select(f => f.Prior / (1 - f.Prior))];
        (findings, mends) = (new FindingSheet?[Model.Findings.Length], new double[]?[Model.Repairs.Length]);
        Complaints = [.. knowledge.Complaints.Keys.Select(Model.FindingAt).Order()];
    }

    public KnowledgeBase Knowledge { get; }

    public DiagnosticModel Model => Knowledge.Model;

    public int Faults => Model.Faults.Length;

    /// <summary>By fault, before anything is known.</summary>
    public double[] Odds { get; }

    /// <summary>Indices of the complaints among the findings.</summary>
    public ImmutableSortedSet<int> Complaints { get; }

    /// <summary>The odds on a bike of which these facts are known, as the coach takes them; 0 for a fault that it cannot have.</summary>
    public double[] OddsOf(IReadOnlyDictionary<string, string> facts)
    {
        var profile = MachineProfile.Of(Knowledge, facts);
        var odds = (double[])Odds.Clone();
        foreach (var shift in profile.Shifts) odds[Model.FaultAt(shift.Fault)] *= Math.Exp(shift.LogOdds);
        foreach (var gone in profile.Removed) odds[Model.FaultAt(gone)] = 0;
        return odds;
    }

    /// <summary>
    /// The same as they are on the mean over bikes: a fact that nobody asked for is as often so as the rules have it. The coach takes such a fact for nothing,
    /// which is for one bike its best word; over many bikes the faults that the fact makes likelier come more often than that.
    /// </summary>
    public double[] ExpectedOdds(IReadOnlyDictionary<string, string> facts)
    {
        var odds = OddsOf(facts);
        foreach (var fault in Knowledge.Faults.Values)
        {
            foreach (var moved in fault.MovedBy.GroupBy(m => m.Fact, StringComparer.Ordinal))
            {
                if (!facts.ContainsKey(moved.Key) && Knowledge.Facts.TryGetValue(moved.Key, out var fact))
                    odds[Model.FaultAt(fault.Id)] *= MeanTimes(fact, moved.ToDictionary(m => m.Value, m => m.Times, StringComparer.Ordinal));
            }
        }

        return odds;
    }

    private static double MeanTimes(FactRule fact, Dictionary<string, double> times)
    {
        var (all, sum) = (0.0, 0.0);
        foreach (var value in fact.Values)
        {
            var often = ChanceWords.Chance(value.HowOften);
            all += often;
            sum += often * times.GetValueOrDefault(value.Id, 1);
        }

        return sum / all;
    }

    public FindingSheet Finding(int at) => findings[at] ??= new FindingSheet(Model, at);

    /// <summary>By fault: the chance that the repair mends it, 0 where it does not.</summary>
    public double[] Mends(int repair)
    {
        if (mends[repair] is { } known) return known;
        var chances = new double[Faults];
        foreach (var fix in Model.Repairs[repair].Fixes) chances[Model.FaultAt(fix.Fault)] = fix.Success;
        return mends[repair] = chances;
    }
}

/// <summary>One finding by the law of its competing hazards; see <see cref="Reasoning.Modelling.Finding"/>.</summary>
internal sealed class FindingSheet
{
    public FindingSheet(DiagnosticModel model, int at)
    {
        var finding = model.Findings[at];
        var (chances, faults) = (new StateChances(model, at), model.Faults.Length);
        States = finding.States.Length;
        var none = chances.Given([]);
        QuietAlone = none[0];
        LeakHazard = Hazards(finding.Leak.AsSpan());
        (Quiet, Hazard, Linked) = (new double[faults], new double[faults][], new bool[faults]);
        Array.Fill(Quiet, 1);
        Array.Fill(Hazard, new double[States]);
        foreach (var link in finding.Links)
        {
            var fault = model.FaultAt(link.Fault);
            Hazard[fault] = Hazards(link.Net.AsSpan());
            Quiet[fault] = 1 - Sum(link.Net.AsSpan());
            Linked[fault] = Quiet[fault] < 1;
        }
    }

    private FindingSheet(FindingSheet like, int fault, ImmutableArray<double> net)
    {
        (States, QuietAlone, LeakHazard, Linked) = (like.States, like.QuietAlone, like.LeakHazard, like.Linked);
        (Quiet, Hazard) = ((double[])like.Quiet.Clone(), (double[][])like.Hazard.Clone());
        (Quiet[fault], Hazard[fault]) = (1 - Sum(net.AsSpan()), Hazards(net.AsSpan()));
    }

    /// <summary>The same finding where one fault shows in it by other chances.</summary>
    /// <param name="net">By state: the cause alone, leak excluded.</param>
    public FindingSheet With(int fault, ImmutableArray<double> net) => new(this, fault, net);

    public int States { get; }

    /// <summary>P(normal | no fault).</summary>
    public double QuietAlone { get; }

    /// <summary>By fault: what its presence multiplies P(normal) with.</summary>
    public double[] Quiet { get; }

    /// <summary>By fault and state.</summary>
    public double[][] Hazard { get; }

    /// <summary>By state.</summary>
    public double[] LeakHazard { get; }

    /// <summary>By fault: whether it shows in this finding at all.</summary>
    public bool[] Linked { get; }

    /// <summary>P(normal | these one or two faults, -1 for none).</summary>
    public double Normal(int one, int other) => QuietAlone * (one < 0 ? 1 : Quiet[one]) * (other < 0 ? 1 : Quiet[other]);

    /// <summary>The sum over the states of P(state | these faults) times its weight.</summary>
    public double Weigh(double[] weights, int one, int other)
    {
        var normal = Normal(one, other);
        if (States == 2) return (weights[0] * normal) + (weights[1] * (1 - normal));
        var (sum, tilted) = (0.0, 0.0);
        for (var state = 1; state < States; state++)
        {
            var hazard = HazardOf(state, one, other);
            sum += hazard;
            tilted += hazard * weights[state];
        }

        return (weights[0] * normal) + (sum > 0 ? (1 - normal) * (tilted / sum) : 0);
    }

    private double HazardOf(int state, int one, int other) =>
        LeakHazard[state] + (one < 0 ? 0 : Hazard[one][state]) + (other < 0 ? 0 : Hazard[other][state]);

    private static double[] Hazards(ReadOnlySpan<double> chances)
    {
        var (hazards, sum) = (new double[chances.Length], Sum(chances));
        if (sum <= 0) return hazards;
        // A sure cause is kept as a very large hazard, beside which all others are lost.
        var total = sum < 1 ? -double.LogP1(-sum) : 1e12;
        for (var state = 1; state < chances.Length; state++) hazards[state] = total * chances[state] / sum;
        return hazards;
    }

    private static double Sum(ReadOnlySpan<double> chances)
    {
        var sum = 0.0;
        foreach (var chance in chances[1..]) sum += chance;
        return Math.Min(sum, 1);
    }
}
