using System.Collections.Immutable;
using ShedBot.Coaching.Teaching;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>Phrases that come or go are read aloud by what they mean.</summary>
public class PhraseReadingTests
{
    private static readonly Credit Credit = new("Ada", null, Credit.CommonPractice, new DateOnly(2026, 5, 1));

    [Theory]
    [InlineData(RuleKind.Complaint, "drags", "riders say", "A rider who says \"it creeps\" is taken to mean: the clutch drags.")]
    [InlineData(RuleKind.Finding, "cable-bends", "states/tight/riders say", "A rider who says \"it creeps\" is taken to mean: \"A kink or a tight bend, or it is pulled when the bar turns\" (the path of the cable).")]
    [InlineData(RuleKind.Fact, "machine-age", "values/new-build/riders say", "A rider who says \"it creeps\" is taken to mean: \"New, in its first few weeks\" (how new the build is).")]
    [InlineData(RuleKind.HowTo, "order-of-adjustment", "riders ask", "A rider who says \"it creeps\" is taken to mean: a question, \"adjust the clutch in the right order\".")]
    public void Of_PhraseThatComes_SaysWhatItIsTakenFor(RuleKind kind, string rule, string path, string says) =>
        Assert.Equal(says, Assert.Single(Read(new MendList(new RuleKey(kind, rule), RulePath.Of(path), "it creeps", null, Credit))));

    [Fact]
    public void Of_PhraseThatGoes_SaysWhatItIsNoLongerTakenFor() => Assert.Equal(
        "A rider who says \"it creeps\" is no longer taken to mean: the clutch drags.",
        Assert.Single(Read(new MendList(new RuleKey(RuleKind.Complaint, "drags"), RulePath.Of("riders say"), null, "it creeps", Credit))));

    [Fact]
    public void Of_ListOfSomethingElse_IsReadAsBefore() => Assert.EndsWith(
        "tools: \"a long arm\" comes to it.", Assert.Single(Read(new MendList(new RuleKey(RuleKind.Repair, "reroute-cable"), RulePath.Of("tools"), "a long arm", null, Credit))), StringComparison.Ordinal);

    private static ImmutableArray<string> Read(RuleChange change) => new RuleReading(School.Shipped.Knowledge!, null).Of([change]);
}
