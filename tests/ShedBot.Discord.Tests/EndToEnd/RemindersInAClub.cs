using ShedBot.Coaching.Nudging;
using ShedBot.DiscordStandIn.Driving;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>A reminder goes out by direct message, once, and is answered there.</summary>
public sealed class RemindersInAClub(ITestOutputHelper output)
{
    [Fact]
    public async Task Digest_InTheEvening_GoesOutOnceAndIsDone()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.AgreeAsync(house.Rider);
        // Asked once, though two things were noted.
        Assert.Single(house.Platform.Messages(house.Lobby), m => m.Words.Contains("remind you", StringComparison.Ordinal));
        house.MoveTo(18);
        var digest = await house.ReminderAsync(house.Rider);
        Assert.Contains("things are due on your bike", digest.Words, StringComparison.Ordinal);
        Assert.Equal(["All of it is done"], Buttons(digest).Take(1));
        Assert.Empty(digest.RangFor);
        var due = (await house.WishesAsync(house.Rider)).Told.Length;
        var done = await house.PressAsync(house.Rider, digest, "All of it is done");
        Assert.Contains("Noted as done:", done.Words, StringComparison.Ordinal);
        Assert.Empty(done.Usable);
        var bike = await house.Store.FindBikeAsync(BikeIdOf(house), default);
        Assert.Equal(due, bike!.Done.Length);
        await house.RoundAsync();
        Assert.Single(house.Direct(house.Rider));
        Assert.Empty(house.Direct(house.Mate));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Digest_WithoutConsent_NeverGoesOut()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.UseAsync(house.Rider, "service fitted", ("day", "3 days ago"));
        var asked = await house.AskedAsync(await house.UseAsync(house.Mate, "service fitted", ("day", "3 days ago")));
        await (await house.Platform.PressLabelAsync(house.Mate, asked, "No, thanks")).Settled;
        house.MoveTo(18);
        await house.RoundAsync();
        house.MoveTo(18);
        await house.RoundAsync();
        Assert.Empty(house.Direct(house.Rider));
        Assert.Empty(house.Direct(house.Mate));
        Assert.Equal(Consent.Withheld, (await house.WishesAsync(house.Mate)).Consent);
        house.AssertNoViolations();
    }

    private static Coaching.Cases.BikeId BikeIdOf(ClubHouse house) => Coaching.Cases.BikeId.Of(house.Member(house.Rider));

    private static IEnumerable<string> Buttons(SeenMessage message) => message.Usable.Where(c => c.Choices.Count == 0).Select(c => c.Label);
}
