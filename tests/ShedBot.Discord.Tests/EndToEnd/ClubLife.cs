using ShedBot.DiscordStandIn.Faults;
using ShedBot.DiscordStandIn.World;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>Set-up, leave, restarts, and a platform that does not do as it is asked.</summary>
public sealed class ClubLife(ITestOutputHelper output)
{
    private const string PostMessage = "POST /channels/{channel_id}/messages";

    [Fact]
    public async Task SetUp_ByAModerator_IsKeptAndTold()
    {
        await using var house = await ClubHouse.OpenAsync(output, setUp: false);
        var told = await (await house.SetUpAsync()).Settled;
        Assert.Contains($"<#{house.Help.Id}>", told.Message!.Words, StringComparison.Ordinal);
        Assert.Contains("I may do all that I must", told.Message.Words, StringComparison.Ordinal);
        var club = (await house.Store.ClubsAsync(default)).Single();
        Assert.Equal((house.Help.Id.ToString(), house.Helpers.Id.ToString(), "Europe/Lisbon"), (club.HelpChannel, club.HelperRole, club.TimeZone));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task SetUp_ByAnybodyElse_IsRefused()
    {
        await using var house = await ClubHouse.OpenAsync(output, setUp: false);
        var told = await (await house.Platform.ForgedCommandAsync(house.Rider, house.Lobby, "club set-up", new Dictionary<string, string> { ["time-zone"] = "Europe/Lisbon" })).Settled;
        Assert.Contains("For moderators", told.Message!.Words, StringComparison.Ordinal);
        Assert.Equal("Etc/UTC", (await house.Store.ClubsAsync(default)).Single().TimeZone);
    }

    [Fact]
    public async Task SetUp_OfAZoneThatIsNone_SaysHowToWriteItAndChangesNothing()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var told = await (await house.Platform.CommandAsync(house.Owner, house.Lobby, "club set-up", new Dictionary<string, object> { ["time-zone"] = "Lissabon" })).Settled;
        Assert.Contains("Europe/Lisbon", told.Message!.Words, StringComparison.Ordinal);
        Assert.Equal("Europe/Lisbon", (await house.Store.ClubsAsync(default)).Single().TimeZone);
    }

