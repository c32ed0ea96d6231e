using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Learning.Counting;
using ShedBot.Coaching.Tests.Samples;

namespace ShedBot.Coaching.Tests.Learning;

public class CaseWeightsTests
{
    /// <summary>0.98 a month: after a year of twelve months of 30 days 0.98^12 = 0.7847 (worked by hand).</summary>
    [Theory]
    [InlineData(0, 1)]
    [InlineData(30, 0.98)]
    [InlineData(360, 0.7847)]
    public void Of_OldCases_Fade(int days, double weight) =>
        Assert.Equal(weight, CaseWeights.Of(Stories(("a", 1)), new LearningLimits(MemberShare: 1), Told.Then.AddDays(days))[0], 4);

    [Fact]
    public void Of_MemberWithManyCases_CountsForTheirShareOfAll()
    {
        var stories = Stories(("busy", 50), ("b", 1), ("c", 1), ("d", 48));

        var weights = CaseWeights.Of(stories, new LearningLimits(MemberShare: 0.05), Told.Then);

        Assert.Equal(5, Sum("busy"), 9);
        Assert.Equal(5, Sum("d"), 9);
        Assert.Equal(1, Sum("b"), 9);

        double Sum(string member) => stories.Select((s, i) => s.Member.Value == member ? weights[i] : 0).Sum();
    }

    [Fact]
    public void Of_SmallClub_LetsEachMemberHaveTwoCases() =>
        Assert.Equal([1, 1, 2 / 3.0, 2 / 3.0, 2 / 3.0], CaseWeights.Of(Stories(("a", 2), ("b", 3)), new LearningLimits(), Told.Then), (a, b) => Math.Abs(a - b) < 1e-9);

    [Fact]
    public void Anchors_EachComplaint_GetsTheSampleSizeOnce()
    {
        var stories = Stories(("a", 2), ("b", 3));

        Assert.Equal(20, CaseWeights.Anchors(stories, CaseWeights.Of(stories, new LearningLimits(), Told.Then), 20).Sum(), 9);
    }

    private static List<CaseStory> Stories(params (string Member, int Count)[] of)
    {
        var number = 0;
        return [.. of.SelectMany(m => Enumerable.Range(0, m.Count).Select(_ => Read(Told.Mended(number++, m.Member, "open-tap"))))];
    }

    private static CaseStory Read(ClosedCase closed) => StoryReader.Read(closed, Pump.Knowledge)!;
}
