using ShedBot.Coaching.Nudging;
using ShedBot.DiscordStandIn;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.Faults;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>Neither lost nor doubled: deaths between deciding, sending and noting, and a chat that fails.</summary>
public sealed class RemindersOnce(ITestOutputHelper output)
{
    private const string Send = "POST /channels/{channel_id}/messages", Open = "POST /users/@me/channels";

    /// <summary>Decided and kept, and the program died before a word of it was sent.</summary>
    [Fact]
    public async Task Killed_AfterDeciding_IsSentByTheNextLife()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.AgreeAsync(house.Rider);
        house.Platform.Faults.Next(FaultKind.DroppedBeforeHandling, Send, 50);
        house.MoveTo(18);
        await ClubHouse.UntilAsync(() => !house.Store.UnsaidPlacesAsync(10, default).Result.IsEmpty, "the decision");
        await house.KillAsync();
        house.Platform.Faults.Stop();
        Assert.Empty(house.Direct(house.Rider));
        await house.StartAsync();
        house.Clock.ComeRound();
        await house.ReminderAsync(house.Rider);
        house.AssertNoViolations();
    }

    /// <summary>Sent, and the program died before it was noted; so long ago that the platform has forgotten the nonce: the look into the conversation finds it.</summary>
    [Fact]
    public async Task Killed_AfterSending_IsNotSentAgain()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.AgreeAsync(house.Rider);
        house.MoveTo(18);
        var digest = await house.ReminderAsync(house.Rider);
        await UnsayAsync(house, digest);
        await house.KillAsync();
        await house.StartAsync();
        house.Clock.ComeRound();
        await house.ReminderAsync(house.Rider);
        house.AssertNoViolations();
    }

    /// <summary>The same after the message was answered, which changes all of it but its mark.</summary>
    [Fact]
    public async Task Killed_AfterSendingAndBeingAnswered_IsNotSentAgain()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.AgreeAsync(house.Rider);
        house.MoveTo(18);
        var digest = await house.ReminderAsync(house.Rider);
        await house.PressAsync(house.Rider, digest, "All of it is done");
        await UnsayAsync(house, digest);
        await house.KillAsync();
        await house.StartAsync();
        house.Clock.ComeRound();
        await house.ReminderAsync(house.Rider);
        house.AssertNoViolations();
    }

    /// <summary>
    /// The same, found on the next evening only: it went out on the day before, so that evening's own comes too. Counted for the day on which it was found,
    /// it would have taken that day's place.
    /// </summary>
    [Fact]
    public async Task Killed_AfterSendingAndFoundOnTheNextEvening_LeavesThatEveningItsOwn()
    {
        // The chat's clock is the program's here: what it says of the time of a message decides.
        var clock = AheadClock.To(17, 50);
        await using var house = await ClubHouse.OpenAsync(output, new StandInOptions { Clock = clock });
        await house.AgreeAsync(house.Rider);
        house.MoveTo(18);
        var digest = await house.ReminderAsync(house.Rider);
        var first = (await house.WishesAsync(house.Rider)).LastDay;
        await house.PressAsync(house.Rider, digest, "All of it is done");
        await house.UseAsync(house.Rider, "ride log", ("distance", "200"));
        await UnsayAsync(house, digest);
        await house.KillAsync();
        clock.Move(TimeSpan.FromDays(1));
        house.Clock.Move(TimeSpan.FromDays(1));
        await house.StartAsync();
        var second = await house.ReminderAsync(house.Rider, 2);
        Assert.NotEqual(digest.Nonce, second.Nonce);
        Assert.Equal(first!.Value.PlusDays(1), (await house.WishesAsync(house.Rider)).LastDay);
        house.AssertNoViolations();
    }

    [Theory]
    [InlineData(FaultKind.RateLimitedUser, Send)]
    [InlineData(FaultKind.RateLimitedGlobal, Send)]
    [InlineData(FaultKind.ServerErrorHtml, Send)]
    [InlineData(FaultKind.ServerErrorAfterHandling, Send)]
    [InlineData(FaultKind.DroppedAfterHandling, Send)]
    [InlineData(FaultKind.ServerErrorHtml, Open)]
    [InlineData(FaultKind.DroppedAfterHandling, Open)]
    public async Task Chat_ThatFails_GetsItOnceItIsWell(FaultKind kind, string route)
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.AgreeAsync(house.Rider);
        house.Platform.Faults.RetryAfter = TimeSpan.FromMilliseconds(50);
        house.Platform.Faults.Next(kind, route, 8);
        house.MoveTo(18);
        await ClubHouse.UntilAsync(() => house.Platform.Faults.Injected.GetValueOrDefault(kind) > 0, "the fault");
        for (var tries = 0; tries < 20 && ((await house.Store.UnsaidPlacesAsync(10, default)) is { IsEmpty: false } || house.Direct(house.Rider).Count == 0); tries++)
        {
            house.Clock.Move(TimeSpan.FromMinutes(6));
            await Task.Delay(TimeSpan.FromSeconds(1));
        }

        house.Platform.Faults.Stop();
        house.Clock.Move(TimeSpan.FromMinutes(11));
        await house.ReminderAsync(house.Rider);
        house.AssertNoViolations();
    }

    /// <summary>A page of some machine in between says 403: that is not the member's no.</summary>
    [Fact]
    public async Task Chat_ThatIsShutOffByAMachineInBetween_IsNoRefusalOfTheMember()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.AgreeAsync(house.Rider);
        house.Platform.Faults.RefuseNext(Send, 403, 0, times: 1);
        house.MoveTo(18);
        await ClubHouse.UntilAsync(() => house.Platform.InvalidRequests > 0, "the refusal");
        await house.RoundAsync();
        Assert.False((await house.WishesAsync(house.Rider)).Refused);
        house.Clock.Move(TimeSpan.FromMinutes(11));
        await house.ReminderAsync(house.Rider);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Opening_TooFast_RestsForHours()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.AgreeAsync(house.Rider);
        await house.UseAsync(house.Rider, "reminders on", ("time", "12:00"));
        house.Platform.Faults.RefuseNext(Open, 400, 40003, times: 1);
        house.MoveTo(12);
        await ClubHouse.UntilAsync(() => Opens(house) == 1, "the try");
        for (var rounds = 0; rounds < 5; rounds++)
        {
            house.Clock.Move(TimeSpan.FromMinutes(20));
            await house.RoundAsync();
        }

        Assert.Equal(1, Opens(house));
        // Three hours after the try, and on a busy machine that comes some minutes late.
        house.MoveTo(15, 30);
        await house.ReminderAsync(house.Rider);
        Assert.Equal(2, Opens(house));
        house.AssertNoViolations();
    }

    /// <summary>The chat is away from six till after nine: what waits goes out in the morning, and that is the message of that day.</summary>
    [Fact]
    public async Task Chat_AwayTillQuietHours_GetsItInTheMorningAndNoSecondThatDay()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.AgreeAsync(house.Rider);
        house.Platform.Faults.Next(FaultKind.DroppedBeforeHandling, Send, 1000);
        house.MoveTo(20, 50);
        await house.WaitsAsync();
        house.MoveTo(21, 15);
        await house.RoundAsync();
        house.Platform.Faults.Stop();
        house.MoveTo(3);
        await house.RoundAsync();
        Assert.Empty(house.Direct(house.Rider));
        house.MoveTo(8, 1);
        await house.ReminderAsync(house.Rider);
        await house.UseAsync(house.Rider, "ride log", ("distance", "200"));
        house.MoveTo(18);
        await house.RoundAsync();
        Assert.Single(house.Direct(house.Rider));
        house.AssertNoViolations();
    }

    /// <summary>Whoever says stop while a message waits does not get it.</summary>
    [Fact]
    public async Task Stopped_WhileItWaits_IsNotSent()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.AgreeAsync(house.Rider);
        house.Platform.Faults.Next(FaultKind.DroppedBeforeHandling, Send, 1000);
        house.MoveTo(18);
        await house.WaitsAsync();
        await house.UseAsync(house.Rider, "reminders off");
        house.Platform.Faults.Stop();
        house.Clock.Move(TimeSpan.FromMinutes(11));
        await house.QuietAsync();
        Assert.Empty(house.Direct(house.Rider));
        house.AssertNoViolations();
    }

    /// <summary>A backup of before the reminder is put back: told that it is one, the program finds the reminder in the chat. Not told, it sends it once more and no oftener.</summary>
    [Theory]
    [InlineData(true, 1)]
    [InlineData(false, 2)]
    public async Task Restored_FromBeforeTheReminder_TellsNothingTwiceWhenItIsSaid(bool said, int reminders)
    {
        // The chat's clock is the program's here: what it says of the time of a message decides.
        var clock = AheadClock.To(17, 50);
        await using var house = await ClubHouse.OpenAsync(output, new StandInOptions { Clock = clock });
        await house.AgreeAsync(house.Rider);
        await house.StopAsync();
        File.Copy(house.DataFile, house.DataFile + ".copy");
        await house.StartAsync();
        house.MoveTo(18);
        await house.ReminderAsync(house.Rider);
        await house.StopAsync();
        foreach (var file in Directory.GetFiles(Path.GetDirectoryName(house.DataFile)!, "club*.shed")) File.Delete(file);
        File.Move(house.DataFile + ".copy", house.DataFile);
        house.Restored = said;
        // Long enough for the chat to have forgotten the nonce.
        clock.Move(TimeSpan.FromMinutes(30));
        house.Clock.Move(TimeSpan.FromMinutes(30));
        await house.StartAsync();
        await house.ComesRoundAsync(() => house.WishesAsync(house.Rider).Result.Told.Length > 0, "what was told to be noted");
        await house.ReminderAsync(house.Rider, reminders);
        house.AssertNoViolations();
    }

    private static int Opens(ClubHouse house) => house.Platform.Requests.Count(r => r.Method == "POST" && r.Route.EndsWith("/users/@me/channels", StringComparison.Ordinal));

    /// <summary>What the file holds when the program died after sending and before noting it: the message waits still.</summary>
    private static async Task UnsayAsync(ClubHouse house, SeenMessage digest)
    {
        var rider = await house.WishesAsync(house.Rider);
        var place = Decision.PlaceOf(rider.Member);
        var card = new Coaching.Cards.Card("Waits still", [], []);
        var message = new Coaching.Keeping.OutboxMessage($"{place}/{rider.LastDay:uuuu'-'MM'-'dd}", new(place), place, card, rider.LastAt!.Value);
        Assert.Equal(ShedBot.Discord.Clubs.Names.Nonce(message.Id), digest.Nonce);
        await house.Store.SaveRiderAsync(rider with { Version = rider.Version + 1 }, [], [message], default);
    }
}
