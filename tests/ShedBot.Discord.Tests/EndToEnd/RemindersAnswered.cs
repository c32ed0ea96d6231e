using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.DiscordStandIn.Driving;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>Each answer to a reminder, in the direct conversation.</summary>
public sealed class RemindersAnswered(ITestOutputHelper output)
{
    [Fact]
    public async Task Done_OfOneTask_LeavesTheOthersToBeAnswered()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var digest = await DigestAsync(house);
        var offered = Choices(digest);
        var task = await house.LookAsync(house.Rider, digest);
        Assert.Contains("Time to", task.Words, StringComparison.Ordinal);
        var how = await house.PressAsync(house.Rider, digest, "How do I?");
        Assert.Contains("In this order", how.Words, StringComparison.Ordinal);
        var back = await house.PressAsync(house.Rider, digest, "Back");
        Assert.Equal(offered, Choices(back));
        await house.LookAsync(house.Rider, digest);
        var done = await house.PressAsync(house.Rider, digest, "Done");
        Assert.Contains("Noted as done:", done.Words, StringComparison.Ordinal);
        Assert.Single((await BikeAsync(house)).Done);
        Assert.DoesNotContain(offered[0], Choices(done));
        Assert.Contains("Tonight", Labels(done));
        Assert.Single(house.Direct(house.Rider));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Tonight_ComesBackTonightAndNotAgain()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var digest = await DigestAsync(house);
        Assert.Contains("Good, I'll come back to it on", (await house.PressAsync(house.Rider, digest, "Tonight")).Words, StringComparison.Ordinal);
        house.MoveTo(19, 30);
        await house.RoundAsync();
        Assert.Single(house.Direct(house.Rider));
        house.MoveTo(20, 1);
        var evening = await house.ReminderAsync(house.Rider, 2);
        Assert.Contains("Tomorrow", Labels(evening));
        house.MoveTo(20, 59);
        await house.RoundAsync();
        Assert.Equal(2, house.Direct(house.Rider).Count);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task NotRiding_TillADay_IsABreakAndSilenceTillThen()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var digest = await DigestAsync(house);
        var asked = await house.Platform.PressLabelAsync(house.Rider, digest, "Not riding");
        Assert.Equal(9, (await asked.Answered).Type);
        await (await house.Platform.SubmitAsync(asked, new Dictionary<string, object> { ["words"] = "the cows come home" })).Settled;
        Assert.Contains("I cannot read", house.Platform.Now(digest).Words, StringComparison.Ordinal);
        Assert.Contains("Not riding", Labels(house.Platform.Now(digest)));
        asked = await house.Platform.PressLabelAsync(house.Rider, house.Platform.Now(digest), "Not riding");
        await (await house.Platform.SubmitAsync(asked, new Dictionary<string, object> { ["words"] = "in 2 weeks" })).Settled;
        Assert.Contains("No reminders till", house.Platform.Now(digest).Words, StringComparison.Ordinal);
        Assert.Empty(house.Platform.Now(digest).Usable);
        Assert.NotNull((await BikeAsync(house)).Riding.Breaks.Single().Until);
        for (var evening = 0; evening < 3; evening++)
        {
            house.MoveTo(18);
            await house.RoundAsync();
        }

