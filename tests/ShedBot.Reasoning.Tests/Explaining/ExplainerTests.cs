using CsCheck;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Explaining;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;
using ShedBot.Reasoning.Tests.Inference;
using static ShedBot.Reasoning.Tests.Inference.Examples;

namespace ShedBot.Reasoning.Tests.Explaining;

public class ExplainerTests
{
    [Theory]
    [InlineData(.80, .096, 9.2082)] // Gigerenzer and Hoffrage 1995: likelihood ratio 8.3333
    [InlineData(.90, .09, 10)] // Gigerenzer and others 2007: likelihood ratio 10
    public void Explain_PositiveTest_GivesTheKnownWeight(double hit, double falseAlarm, double expected)
    {
        // Ten times the decimal logarithm of the likelihood ratio (Good 1950). With 'well' 99 times as likely as 'ill' and one fault at most.
        var model = Worlds([("ill", .01), ("well", .99)], ("test", w => w == "ill" ? hit : falseAlarm));
        var before = Inferrer.InferSingle(model, []);
        var after = Inferrer.InferSingle(model, Answers(("test", true)));
        Assert.Equal(expected, Decibans.Between(before.Marginal("ill"), after.Marginal("ill")), 5e-5);
        Assert.Equal(expected, Decibans.OfRatio(hit, falseAlarm), 5e-5);
        Assert.Equal(expected, Explainer.Explain(model, Answers(("test", true)), new(LargestSet: 1)).For("ill").For.Single().Decibans, 5e-5);
    }

    [Fact]
    public void Explain_AnswersForAndAgainst_AreToldStrongestFirst()
    {
        var model = DiagnosticModel.Create(
            [new("bar", 0.1), new("cam", 0.1), new("other", 0.05, IsOther: true)],
            [Finding.YesNo("a", 0.05, ("bar", 0.9)), Finding.YesNo("b", 0.05, ("bar", 0.4)), Finding.YesNo("c", 0.05, ("bar", 0.6), ("cam", 0.6))],
            [.. "abc".Select(id => new ShedBot.Reasoning.Modelling.Check($"{id}", $"{id}", new(1)))],
            [], [], 50);
        var explanation = Explainer.Explain(model, Answers(("c", false), ("b", true), ("a", true)));
        var bar = explanation.For("bar");
        Assert.Equal([2, 1], bar.For.Select(r => r.Evidence));
        Assert.Equal([0], bar.Against.Select(r => r.Evidence));
        Assert.True(bar.For[0].Decibans > bar.For[1].Decibans);
        Assert.True(bar.Against[0].Decibans < -Explainer.Faint);
        Assert.Equal(bar.Probability, Inferrer.Infer(model, Answers(("c", false), ("b", true), ("a", true)), new(2, 2)).Marginal("bar"), 1e-12);
    }

    [Fact]
    public void Explain_AnyCase_AsAskedAddsUpAndLeaveOneOutIsTheDifference() => RandomCase.Any().Sample(c =>
    {
        var options = new InferenceOptions(2, 2);
        var explanation = Explainer.Explain(c.Model, c.Evidence, options);
        var (before, after) = (Inferrer.Infer(c.Model, [], options), Inferrer.Infer(c.Model, c.Evidence, options));
        for (var f = 0; f < c.Model.Faults.Length; f++)
        {
            var reasons = explanation.Faults[f];
            Assert.Equal(after.Marginal(f), reasons.Probability, 1e-12);
            Assert.All(reasons.For, r => Assert.True(r.Decibans >= Explainer.Faint));
            Assert.All(reasons.Against, r => Assert.True(r.Decibans <= -Explainer.Faint));
            if (c.Evidence.Any(e => e is RepairFailed)) continue;
            foreach (var reason in reasons.For.Concat(reasons.Against))
            {
                var without = Inferrer.Infer(c.Model, c.Evidence.RemoveAt(reason.Evidence), options);
                Assert.Equal(Decibans.Between(without.Marginal(f), after.Marginal(f)), reason.Decibans, 1e-6);
            }

            if (reasons.For.Length + reasons.Against.Length == c.Evidence.Length)
                Assert.Equal(Decibans.Between(before.Marginal(f), after.Marginal(f)), reasons.For.Concat(reasons.Against).Sum(r => r.AsAsked), 1e-6);
        }
    });

    [Fact]
    public void Explain_AnswerThatWasReplaced_HasNoWeight()
    {
        var explanation = Explainer.Explain(Three(), [.. Answers(("c", true), ("c", false))]);
        Assert.All(explanation.Faults, f => Assert.DoesNotContain(f.For.Concat(f.Against), r => r.Evidence == 0));
        Assert.Equal(1, explanation.For("S").Against.Single().Evidence);
    }

    [Fact]
    public void Explain_FailedRepair_SpeaksAgainstWhatItMends()
    {
        var explanation = Explainer.Explain(Three(), [new RepairFailed("S")], new(1));
        Assert.Equal(0, explanation.For("S").Against.Single().Evidence);
        Assert.Equal(0, explanation.For("F").For.Single().Evidence);
    }

    [Fact]
    public void OfOdds_Certain_StaysFinite()
    {
        Assert.Equal(120, Decibans.OfOdds(1), 1e-3);
        Assert.Equal(-120, Decibans.OfOdds(0), 1e-3);
        Assert.Equal(0, Decibans.OfOdds(0.5), 1e-12);
    }
}
