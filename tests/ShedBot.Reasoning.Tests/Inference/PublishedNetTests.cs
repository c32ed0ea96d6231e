using ShedBot.Reasoning.Explaining;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Judging;
using ShedBot.Reasoning.Modelling;
using static ShedBot.Reasoning.Tests.Inference.Examples;

namespace ShedBot.Reasoning.Tests.Inference;

/// <summary>
/// Well-known nets. Their inner nodes are multiplied out to worlds, exactly one of which is true; findings hang on the worlds. 'Printed' marks a
/// value that stands in the source; the others were computed exactly from the source's tables by an independent program.
/// </summary>
public class PublishedNetTests
{
    private const double Printed8 = 5.1e-9, Printed10 = 5.1e-11;

    /// <summary>Lauritzen and Spiegelhalter 1988, JRSS B 50(2): a = asia, s = smoke, t = tub, l = lung, b = bronc; absent letters are 'no'.</summary>
    private static DiagnosticModel Asia()
    {
        static double P(bool yes, double p) => yes ? p : 1 - p;
        var worlds = from a in Both
                     from s in Both
                     from t in Both
                     from l in Both
                     from b in Both
                     select ((a ? "a" : "") + (s ? "s" : "") + (t ? "t" : "") + (l ? "l" : "") + (b ? "b" : "") + ".",
                         P(a, .01) * .5 * P(t, a ? .05 : .01) * P(l, s ? .1 : .01) * P(b, s ? .6 : .3));
        return Worlds(
            worlds,
            ("asia", w => w.Contains('a') ? 1 : 0),
            ("smoke", w => w.Contains('s') ? 1 : 0),
            ("xray", w => Either(w) ? .98 : .05),
            ("dysp", w => (w.Contains('b'), Either(w)) switch { (true, true) => .9, (true, false) => .8, (false, true) => .7, _ => .1 }));
    }

    private static bool Either(string world) => world.Contains('t') || world.Contains('l');

    private static readonly bool[] Both = [true, false];

    private static double Sum(Belief belief, Func<string, bool> where) =>
        belief.Sets.Where(s => where(belief.Model.Faults[s.Faults[0]].Id)).Sum(s => s.Probability);

    [Fact]
    public void Asia_NoEvidence_GivesTheKnownMarginals()
    {
        var belief = Inferrer.InferSingle(Asia(), []);
        double[] got =
        [
            Sum(belief, w => w.Contains('t')), Sum(belief, w => w.Contains('l')), Sum(belief, w => w.Contains('b')), Sum(belief, Either),
            Information.Predict(belief, belief.Model.CheckAt("xray"))[1], Information.Predict(belief, belief.Model.CheckAt("dysp"))[1],
        ];
        Near([.0104, .055, .45, .064828, .11029004, .4359706], got, Printed8);
    }

    [Fact]
    public void Asia_AsiaAndDyspnoea_GivesThePrintedPosterior()
    {
        // lung, bronc and the evidence: printed in the documentation of the R package gRain.
        var belief = Inferrer.InferSingle(Asia(), Answers(("asia", true), ("dysp", true)));
        double[] got =
        [
            Sum(belief, w => w.Contains('l')), Sum(belief, w => w.Contains('b')), Math.Exp(belief.LogEvidence),
            Sum(belief, w => w.Contains('t')), Sum(belief, w => w.Contains('s')), Sum(belief, Either), Information.Predict(belief, belief.Model.CheckAt("xray"))[1],
        ];
        Near([.09952515, .8114021, .004501375, .08775096, .62591986, .18229985, .21953886], got, 5.1e-8);
        Near([.08775096, .62591986, .18229985, .21953886], got[3..], Printed8);
    }

    [Fact]
    public void Asia_DyspnoeaOnly_GivesTheKnownPosterior()
    {
        var belief = Inferrer.InferSingle(Asia(), Answers(("dysp", true)));
        Near(
            [.01032495, .63399688, .01884531, .10275922, .83396734, .12053583, .16209833],
            [.. "astlb".Select(letter => Sum(belief, w => w.Contains(letter))), Sum(belief, Either), Information.Predict(belief, belief.Model.CheckAt("xray"))[1]],
            Printed8);
    }

    [Fact]
    public void Asia_WithXray_GivesTheKnownPosteriors()
    {
        var seen = Inferrer.InferSingle(Asia(), Answers(("asia", true), ("dysp", true), ("xray", true)));
        Near([.39171172, .44427051, .62882178, .70202512, .81376870], [.. "tlbs".Select(c => Sum(seen, w => w.Contains(c))), Sum(seen, Either)], Printed8);
        var clear = Inferrer.InferSingle(Asia(), Answers(("asia", true), ("dysp", true), ("xray", false)));
        Near([.00224870, .00255042, .86276077], [.. "tlb".Select(c => Sum(clear, w => w.Contains(c)))], Printed8);
        var smoker = Inferrer.InferSingle(Asia(), Answers(("smoke", true), ("xray", true), ("dysp", true)));
        Near([.01249586, .07526626, .72371402, .71370551], [.. "atlb".Select(c => Sum(smoker, w => w.Contains(c)))], Printed8);
    }

