using System.Collections.Immutable;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Learning.Counting;
using ShedBot.Coaching.Learning.Proving;
using ShedBot.Coaching.Tests.Samples;

namespace ShedBot.Coaching.Tests.Learning.Proving;

/// <summary>The gate by itself, on a kind of numbers so plain that its gains are reckoned by hand: the chance of a coin that a case shows heads.</summary>
public class HeldOutTests
{
    private static readonly LearningLimits Limits = new(SampleSize: 30);

    /// <summary>
    /// Ten members with four cases each, all heads, by rules that say one half. With the weakest word of the rules, three cases, what is learnt from the 32 of the other
    /// parts is (1.5 + 32) / 35 = 0.957, and each case of the part gains ln(0.957 / 0.5) = 0.649: eight of them are 5.2, and exp(5.2) is 181 times likelier.
    /// </summary>
    [Fact]
    public void Test_AllMembersAgree_Moves()
    {
        var coin = new Coin(Folds(10, 4), [.. Enumerable.Repeat(true, 40)]);

        var tested = new HeldOut(coin.Folds, Limits).Test(coin);

        Assert.Equal((1, 0), (tested.Moved, tested.HeldBack));
        Assert.Equal((1.5 + 40) / 43, tested.Numbers[0], 9);
        Assert.Equal(40 * Math.Log(33.5 / 35 / 0.5), tested.Proof!.Sum, 9);
        Assert.Equal(8 * Math.Log(33.5 / 35 / 0.5), tested.Proof.LogTimesLikelier, 9);
    }

    /// <summary>Four cases of four members: at the best 1.5 + 3 of 6, so that one case in each part gains ln 1.5: 1.5 times likelier, and not 20.</summary>
    [Fact]
    public void Test_FewCases_AreHeldBackThoughAllAgree()
    {
        var coin = new Coin(Folds(4, 1), [true, true, true, true]);

        var tested = new HeldOut(coin.Folds, Limits).Test(coin);

        Assert.Equal((0, 1), (tested.Moved, tested.HeldBack));
        Assert.Equal(0.5, tested.Numbers[0]);
        Assert.Equal(Math.Log(1.5), tested.Proof!.LogTimesLikelier, 9);
    }

    [Fact]
    public void Test_CasesThatFallAsTheRulesSay_MoveNothing()
    {
        var coin = new Coin(Folds(10, 4), [.. Enumerable.Range(0, 40).Select(i => i % 2 == 0)]);

        Assert.Equal((0, 0.5), (new HeldOut(coin.Folds, Limits).Test(coin) is var t ? t.Moved : -1, t.Numbers[0]));
    }

    /// <summary>One member with as many cases as all others, who says tails each time where the others fall by halves: what they alone gain never passes.</summary>
    [Fact]
    public void Test_OneMemberWithMostCases_MovesNothing()
    {
        var folds = new CaseFolds([.. Cases(10, 4), .. Enumerable.Range(0, 40).Select(_ => Case(10))]);
        var coin = new Coin(folds, [.. Enumerable.Range(0, 40).Select(i => i % 2 == 0), .. Enumerable.Repeat(false, 40)]);

        var tested = new HeldOut(folds, Limits).Test(coin);

        Assert.Equal(0, tested.Moved);
        Assert.Equal(0.5, tested.Numbers[0]);
    }

    [Fact]
    public void Test_SwitchedOff_MovesByTheCountsAlone()
    {
        var coin = new Coin(Folds(4, 1), [true, true, true, true]);

        var tested = new HeldOut(coin.Folds, Limits with { TimesLikelier = 0 }).Test(coin);

        Assert.Equal((15 + 4) / 34.0, tested.Numbers[0], 9);
        Assert.Null(tested.Proof);
    }

    [Fact]
    public void Folds_CasesOfOneMember_AreInOnePart()
    {
        var folds = Folds(13, 3);

        Assert.Equal((5, 13), (folds.Count, folds.Members));
        for (var at = 0; at < folds.Cases.Count; at++)
        {
            var (fold, member) = (folds.FoldOf(at), folds.Cases[at].Member);
            Assert.DoesNotContain(folds.Training(fold), i => folds.Cases[i].Member == member);
            Assert.Equal(39, folds.Training(CaseFolds.None).Count);
        }

        Assert.All(Enumerable.Range(0, 5), f => Assert.InRange(39 - folds.Training(f).Count, 6, 9));
    }

    private static CaseFolds Folds(int members, int each) => new([.. Cases(members, each)]);

    private static IEnumerable<WeighedCase> Cases(int members, int each) => Enumerable.Range(0, members).SelectMany(m => Enumerable.Range(0, each).Select(_ => Case(m)));

    private static WeighedCase Case(int member) => new(
        StoryReader.Read(Told.Mended(member, $"m{member}", "open-tap"), Pump.Knowledge)!, member, 1, new WeighedSets([], [], []), new WeighedSets([], [], []), []);

    /// <summary>One number, the chance of heads; by the rules one half.</summary>
    private sealed class Coin(CaseFolds folds, ImmutableArray<bool> heads) : ILearnable
    {
        private readonly Dictionary<WeighedCase, bool> fell = folds.Cases.Select((c, i) => (c, heads[i])).ToDictionary(c => c.c, c => c.Item2, ReferenceEqualityComparer.Instance as IEqualityComparer<WeighedCase>);

        public CaseFolds Folds => folds;

        public double[] Unlearnt { get; } = [0.5];

        public bool[] Free { get; } = [true];

        public double[] Learn(double sampleSize, int fold, bool[] free)
        {
            if (!free[0]) return [0.5];
            var from = folds.Training(fold);
            return [((sampleSize / 2) + from.Count(i => heads[i])) / (sampleSize + from.Count)];
        }

        public Func<WeighedCase, double> Gain(double[] numbers, int fold) => c => Math.Log((fell[c] ? numbers[0] : 1 - numbers[0]) / 0.5);
    }
}
