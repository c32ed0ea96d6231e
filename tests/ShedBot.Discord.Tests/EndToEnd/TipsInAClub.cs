using ShedBot.Coaching.Teaching;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.Faults;
using ShedBot.DiscordStandIn.World;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>What members know, from a message to the word about what became of it.</summary>
public sealed class TipsInAClub(ITestOutputHelper output)
{
    private const string Reason = "Known already, thank you.";

    [Fact]
    public async Task Message_PassedOnFromAThread_WaitsWithItsLinkOnce()
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new QuickTrials());
        var thread = house.Platform.StartThread(house.Rider, house.Lobby, "what I found");
        var words = await house.Platform.SayAsync(house.Rider, thread, "mine dragged because the cable was wound round the frame");
        var thanks = (await (await house.Platform.MenuAsync(house.Mate, "Pass on as a tip", words)).Settled).Message!;
        Assert.Contains("Robin hears from me", thanks.Words, StringComparison.Ordinal);
        var tip = Assert.Single(await house.Store.TipsAsync(Moderating.ClubOf(house.Guild), TipState.Waiting, 10, default));
        Assert.Equal($"https://discord.com/channels/{house.Guild.Id}/{thread.Id}/{words.Id}", tip.Where);
        var list = await house.AskAsync(house.Owner, "rules tips");
        var shown = await house.UseCardAsync(house.Owner, list, list.Usable.First().Label);
        Assert.Contains($"Said in <#{thread.Id}>: <{tip.Where}>", shown.Words, StringComparison.Ordinal);
        Assert.Single(Pieces(shown.Words, tip.Where[..20]));
        Assert.Empty(shown.RangFor);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Message_OfOurOwn_IsNoTip()
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new QuickTrials());
        await house.AskAsync(house.Rider, "trouble", ("words", "the clutch drags"));
        var ours = house.Panel(await house.ThreadAsync())!;
        Assert.Contains("A tip is what a member wrote", (await (await house.Platform.MenuAsync(house.Rider, "Pass on as a tip", ours)).Settled).Message!.Words, StringComparison.Ordinal);
        Assert.Empty(await house.Store.TipsAsync(Moderating.ClubOf(house.Guild), TipState.Waiting, 10, default));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Word_ToAGiverWhoTakesNoMessages_IsToldOnceBesideTheirNextCommand()
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new QuickTrials());
        await DeclinedAsync(house, blocked: true);
        await ClubHouse.UntilAsync(() => house.Platform.InvalidRequests == 1, "the refusal");
        house.Clock.ComeRound();
        var used = await BesideAsync(house);
        Assert.Contains(Reason, Assert.Single(used).Words, StringComparison.Ordinal);
        Assert.True(used[0].Private);
        Assert.Empty(await BesideAsync(house));
        Assert.Equal(1, house.Platform.InvalidRequests);
        Assert.DoesNotContain(house.Platform.Messages(house.Lobby), m => !m.Private && m.AuthorId == house.Platform.Bot.Id);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Word_RefusedAndThenARestart_IsStillTold()
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new QuickTrials());
        await DeclinedAsync(house, blocked: true);
        await ClubHouse.UntilAsync(() => house.Platform.InvalidRequests == 1, "the refusal");
        await house.StopAsync();
        house.Rider.DirectMessages = DirectMessages.Welcome;
        await house.StartAsync();
        var direct = house.Platform.DirectChannel(house.Rider);
        await house.ComesRoundAsync(() => house.Platform.Messages(direct).Count > 0, "the word");
        Assert.Contains(Reason, Assert.Single(house.Platform.Messages(direct)).Words, StringComparison.Ordinal);
        Assert.Empty(await BesideAsync(house));
        house.AssertNoViolations();
    }

    /// <summary>A message beside an answer has no nonce and cannot be looked for: of lost and told once more, it is told once more.</summary>
    [Fact]
    public async Task Word_ToldBesideAndKilledBeforeThatWasKept_IsNotLostAndToldNoThirdTime()
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new QuickTrials());
        await DeclinedAsync(house, blocked: true);
        await ClubHouse.UntilAsync(() => house.Platform.InvalidRequests == 1, "the refusal");
        house.Platform.Faults.Delay = ClubHouse.Patience;
        house.Platform.Faults.Next(FaultKind.SlowAnswer, "POST /webhooks/{webhook_id}/{webhook_token}");
        var killed = await house.Platform.CommandAsync(house.Rider, house.Lobby, "service plan");
        await ClubHouse.UntilAsync(() => killed.FollowUps.Count > 0, "the word");
        Assert.Contains(Reason, killed.FollowUps[0].Words, StringComparison.Ordinal);

        await house.KillAsync();
        house.Platform.ForgetSessions();
        await house.StartAsync();
        await house.ComesRoundAsync(() => house.Platform.InvalidRequests == 2, "the refusal to the next process");

        Assert.Contains(Reason, Assert.Single(await BesideAsync(house)).Words, StringComparison.Ordinal);
        Assert.Empty(await BesideAsync(house));
        house.AssertNoViolations();
    }

    [Theory]
    [InlineData("rules write", "sheet", "**@everyone** <#1> \u202Ecba")]
    [InlineData("rules write", "sheet", "🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲🚲")]
    [InlineData("rules write", "sheet", "   ")]
    [InlineData("rules go-on", "proposal", "../../etc|teach|Publish")]
    [InlineData("rules go-on", "answer", "\\\"';-- arm\u0301 \u200B clutch")]
    [InlineData("rules go-on", "answer", "the clutch")]
    public async Task Completion_OfWhateverIsTyped_OffersAtMost25AndChangesNothing(string command, string option, string typed)
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new QuickTrials());
        await house.AskAsync(house.Owner, "rules write", ("sheet", "cause"));
        var before = await house.Store.AuditAsync(Moderating.ClubOf(house.Guild), long.MaxValue, 100, default);
        var offered = await (await house.Platform.CompleteAsync(house.Owner, house.Lobby, command, option, typed)).Answered;
        Assert.False(offered.Failed);
        Assert.InRange(offered.Shown!.Value.GetProperty("choices").GetArrayLength(), option == "answer" && typed == "the clutch" ? 1 : 0, 25);
        Assert.Equal(before.AsEnumerable(), await house.Store.AuditAsync(Moderating.ClubOf(house.Guild), long.MaxValue, 100, default));
        house.AssertNoViolations();
    }

    private static async Task DeclinedAsync(ClubHouse house, bool blocked)
    {
        await house.AskAsync(house.Rider, "tip", ("words", "grease it"));
        if (blocked) house.Rider.DirectMessages = DirectMessages.Blocked;
        var list = await house.AskAsync(house.Owner, "rules tips");
        var tip = await house.UseCardAsync(house.Owner, list, list.Usable.First().Label);
        var form = await house.Platform.PressAsync(house.Owner, tip, tip.Control("Decline it kindly").CustomId!);
        await (await house.Platform.SubmitAsync(form, new Dictionary<string, object> { ["words"] = Reason })).Settled;
    }

    /// <summary>What comes beside the answer to a command.</summary>
    private static async Task<IReadOnlyList<SeenMessage>> BesideAsync(ClubHouse house)
    {
        var deed = await house.Platform.CommandAsync(house.Rider, house.Lobby, "service plan");
        await deed.Settled;
        await Task.Delay(TimeSpan.FromMilliseconds(500));
        return deed.FollowUps;
    }

    private static IEnumerable<int> Pieces(string text, string of)
    {
        for (var at = text.IndexOf(of, StringComparison.Ordinal); at >= 0; at = text.IndexOf(of, at + 1, StringComparison.Ordinal)) yield return at;
    }
}