        Assert.Single(house.Direct(house.Rider));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task NoMoreOfThisOne_ThenAgain_StopsAndGoesOn()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var digest = await DigestAsync(house);
        var task = Choices(digest)[0];
        await house.LookAsync(house.Rider, digest);
        var stopped = await house.PressAsync(house.Rider, digest, "No more of this one");
        Assert.Contains("No more reminders of this", stopped.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(task, Choices(stopped));
        var id = Assert.Single((await house.WishesAsync(house.Rider)).Stopped);
        var offered = (await (await house.Platform.CompleteAsync(house.Rider, house.Lobby, "reminders again", "task", "")).Answered).Shown!.Value.GetProperty("choices");
        Assert.Equal(id, Assert.Single(offered.EnumerateArray()).GetProperty("value").GetString());
        await house.UseAsync(house.Rider, "reminders again", ("task", id));
        Assert.Empty((await house.WishesAsync(house.Rider)).Stopped);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task StopAll_EndsReminders()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var digest = await DigestAsync(house);
        var stopped = await house.PressAsync(house.Rider, digest, "Stop all reminders");
        Assert.Contains("No reminders, then", stopped.Words, StringComparison.Ordinal);
        Assert.Empty(stopped.Usable);
        await house.UseAsync(house.Rider, "ride log", ("distance", "30"));
        house.MoveTo(18);
        await house.RoundAsync();
        Assert.Single(house.Direct(house.Rider));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Trouble_OpensACaseInTheHelpChannelAndLinksIt()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var digest = await DigestAsync(house);
        var tasks = Choices(digest).Count;
        for (var i = 0; i < tasks && !Labels(house.Platform.Now(digest)).Contains("It shows trouble"); i++)
        {
            if (i > 0) await house.PressAsync(house.Rider, digest, "Back");
            await house.LookAsync(house.Rider, digest, i);
        }

        var which = await house.PressAsync(house.Rider, digest, "It shows trouble");
        Assert.Contains("What does it show?", which.Words, StringComparison.Ordinal);
        var trouble = which.Usable.First().Label;
        await house.Platform.PressLabelAsync(house.Rider, which, trouble);
        var thread = await house.ThreadAsync();
        await ClubHouse.UntilAsync(() => house.Platform.Now(digest).Words.Contains($"<#{thread.Id}>", StringComparison.Ordinal), "the link");
        Assert.Contains("The trouble is that", house.Platform.Now(digest).Words, StringComparison.Ordinal);
        var @case = Assert.Single(await house.Store.CasesOfAsync(house.Member(house.Rider), 10, default));
        Assert.Contains(@case.Entries, e => e.Kind == EntryKind.Complaint);
        Assert.Contains("Back", Labels(house.Platform.Now(digest)));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Press_DaysLaterAfterARestart_CountsOnce()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var digest = await DigestAsync(house);
        house.Clock.Move(TimeSpan.FromDays(3));
        await house.RestartAsync();
        var all = digest.Control("All of it is done").CustomId!;
        await house.PressAsync(house.Rider, digest, "All of it is done");
        var done = (await BikeAsync(house)).Done.Length;
        Assert.NotEqual(0, done);
        await (await house.Platform.ForgedPressAsync(house.Rider, digest, all)).Settled;
        await ClubHouse.UntilAsync(() => house.Platform.Now(digest).Words.Contains("That is noted already", StringComparison.Ordinal), "the second press");
        Assert.Equal(done, (await BikeAsync(house)).Done.Length);
        house.AssertNoViolations();
    }

    /// <summary>Whoever presses answers for themselves; one who never agreed to anything is told that it is not theirs.</summary>
    [Fact]
    public async Task Press_OfSomebodyElse_ChangesNothingOfTheRider()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var digest = await DigestAsync(house);
        var all = digest.Control("All of it is done").CustomId!;
        var stranger = await house.Platform.ForgedPressAsync(house.Mate, digest, all);
        Assert.Contains("That one is over", (await stranger.Settled).Message!.Words, StringComparison.Ordinal);
        foreach (var odd in (string[])["sb1:remind:123:" + all.Split(':', 4)[3], "sb1:remind:" + house.Guild.Id + ":nudge|x|AllDone||", "sb1:back:" + house.Guild.Id + ":", "sb1:rest:x:nudge|20260101|NotRiding||"])
        {
            var told = await house.Platform.ForgedPressAsync(house.Rider, digest, odd);
            Assert.Contains("That one is over", (await told.Settled).Message!.Words, StringComparison.Ordinal);
        }

        Assert.Empty((await BikeAsync(house)).Done);
        Assert.Equal(digest.Words, house.Platform.Now(digest).Words);
        Assert.Null(await house.Store.FindRiderAsync(house.Member(house.Mate), default));
        house.AssertNoViolations();
    }

    private static async Task<SeenMessage> DigestAsync(ClubHouse house)
    {
        await house.AgreeAsync(house.Rider);
        house.MoveTo(18);
        return await house.ReminderAsync(house.Rider);
    }

    private static async Task<BikeProfile> BikeAsync(ClubHouse house) => (await house.Store.FindBikeAsync(BikeId.Of(house.Member(house.Rider)), default))!;

    private static List<string> Choices(SeenMessage message) => [.. message.Usable.SelectMany(c => c.Choices).Select(c => c.Label)];

    private static List<string> Labels(SeenMessage message) => [.. message.Usable.Where(c => c.Choices.Count == 0).Select(c => c.Label)];
}
