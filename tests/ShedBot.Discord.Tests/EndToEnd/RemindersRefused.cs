using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.World;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>Members who take no direct messages, places that are gone, clubs that have sent us away.</summary>
public sealed class RemindersRefused(ITestOutputHelper output)
{
    [Theory]
    [InlineData(DirectMessages.Blocked)]
    [InlineData(DirectMessages.NoSharedServer)]
    [InlineData(DirectMessages.NotEvenOpened)]
    public async Task Refused_WithAPlace_IsMentionedOnceAndNeverTriedAgain(DirectMessages how)
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.AgreeAsync(house.Rider);
        await house.UseAsync(house.Rider, "reminders place");
        house.Rider.DirectMessages = how;
        house.MoveTo(18);
        await ClubHouse.UntilAsync(() => Mentions(house).Count == 1, "the mention");
        await house.QuietAsync();
        var tried = Tries(house);
        for (var evening = 0; evening < 3; evening++)
        {
            house.MoveTo(18);
            await house.RoundAsync();
        }

        var mention = Assert.Single(Mentions(house));
        Assert.Equal([house.Rider.Id], mention.RangFor);
        Assert.DoesNotContain("bike", mention.Words, StringComparison.OrdinalIgnoreCase);
        Assert.Empty(mention.Usable);
        Assert.Equal(tried, Tries(house));
        Assert.True(house.Platform.InvalidRequests <= 1);
        Assert.Empty(house.Direct(house.Rider));
        Assert.DoesNotContain("did not reach you", (await BesideAsync(house)) ?? "", StringComparison.Ordinal);
        // Asked for again, it is tried again.
        house.Rider.DirectMessages = DirectMessages.Welcome;
        await house.UseAsync(house.Rider, "reminders on");
        await house.UseAsync(house.Rider, "ride log", ("distance", "40"));
        Assert.False((await house.WishesAsync(house.Rider)).Refused);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Refused_WithoutAPlace_IsANoteAtTheNextCommandOnce()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.AgreeAsync(house.Rider);
        house.Rider.DirectMessages = DirectMessages.Blocked;
        house.MoveTo(18);
        await ClubHouse.UntilAsync(() => house.WishesAsync(house.Rider).Result.Note, "the refusal");
        await house.QuietAsync();
        Assert.Contains("did not reach you", await BesideAsync(house), StringComparison.Ordinal);
        Assert.Null(await BesideAsync(house));
        Assert.Empty(Mentions(house));
        Assert.Equal(1, house.Platform.InvalidRequests);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Refused_WhereThePlaceIsShutToUs_IsANoteInstead()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.AgreeAsync(house.Rider);
        await house.UseAsync(house.Rider, "reminders place", ("channel", house.Lobby));
        house.Platform.SetRights(house.Lobby, house.Platform.Bot, deny: Rights.SendMessages);
        house.Rider.DirectMessages = DirectMessages.Blocked;
        house.MoveTo(18);
        await ClubHouse.UntilAsync(() => house.WishesAsync(house.Rider).Result.Note, "the note");
        await house.QuietAsync();
        Assert.Empty(Mentions(house));
        Assert.Equal(2, house.Platform.InvalidRequests);
        house.MoveTo(18);
        await house.RoundAsync();
        Assert.Equal(2, house.Platform.InvalidRequests);
        house.AssertNoViolations();
    }

    /// <summary>A channel of another club is nobody's place, whatever was said.</summary>
    [Fact]
    public async Task Refused_WhoLeftTheClub_IsNotMentioned()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.AgreeAsync(house.Rider);
        await house.UseAsync(house.Rider, "reminders place");
        house.Platform.Leave(house.Guild, house.Rider);
        house.Rider.DirectMessages = DirectMessages.NoSharedServer;
        house.MoveTo(18);
        await ClubHouse.UntilAsync(() => house.WishesAsync(house.Rider).Result.Refused, "the refusal");
        await house.QuietAsync();
        Assert.Empty(Mentions(house));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Club_ThatHasSentUsAway_HearsNothingUntilItTakesUsInAgain()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.AgreeAsync(house.Rider);
        await house.Platform.RemoveGuildAsync(house.Guild);
        await ClubHouse.UntilAsync(() => house.Store.FindClubAsync(new(house.Guild.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)), default).Result!.LeftAt is not null, "the end");
        house.MoveTo(18);
        await house.RoundAsync();
        Assert.Empty(house.Direct(house.Rider));
        await house.Platform.RestoreGuildAsync(house.Guild);
        await ClubHouse.UntilAsync(() => house.Store.FindClubAsync(new(house.Guild.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)), default).Result!.LeftAt is null, "the return");
        house.Clock.ComeRound();
        await house.ReminderAsync(house.Rider);
        house.AssertNoViolations();
    }

    private static List<SeenMessage> Mentions(ClubHouse house) => [.. house.Platform.Messages(house.Lobby).Where(m => !m.Private && m.AuthorId == house.Platform.Bot.Id)];

    private static int Tries(ClubHouse house) => house.Platform.Requests.Count(r => r.Method == "POST" && (r.Route.EndsWith("/channels", StringComparison.Ordinal) || r.Route.EndsWith("/messages", StringComparison.Ordinal)));

    private static async Task<string?> BesideAsync(ClubHouse house)
    {
        var used = await house.UseAsync(house.Rider, "service plan");
        await Task.Delay(TimeSpan.FromMilliseconds(300));
        return used.FollowUps.SingleOrDefault()?.Words;
    }
}
