using CsCheck;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Judging;
using ShedBot.Reasoning.Modelling;
using ShedBot.Reasoning.Tests.Inference;

namespace ShedBot.Reasoning.Tests.Judging;

public class ConflictTests
{
    [Fact]
    public void Of_AnyCase_IsTheDefinition() => RandomCase.Any(6, repairs: false).Sample(c =>
    {
        // log2 [prod P(e_i) / P(e)], Jensen and others 1991 (from memory), over full enumeration.
        double Log(IEnumerable<Evidence> e) => BruteForce.Sum(c.Model, [.. e], 2).LogEvidence;
        double Bits(IReadOnlyList<Evidence> e) => (e.Sum(one => Log([one])) - Log(e)) / Math.Log(2);
        var conflict = Conflict.Of(c.Model, c.Evidence);
        Assert.Equal(Bits(c.Evidence), conflict.Bits, 1e-8);
        for (var i = 0; i < c.Evidence.Length; i++) Assert.Equal(Bits(c.Evidence) - Bits(c.Evidence.RemoveAt(i)), conflict.Drops[i], 1e-8);
    });

    [Fact]
    public void Of_TwoAnswersThatDoNotGoTogether_NamesTheOddOneOut()
    {
        // Eight findings of one fault: seven say it is there, one that it nearly always brings says it is not.
        var model = OneFaultShownBy("abcdefgh");
        var conflict = Conflict.Of(model, Examples.Answers([.. "abcdefgh".Select(id => ($"{id}", id != 'd'))]));
        Assert.True(conflict.Drops[3] == conflict.Drops.Max());
        Assert.False(conflict.IsContradiction); // the others outweigh it by far
        Assert.Null(conflict.Culprit);

        var even = Conflict.Of(model, Examples.Answers(("a", true), ("b", false)));
        Assert.True(even.IsContradiction);
        Assert.NotNull(even.Culprit);
    }

    [Fact]
    public void Of_RareFaultExplainsEverything_IsNoContradiction()
    {
        // 'x' excludes 'y' under the common faults; only the rare one brings both.
        var model = DiagnosticModel.Create(
            [new("common", 0.3), new("usual", 0.3), new("rare", 0.001)],
            [Finding.YesNo("x", 0.001, ("common", 0.9), ("rare", 0.9)), Finding.YesNo("y", 0.001, ("usual", 0.9), ("rare", 0.9)), Finding.YesNo("n", 0.001, ("common", 0.95), ("usual", 0.95))],
            [.. "xyn".Select(id => new ShedBot.Reasoning.Modelling.Check($"{id}", $"{id}", new(1), AnswerError.Even(0.01)))],
            [], [], 50);
        var conflict = Conflict.Of(model, Examples.Answers(("x", true), ("y", true), ("n", false)));
        Assert.True(conflict.Bits > 0, $"{conflict.Bits}");
        Assert.Equal("rare", conflict.RareFault);
        Assert.False(conflict.IsContradiction);
    }

    [Fact]
    public void Of_RepairThatFailed_CountsAsAFinding()
    {
        var model = Examples.Three();
        var conflict = Conflict.Of(model, [.. Examples.Answers(("c", true)), new RepairFailed("S"), new RepairFailed("S")], new(1));
        Assert.True(conflict.Bits > 0);
    }

    [Fact]
    public void Of_NothingLearnt_IsZero()
    {
        var conflict = Conflict.Of(Examples.Three(), []);
        Assert.Equal(0, conflict.Bits, 1e-12);
        Assert.Null(conflict.Culprit);
    }

    [Fact]
    public void Surprise_UnexpectedAnswer_IsItsLogarithm()
    {
        var model = OneFaultShownBy("ab");
        var bits = Surprise.Of(model, Examples.Answers(("a", true), ("b", false)));
        var first = Inferrer.Infer(model, Examples.Answers(("a", true)), new(2, 2)).LogEvidence;
        var both = Inferrer.Infer(model, Examples.Answers(("a", true), ("b", false)), new(2, 2)).LogEvidence;
        Assert.Equal(-first / Math.Log(2), bits[0], 1e-9);
        Assert.Equal((first - both) / Math.Log(2), bits[1], 1e-9);
        var hinted = Surprise.Of(model, [new FindingHinted("a", [1, 2]), .. Examples.Answers(("a", true))]);
        Assert.Equal(0, hinted[0]);
        Assert.Equal(bits[0], hinted[1], 1e-9);
    }

    private static DiagnosticModel OneFaultShownBy(string findings) => DiagnosticModel.Create(
        [new("f", 0.3), new("g", 0.3), new("other", 0.1, IsOther: true)],
        findings.Select(id => Finding.YesNo($"{id}", 0.02, ("f", 0.97))),
        findings.Select(id => new ShedBot.Reasoning.Modelling.Check($"{id}", $"{id}", new(1), AnswerError.Even(0.01))),
        [], [], 50);
}
