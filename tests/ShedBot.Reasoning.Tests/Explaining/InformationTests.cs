using CsCheck;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Explaining;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Tests.Inference;
using static ShedBot.Reasoning.Tests.Inference.Examples;

namespace ShedBot.Reasoning.Tests.Explaining;

/// <summary>
/// A row of inverters whose output is wrong, each faulty with .01, a faulty one giving 0 or 1 evenly: our own variant of the chain in
/// de Kleer and Williams 1987, AI 32. Expected values were computed exactly by an independent program.
/// </summary>
public class InformationTests
{
    [Fact]
    public void Gain_ThreeInverters_BothProbesTellAsMuch()
    {
        var belief = Chain(3);
        for (var part = 0; part < 3; part++) Assert.Equal(.3366890004, Faulty(belief, part), 5.1e-11);
        Assert.Equal(.9116013343, Information.Gain(belief, belief.Model.CheckAt("after1")), 5.1e-11);
        Assert.Equal(.9116013343, Information.Gain(belief, belief.Model.CheckAt("after2")), 5.1e-11);
    }

    [Fact]
    public void Gain_FourInverters_HalfSplitIsBest()
    {
        var belief = Chain(4);
        for (var part = 0; part < 4; part++) Assert.Equal(.2537814064, Faulty(belief, part), 5.1e-11);
        double[] bits = [.8037605734, .9899500025, .8037605734];
        for (var probe = 1; probe <= 3; probe++)
            Assert.Equal(bits[probe - 1], Information.Gain(belief, belief.Model.CheckAt($"after{probe}")), 5.1e-11);
    }

    [Fact]
    public void Gain_AnyCase_IsTheExpectedFallInEntropy() => RandomCase.Any(5, repairs: false).Sample(c =>
    {
        var belief = Inferrer.Infer(c.Model, [], new(2, 2));
        for (var check = 0; check < c.Model.Checks.Length; check++)
        {
            var (asked, said) = (c.Model.Checks[check], Information.Predict(belief, check));
            var states = c.Model.Findings[c.Model.FindingAt(asked.Finding)].States;
            var after = said.Select((p, o) => p * Information.Entropy(Inferrer.Infer(c.Model, [new CheckAnswered(asked.Id, states[o])], new(2, 2)))).Sum();
            Assert.Equal(Information.Entropy(belief) - after, Information.Gain(belief, check), 1e-9);
        }
    });

    /// <summary>Worlds are sets of faulty parts ('1'), from which the chances of each value being wrong follow; values are told apart as right and wrong only.</summary>
    private static Belief Chain(int parts)
    {
        var worlds = Enumerable.Range(0, 1 << parts)
            .Select(mask => string.Concat(Enumerable.Range(0, parts).Select(i => mask >> i & 1)))
            .Select(world => (world, world.Aggregate(1.0, (p, part) => p * (part == '1' ? .01 : .99))));

        // A probe is told given that the output is wrong, which is known.
        var probes = Enumerable.Range(1, parts - 1).Select(i => ($"after{i}", (Func<string, double>)(w =>
            Wrong(w) > 0 ? Wrong(w[..i]) * Wrong(w[i..], startsWrong: true) / Wrong(w) : 0)));
        return Inferrer.InferSingle(Worlds(worlds, [("out", w => Wrong(w)), .. probes]), Answers(("out", true)));
    }

    /// <summary>P(the last value is wrong): a good part passes wrong on as wrong, a bad one is right or wrong evenly, whatever came in.</summary>
    private static double Wrong(string parts, bool startsWrong = false) =>
        parts.Aggregate(startsWrong ? 1.0 : 0, (wrong, part) => part == '1' ? .5 : wrong);

    private static double Faulty(Belief belief, int part) =>
        belief.Sets.Where(s => belief.Model.Faults[s.Faults[0]].Id[part] == '1').Sum(s => s.Probability);
}
