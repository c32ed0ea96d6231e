using Moq;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>Which rules serve which club; on the pump, a machine invented for these tests.</summary>
public sealed class ClubCoachesTests
{
    private static readonly ClubId Hill = new("hill"), Dale = new("dale");
    private static readonly RuleKey Tap = new(RuleKind.Check, "ask-tap");

    private readonly Dictionary<(ClubId, int), RulesEdition> editions = [];
    private readonly Mock<ITeachingStore> store = new();
    private Ground ground = GroundOf(Pump.Text);

    public ClubCoachesTests()
    {
        store.Setup(s => s.NewestEditionAsync(It.IsAny<ClubId>(), It.IsAny<CancellationToken>()))
            .Returns((ClubId club, CancellationToken _) => Task.FromResult(editions.Keys.Where(k => k.Item1 == club).Select(k => k.Item2).DefaultIfEmpty(0).Max()));
        store.Setup(s => s.FindEditionAsync(It.IsAny<ClubId>(), It.IsAny<int>(), It.IsAny<CancellationToken>()))
            .Returns((ClubId club, int number, CancellationToken _) => Task.FromResult(editions.GetValueOrDefault((club, number))));
    }

    [Fact]
    public async Task RulesAsync_NothingPublished_AllClubsShareTheProjectsCoach()
    {
        var coaches = Coaches();
        Assert.Same(ground.Coach, (await coaches.RulesAsync(Hill, default)).Coach);
        Assert.Same(ground.Coach, (await coaches.RulesAsync(Dale, default)).Coach);
    }

    [Fact]
    public async Task RulesAsync_OneClubPublished_ServesThatClubAndNoOther()
    {
        var coaches = Coaches();
        Publish(Hill, 1, Mended("Is the brass tap open?"));
        Assert.Equal("Is the brass tap open?", (await coaches.OfAsync(Hill, default)).Knowledge.Checks["ask-tap"].Ask);
        Assert.Equal("Is the tap at the tank open?", (await coaches.OfAsync(Dale, default)).Knowledge.Checks["ask-tap"].Ask);
    }

    [Fact]
    public async Task RulesAsync_TheNextEdition_ServesTheVeryNextTurn()
    {
        var coaches = Coaches();
        Publish(Hill, 1, Mended("Is the brass tap open?"));
        var first = await coaches.RulesAsync(Hill, default);
        Assert.Same(first, await coaches.RulesAsync(Hill, default));
        Publish(Hill, 2, Layer.Empty);
        var second = await coaches.RulesAsync(Hill, default);
        Assert.Equal(2, second.Edition);
        Assert.Equal("Is the tap at the tank open?", second.Coach.Knowledge.Checks["ask-tap"].Ask);
        Assert.Equal(ground.Coach.Knowledge.Version, second.Coach.Knowledge.Version);
    }

    [Fact]
    public async Task RulesAsync_TheProjectsRulesChange_TheClubsWordStaysAndTheConflictIsTold()
    {
        var coaches = Coaches();
        Publish(Hill, 1, Mended("Is the brass tap open?"));
        Assert.Empty((await coaches.RulesAsync(Hill, default)).Conflicts);
        ground = GroundOf(Pump.Text.Replace("ask: Is the tap at the tank open?", "ask: Does the tap stand open?", StringComparison.Ordinal));
        var after = await coaches.RulesAsync(Hill, default);
        Assert.Equal("Is the brass tap open?", after.Coach.Knowledge.Checks["ask-tap"].Ask);
        Assert.Equal(Tap, Assert.Single(after.Conflicts).Key);
        Assert.Equal("Does the tap stand open?", (await coaches.OfAsync(Dale, default)).Knowledge.Checks["ask-tap"].Ask);
    }

    [Fact]
    public async Task RulesAsync_SomethingLearnt_IsInTheModelUnderAVersionOfItsOwn()
    {
        var coaches = Coaches();
        Publish(Hill, 1, Layer.Empty, Learnt.Of([new LearntOdds("tap-shut", 2)], [], []));
        var rules = await coaches.RulesAsync(Hill, default);
        var (before, after) = (ground.Coach.Knowledge.Model, rules.Coach.Knowledge.Model);
        Assert.True(after.Faults[after.FaultAt("tap-shut")].Prior > before.Faults[before.FaultAt("tap-shut")].Prior);
        Assert.NotEqual(ground.Coach.Knowledge.Version, rules.Coach.Knowledge.Version);
    }

    [Fact]
    public async Task RulesAsync_AskedByManyAtOnce_LoadsOnce()
    {
        var coaches = Coaches();
        Publish(Hill, 1, Mended("Is the brass tap open?"));
        var all = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => Task.Run(async () => await coaches.RulesAsync(Hill, default))));
        Assert.Single(all.Distinct());
        store.Verify(s => s.FindEditionAsync(Hill, 1, It.IsAny<CancellationToken>()), Times.Once);
    }

    [Fact]
    public async Task RulesAsync_MoreClubsThanAreKeptReady_TheOneAskedForLongestAgoIsLoadedAnew()
    {
        var coaches = Coaches(most: 2);
        ClubId third = new("third");
        foreach (var club in new[] { Hill, Dale, third }) Publish(club, 1, Mended("Is it open?"));
        var (hill, dale) = (await coaches.RulesAsync(Hill, default), await coaches.RulesAsync(Dale, default));
        Assert.Same(hill, await coaches.RulesAsync(Hill, default));
        await coaches.RulesAsync(third, default);
        Assert.Same(hill, await coaches.RulesAsync(Hill, default));
        Assert.NotSame(dale, await coaches.RulesAsync(Dale, default));
    }

    [Fact]
    public async Task RulesAsync_TheStoreFailsOnce_IsAskedAnewTheNextTime()
    {
        var coaches = Coaches();
        Publish(Hill, 1, Mended("Is the brass tap open?"));
        var fails = true;
        store.Setup(s => s.FindEditionAsync(Hill, 1, It.IsAny<CancellationToken>()))
            .Returns(() => fails ? Task.FromException<RulesEdition?>(new IOException("The disk is gone.")) : Task.FromResult<RulesEdition?>(editions[(Hill, 1)]));
        await Assert.ThrowsAsync<IOException>(async () => await coaches.RulesAsync(Hill, default));
        fails = false;
        Assert.Equal(1, (await coaches.RulesAsync(Hill, default)).Edition);
    }

    private static Ground GroundOf(string text)
    {
        var rules = RuleBase.Of([RuleText.FromText("pump.yaml", text)]);
        return new Ground(rules, Pump.CoachOf(rules.Knowledge!));
    }

    private static Layer Mended(string ask) => Layer.Empty.Apply([new MendValue(Tap, RulePath.Of("ask"), "Is the tap at the tank open?", ask, new Credit("Ada", null, Credit.CommonPractice, new DateOnly(2026, 11, 1)))]).Layer!;

    private ClubCoaches Coaches(int most = 8) => new(store.Object, () => ground, most);

    private void Publish(ClubId club, int number, Layer layer, Learnt? learnt = null) => editions[(club, number)] = new RulesEdition(
        club, number, layer.IsEmpty ? "" : layer.Write(), learnt is null ? "" : LearntText.Write(learnt), "a change", null, null, "", ground.Coach.Knowledge.Version, Pump.Noon);
}
