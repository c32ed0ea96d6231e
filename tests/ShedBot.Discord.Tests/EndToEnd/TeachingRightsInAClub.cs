using ShedBot.DiscordStandIn.Driving;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>Who may do what with a club's rules, asked on every act: by command, by an old button, by a forged one, by a completion.</summary>
public sealed class TeachingRightsInAClub(ITestOutputHelper output)
{
    private const string NotYours = "for those to whom your club has given it";

    [Theory]
    [InlineData("rules show")]
    [InlineData("rules write")]
    [InlineData("rules waiting")]
    [InlineData("rules log")]
    [InlineData("rules file-out")]
    [InlineData("rules editions")]
    [InlineData("rules tips")]
    [InlineData("rules settings")]
    public async Task Command_ByOneWithoutTheRole_IsRefusedInPrivate(string command)
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var deed = await house.Platform.CommandAsync(house.Rider, house.Lobby, command);
        var told = await ToldAsync(deed);
        Assert.True(told.Private);
        Assert.Contains(NotYours, told.Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Press_OnAModeratorsButton_ByAnotherHand_IsRefused()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var shown = await ToldAsync(await house.Platform.CommandAsync(house.Owner, house.Lobby, "rules show"));
        Assert.True(shown.Private);
        var forged = await ToldAsync(await house.Platform.ForgedPressAsync(house.Rider, shown, "teach|Editions|||"));
        Assert.Contains(NotYours, forged.Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Tip_ByAnyMember_WaitsForThoseWhoProposeAndPingsNobody()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thanked = await ToldAsync(await house.Platform.CommandAsync(house.Rider, house.Lobby, "tip", new Dictionary<string, object> { ["words"] = "@everyone look at the <@&1> cable ties first" }));
        Assert.True(thanked.Private);
        var tips = await ToldAsync(await house.Platform.CommandAsync(house.Owner, house.Lobby, "rules tips"));
        Assert.Contains("One tip is waiting", tips.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(NotYours, tips.Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    private static async Task<SeenMessage> ToldAsync(Deed deed)
    {
        var settled = await deed.Settled;
        Assert.False(settled.Failed);
        return deed.FollowUps.Count > 0 ? deed.FollowUps[^1] : settled.Message!;
    }
}