    [Theory]
    [InlineData(.67924433, "smoke:n", "xray:y")]
    [InlineData(-.04613491, "asia:y", "dysp:y")]
    [InlineData(-1.03930875, "asia:y", "dysp:y", "xray:y")]
    public void ToBits_Asia_GivesTheKnownConflict(double expected, params string[] answers)
    {
        var model = Asia();
        var evidence = Answers([.. answers.Select(a => (a[..^2], a[^1] == 'y'))]);
        var singles = evidence.Select(e => Inferrer.InferSingle(model, [e]).LogEvidence);
        Assert.Equal(expected, Conflict.ToBits(Inferrer.InferSingle(model, evidence).LogEvidence, singles), Printed8);
    }

    /// <summary>Russell and Norvig, Artificial Intelligence: A Modern Approach, chapter on Bayesian networks, after Pearl: b, e, a; the two calls are findings.</summary>
    private static DiagnosticModel Alarm()
    {
        var worlds = from b in Both
                     from e in Both
                     from a in Both
                     let rings = (b, e) switch { (true, true) => .95, (true, false) => .94, (false, true) => .29, _ => .001 }
                     select ((b ? "b" : "") + (e ? "e" : "") + (a ? "a" : "") + ".", (b ? .001 : .999) * (e ? .002 : .998) * (a ? rings : 1 - rings));
        return Worlds(
            worlds, ("j", w => w.Contains('a') ? .9 : .05), ("m", w => w.Contains('a') ? .7 : .01), ("a", w => w.Contains('a') ? 1 : 0),
            ("b", w => w.Contains('b') ? 1 : 0), ("e", w => w.Contains('e') ? 1 : 0));
    }

    [Fact]
    public void Alarm_BothCall_GivesThePrintedPosterior()
    {
        var belief = Inferrer.InferSingle(Alarm(), Answers(("j", true), ("m", true)));
        Assert.Equal(.284, Sum(belief, w => w.Contains('b')), 5e-4); // printed
        Near([.2841718354, .1760668384, .7606920389], [.. "bea".Select(c => Sum(belief, w => w.Contains(c)))], Printed10);
    }

    [Fact]
    public void Alarm_OtherQueries_GiveTheKnownValues()
    {
        var model = Alarm();
        Near(
            [.0162837299, .0561174540, .3735512283, .0032684236],
            [
                Sum(Inferrer.InferSingle(model, Answers(("j", true))), w => w.Contains('b')),
                Sum(Inferrer.InferSingle(model, Answers(("m", true))), w => w.Contains('b')),
                Sum(Inferrer.InferSingle(model, Answers(("a", true))), w => w.Contains('b')),
                Sum(Inferrer.InferSingle(model, Answers(("a", true), ("e", true))), w => w.Contains('b')),
            ],
            Printed10);
        var burglary = Inferrer.InferSingle(model, Answers(("b", true)));
        Near([.849017, .6586138], [Information.Predict(burglary, model.CheckAt("j"))[1], Information.Predict(burglary, model.CheckAt("m"))[1]], 5.1e-8); // printed
        var rings = Inferrer.InferSingle(model, Answers(("j", true), ("m", true), ("a", true), ("b", false), ("e", false)));
        Assert.Equal(.00062811126, Math.Exp(rings.LogEvidence), 5.1e-12);
    }

    [Theory]
    [InlineData(.01, .80, .096, .0776397516)] // Gigerenzer and Hoffrage 1995 print 7.8 % (from memory)
    [InlineData(.01, .90, .09, .0917431193)] // Gigerenzer and others 2007: 'about 1 in 10'
    [InlineData(.008, .90, .07, .0939457203)] // Gigerenzer, Calculated Risks, 2002: 'about 9 %'
    public void Screening_PositiveTest_GivesThePrintedChance(double prior, double hit, double falseAlarm, double expected)
    {
        var model = Worlds([("ill", prior), ("well", 1 - prior)], ("test", w => w == "ill" ? hit : falseAlarm));
        Assert.Equal(expected, Inferrer.InferSingle(model, Answers(("test", true))).Marginal("ill"), Printed10);
    }

    /// <summary>Three multipliers and two adders (de Kleer and Williams 1987, AI 32; from memory): F seen 10 for 12, G right; candidates merely agree or not.</summary>
    [Fact]
    public void Polybox_OneOutputWrong_GivesTheKnownCandidates()
    {
        const string Parts = "12345"; // M1 M2 M3 A1 A2
        var worlds = Enumerable.Range(0, 32).Select(mask => string.Concat(Parts.Where((_, i) => (mask >> i & 1) == 1)) + ".").ToList();
        var model = Worlds(worlds.Select(w => (w, Math.Pow(.01, w.Length - 1) * Math.Pow(.99, 6 - w.Length))), ("seen", w => Agrees(w) ? 1 : 0));
        var belief = Inferrer.InferSingle(model, Answers(("seen", true)));
        Assert.Equal(.0200950399, Math.Exp(belief.LogEvidence), Printed10);
        Near(
            [100000000 / 200950399.0, .0196088140, .0147802643, 100000000 / 200950399.0, .0147802643],
            [.. Parts.Select(part => Sum(belief, w => w.Contains(part)))],
            Printed10);

        // F = x + y is wrong unless a part of it is bad: M1, A1 or y. If only y explains F, then y (10 - 6 = 4) must be made good for G = y + z
        // by a second fault: bad M2 (y = 4) together with bad M3 or A2.
        static bool Agrees(string bad) =>
            bad.Contains('1') || bad.Contains('4') || (bad.Contains('2') && (bad.Contains('3') || bad.Contains('5')));
    }

    private static void Near(double[] expected, double[] actual, double tolerance)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (var i = 0; i < expected.Length; i++) Assert.Equal(expected[i], actual[i], tolerance);
    }
}