    [Fact]
    public async Task Rights_Missing_AreNamed()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        house.Platform.SetRights(house.Help, house.Platform.Bot, deny: Rights.CreatePublicThreads | Rights.AttachFiles);
        var told = await (await house.Platform.CommandAsync(house.Owner, house.Lobby, "club check")).Settled;
        Assert.Contains("Create Public Threads", told.Message!.Words, StringComparison.Ordinal);
        Assert.Contains("Attach Files", told.Message.Words, StringComparison.Ordinal);
        await house.RestartAsync();
        await ClubHouse.UntilAsync(() => house.Log.Any(l => l.Contains("Create Public Threads", StringComparison.Ordinal)), "the log to name what is missing");
    }

    [Fact]
    public async Task Rights_MissingWhenACaseBegins_NothingIsLostAndItGoesOnLater()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        house.Platform.SetRights(house.Help, house.Platform.Bot, deny: Rights.CreatePublicThreads);
        var told = await (await house.Platform.CommandAsync(house.Rider, house.Lobby, "trouble", new Dictionary<string, object> { ["words"] = "the clutch drags" })).Settled;
        Assert.False(told.Failed);
        Assert.Equal(1, (await InTheThread.CaseAsync(house)).Turn);
        house.Platform.SetRights(house.Help, house.Platform.Bot, allow: Rights.CreatePublicThreads);
        await house.RestartAsync();
        Assert.Contains("changed lately?", house.Panel(await house.ThreadAsync())!.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Leave_OfAMember_RemovesAllThatIsKept()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await InTheThread.BeginAsync(house);
        await house.AnswerAsync(house.Rider, thread, "No, not lately");
        var asked = await (await house.Platform.CommandAsync(house.Rider, house.Lobby, "shedbot leave")).Settled;
        await (await house.Platform.PressLabelAsync(house.Rider, asked.Message!, "Remove all of it")).Answered;
        await ClubHouse.UntilAsync(() => house.Platform.Now(asked.Message!).Words.Contains("Forgotten", StringComparison.Ordinal), "the end to be told");
        Assert.Empty(house.Platform.Now(asked.Message!).Usable);
        await ClubHouse.UntilAsync(() => thread.Thread!.Archived, "the thread to be put away");
        Assert.Empty(await house.Store.CasesOfAsync(new($"{house.Guild.Id}/{house.Rider.Id}"), 10, default));
        Assert.Empty(await house.Store.BikesOfAsync(new($"{house.Guild.Id}/{house.Rider.Id}"), default));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Bike_AfterAnAnswer_ShowsWhatWasTold()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await InTheThread.BeginAsync(house);
        await house.AnswerAsync(house.Rider, thread, "No, not lately");
        var told = await (await house.Platform.CommandAsync(house.Rider, house.Lobby, "bike show")).Settled;
        Assert.True(told.Message!.Private);
        Assert.Contains("No, not lately", told.Message.Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Club_SendsUsAway_ItsDataIsMarkedAndAnOutageIsNot()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.Platform.RemoveGuildAsync(house.Guild, unavailable: true);
        await house.Platform.RestoreGuildAsync(house.Guild);
        Assert.Null((await house.Store.ClubsAsync(default)).Single().LeftAt);
        await house.Platform.RemoveGuildAsync(house.Guild);
        await ClubHouse.UntilAsync(() => house.Store.ClubsAsync(default).Result.Single().LeftAt is not null, "the club to be marked");
    }

    [Fact]
    public async Task Club_SendsUsAwayWhileNobodyListens_IsMarkedAtTheNextStart()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.StopAsync();
        house.Platform.ForgetSessions();
        await house.Platform.RemoveGuildAsync(house.Guild);
        await house.StartAsync();
        await ClubHouse.UntilAsync(() => house.Store.ClubsAsync(default).Result.Single().LeftAt is not null, "the club to be marked");
    }

    [Fact]
    public async Task Words_WhileNobodyListened_AreAnsweredAfterTheStart()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await InTheThread.BeginAsync(house);
        var panel = house.Panel(thread);
        await house.StopAsync();
        house.Platform.ForgetSessions();
        await house.Platform.SayAsync(house.Rider, thread, "no, not lately", replyTo: panel);
        await house.Platform.SayAsync(house.Mate, house.Help, $"<@{house.Platform.Bot.Id}> my clutch slips uphill", mentions: house.Platform.Bot);
        await house.StartAsync();
        await ClubHouse.UntilAsync(() => InTheThread.CaseAsync(house).Result.Turn == 2, "the words to be heard");
        await house.ThreadAsync(1);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Answer_ThatWentOutUnheard_IsNotSaidTwiceAfterTheStart()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await InTheThread.BeginAsync(house);
        house.Platform.Faults.Next(FaultKind.DroppedAfterHandling, PostMessage, times: 30);
        await house.Platform.SayAsync(house.Rider, thread, "no, not lately", replyTo: house.Panel(thread));
        await ClubHouse.UntilAsync(() => InTheThread.CaseAsync(house).Result.Turn == 2, "the words to be heard");
        await house.StopAsync();
        house.Platform.Faults.Stop();
        await house.StartAsync();
        await ClubHouse.UntilAsync(() => house.Store.UnsaidPlacesAsync(10, default).Result.IsEmpty, "all to be said");
        await ClubHouse.UntilAsync(
            () => house.Platform.Messages(thread, removed: false).Count(m => m.Usable.Any()) == 1, "one open question");
        Assert.Single(house.Platform.Messages(thread), m => m.Words.Contains("smear of grease", StringComparison.Ordinal));
        house.AssertNoViolations();
    }

    /// <summary>Whoever was told to wait for an answer gets it, also from the next process.</summary>
    [Fact]
    public async Task Press_AnnouncedAndThenTheProgramDied_CountsAfterTheStart()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await InTheThread.BeginAsync(house);
        var panel = house.Panel(thread)!;
        house.Platform.Faults.Delay = ClubHouse.Patience;
        house.Platform.Faults.Next(FaultKind.SlowAnswer, PostMessage);
        await (await house.Platform.CommandAsync(house.Rider, thread, "case go-on")).Answered;
        var list = panel.Usable.First(c => c.Choices.Any(o => ClubHouse.Same(o.Label, "No, not lately")));
        var press = await house.Platform.PickAsync(house.Rider, panel, list.CustomId!, list.Choices.First(o => ClubHouse.Same(o.Label, "No, not lately")).Value);
        Assert.Equal(6, (await press.Answered).Type);
        Assert.Equal(1, (await InTheThread.CaseAsync(house)).Turn);

        await house.KillAsync();
        house.Platform.ForgetSessions();
        await house.StartAsync();

        await ClubHouse.UntilAsync(() => InTheThread.CaseAsync(house).Result.Turn == 2, "the press to count");
        await ClubHouse.UntilAsync(() => house.Store.ArrivalsAsync(default).Result.IsEmpty, "nothing to wait any more");
        await ClubHouse.UntilAsync(() => house.Store.UnsaidPlacesAsync(10, default).Result.IsEmpty, "all to be said");
        Assert.DoesNotContain("changed lately?", house.Panel(thread)!.Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Thread_PutAwayUnheard_IsNotPutAwayForEver()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await InTheThread.BeginAsync(house);
        house.Platform.Faults.Next(FaultKind.ServerErrorAfterHandling, "PATCH /channels/{channel_id}");
        await house.Platform.CommandAsync(house.Rider, thread, "case leave");
        await ClubHouse.UntilAsync(() => house.Store.OpenRoomsAsync(default).Result.IsEmpty, "the room to be closed");
        Assert.True(thread.Thread!.Archived);
    }

    /// <summary>A rider who writes on where a case was handed over has a new trouble, also while nobody listens.</summary>
    [Fact]
    public async Task Words_WhereTheCaseIsClosedWhileNobodyListened_AreAnsweredAfterTheStart()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await InTheThread.BeginAsync(house);
        await house.SayAsync(house.Rider, thread, "i'd rather have a helper");
        await ClubHouse.UntilAsync(() => house.Store.OpenRoomsAsync(default).Result.IsEmpty, "the room to be closed");
        await house.StopAsync();
        house.Platform.ForgetSessions();
        await house.Platform.SayAsync(
            house.Rider, thread, $"<@{house.Platform.Bot.Id}> now the lever is very heavy", mentions: house.Platform.Bot);
        await house.StartAsync();
        await ClubHouse.UntilAsync(
            () => house.Store.CasesOfAsync(new($"{house.Guild.Id}/{house.Rider.Id}"), 10, default).Result.Length == 2, "a new case in the thread");
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Words_WhoseCatchingUpFailed_AreHeardAfterTheNextStart()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await InTheThread.BeginAsync(house);
        await house.StopAsync();
        await house.Platform.SayAsync(house.Rider, thread, "no, not lately", replyTo: house.Panel(thread));
        house.Platform.Faults.Next(FaultKind.ResumeRefused);
        house.Platform.Faults.Next(FaultKind.ServerErrorJson, "GET /channels/{channel_id}/messages", times: 8);
        await house.StartAsync();
        await ClubHouse.UntilAsync(() => house.Log.Any(l => l.Contains("could not be tidied (Busy)", StringComparison.Ordinal)), "catching up to fail");
        Assert.Equal(1, (await InTheThread.CaseAsync(house)).Turn);
        house.Platform.Faults.Stop();
        await house.RestartAsync();
        await ClubHouse.UntilAsync(() => InTheThread.CaseAsync(house).Result.Turn == 2, "the words to be heard");
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Commands_AtASecondStart_AreNotRegisteredAgain()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.RestartAsync();
        await InTheThread.BeginAsync(house);
        Assert.Single(house.Platform.Requests, r => r.Method == "PUT" && r.Path.EndsWith("/commands", StringComparison.Ordinal));
        house.AssertNoViolations();
    }
}
