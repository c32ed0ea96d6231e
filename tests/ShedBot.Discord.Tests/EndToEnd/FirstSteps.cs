using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.World;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>How a case begins, in every way that it can, and how it does not.</summary>
public sealed class FirstSteps(ITestOutputHelper output)
{
    private const string Drag = "clutch wont let go when i pull it in, bike keeps pulling";
    private const string FirstQuestion = "Has anything on the clutch been apart or changed lately?";

    [Fact]
    public async Task Trouble_InOnesOwnWords_OpensAThreadWithTheFirstQuestion()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var told = await (await TroubleAsync(house, house.Rider, Drag)).Settled;
        var thread = await house.ThreadAsync();
        Assert.True(told.Message!.Private);
        Assert.Contains($"<#{thread.Id}>", told.Message.Words, StringComparison.Ordinal);
        Assert.Equal("The clutch drags: Robin's bike", thread.Name);
        var panel = house.Panel(thread)!;
        Assert.Contains(FirstQuestion, panel.Words, StringComparison.Ordinal);
        Assert.Contains(house.Rider.Id, panel.RangFor);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Trouble_WithoutWords_AsksForThemInAForm()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var deed = await house.Platform.CommandAsync(house.Rider, house.Lobby, "trouble");
        Assert.Equal(9, (await deed.Answered).Type);
        await house.Platform.SubmitAsync(deed, new Dictionary<string, object> { ["words"] = Drag });
        var thread = await house.ThreadAsync();
        Assert.Contains(FirstQuestion, house.Panel(thread)!.Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Trouble_InPrivate_IsSeenByTheMemberAndUsOnly()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await TroubleAsync(house, house.Rider, Drag, @private: true);
        var thread = await house.ThreadAsync();
        Assert.Equal(ChannelKind.PrivateThread, thread.Kind);
        Assert.Equal([house.Platform.Bot.Id, house.Rider.Id], house.Platform.PeopleIn(thread).Select(p => p.Id).Order());
        Assert.DoesNotContain(house.Platform.Messages(house.Help), m => m.Words.Contains("clutch wont", StringComparison.Ordinal));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Trouble_InPrivateWhereHelpIsAForum_IsNotMadePublic()
    {
        await using var house = await ClubHouse.OpenAsync(output, forum: true);
        var told = await (await TroubleAsync(house, house.Rider, Drag, @private: true)).Settled;
        Assert.Contains("Not in private here", told.Message!.Words, StringComparison.Ordinal);
        Assert.Empty(house.Platform.Threads(house.Help));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Trouble_NoneOfOurs_OpensNoThread()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var told = await (await TroubleAsync(house, house.Rider, "what is the weather tomorrow")).Settled;
        Assert.True(told.Message!.Private);
        Assert.Empty(house.Platform.Threads(house.Help));
        Assert.Empty(await house.Store.OpenRoomsAsync(default));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Trouble_NobodyChoseAHelpChannel_SaysWhoCan()
    {
        await using var house = await ClubHouse.OpenAsync(output, setUp: false);
        var told = await (await TroubleAsync(house, house.Rider, Drag)).Settled;
        Assert.Contains("/club set-up", told.Message!.Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Trouble_AFourthAtOnce_IsAskedToFinishOne()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        for (var i = 0; i < 3; i++) await (await TroubleAsync(house, house.Rider, Drag)).Settled;
        var told = await (await TroubleAsync(house, house.Rider, Drag)).Settled;
        Assert.Contains("One after the other", told.Message!.Words, StringComparison.Ordinal);
        Assert.Equal(3, house.Platform.Threads(house.Help).Count);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Mention_InTheHelpChannel_HangsTheThreadOnTheMessage()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var said = await house.Platform.SayAsync(house.Rider, house.Help, $"<@{house.Platform.Bot.Id}> {Drag}", mentions: house.Platform.Bot);
        var thread = await house.ThreadAsync();
        Assert.Equal(said.Id, thread.Id);
        Assert.Contains(FirstQuestion, house.Panel(thread)!.Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Trouble_WhereTheHelpChannelIsGone_SaysWhoCanChooseAnother()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.Platform.DeleteChannelAsync(house.Help);
        var told = await (await TroubleAsync(house, house.Rider, Drag)).Settled;
        Assert.Contains("/club set-up", told.Message!.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Mention_Elsewhere_SaysWhereHelpIs()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await house.Platform.SayAsync(house.Rider, house.Lobby, $"<@{house.Platform.Bot.Id}> {Drag}", mentions: house.Platform.Bot);
        var reply = await house.Platform.WaitForMessageAsync(m => m.AuthorId == house.Platform.Bot.Id && m.ChannelId == house.Lobby.Id);
        Assert.Contains($"<#{house.Help.Id}>", reply.Words, StringComparison.Ordinal);
        Assert.Empty(reply.RangFor);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Mention_InAPostOfTheForum_GoesOnRightThere()
    {
        await using var house = await ClubHouse.OpenAsync(output, forum: true);
        var post = house.Platform.StartThread(house.Rider, house.Help, "help please");
        await house.Platform.SayAsync(house.Rider, post, $"<@{house.Platform.Bot.Id}> {Drag}", mentions: house.Platform.Bot);
        var thread = await house.ThreadAsync();
        Assert.Equal(post.Id, thread.Id);
        Assert.Equal("help please", thread.Name);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task CoachThis_OnOnesOwnMessage_BeginsTheCase()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var said = await house.Platform.SayAsync(house.Rider, house.Help, Drag);
        await house.Platform.MenuAsync(house.Rider, "Coach this", said);
        var thread = await house.ThreadAsync();
        Assert.Equal(said.Id, thread.Id);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task CoachThis_OnAnothersMessage_KeepsNothingUntilTheySayYes()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var said = await house.Platform.SayAsync(house.Rider, house.Help, Drag);
        await house.Platform.MenuAsync(house.Mate, "Coach this", said);
        var offer = await house.Platform.WaitForMessageAsync(m => m.AuthorId == house.Platform.Bot.Id && m.Usable.Any() && !m.Private);
        Assert.Contains(house.Rider.Id, offer.RangFor);
        Assert.Empty(await house.Store.OpenRoomsAsync(default));

        var notTheirs = await (await house.Platform.PressLabelAsync(house.Mate, offer, "Yes, coach me")).Settled;
        Assert.Contains("not meant for you", notTheirs.Message!.Words, StringComparison.Ordinal);
        Assert.Empty(await house.Store.OpenRoomsAsync(default));

        await house.Platform.PressLabelAsync(house.Rider, offer, "Yes, coach me");
        var thread = await house.ThreadAsync();
        Assert.Equal(said.Id, thread.Id);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task CoachThis_YesAfterARestart_AsksForTheWordsAgain()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var said = await house.Platform.SayAsync(house.Rider, house.Help, Drag);
        await house.Platform.MenuAsync(house.Mate, "Coach this", said);
        var offer = await house.Platform.WaitForMessageAsync(m => m.AuthorId == house.Platform.Bot.Id && m.Usable.Any() && !m.Private);
        await house.RestartAsync();
        var deed = await house.Platform.PressLabelAsync(house.Rider, offer, "Yes, coach me");
        Assert.Equal(9, (await deed.Answered).Type);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task DirectMessage_OfAnybody_SaysWhereHelpIs()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var direct = house.Platform.DirectChannel(house.Rider);
        await house.Platform.SayAsync(house.Rider, direct, Drag);
        var reply = await house.Platform.WaitForMessageAsync(m => m.AuthorId == house.Platform.Bot.Id && m.ChannelId == direct.Id);
        Assert.Contains("club's channel", reply.Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task DirectMessage_OfSomebodyWhoTakesNone_IsTriedOnceAndHurtsNobody()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        house.Rider.DirectMessages = DirectMessages.Blocked;
        await house.Platform.SayAsync(house.Rider, house.Platform.DirectChannel(house.Rider), Drag);
        await ClubHouse.UntilAsync(() => house.Platform.InvalidRequests == 1, "the refusal");
        await TroubleAsync(house, house.Rider, Drag);
        await house.ThreadAsync();
        Assert.Equal(1, house.Platform.InvalidRequests);
        Assert.DoesNotContain(house.Log, l => l.StartsWith("Error", StringComparison.Ordinal));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task OrdinaryTalk_NobodyAskedUs_IsNotAnswered()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var before = house.Platform.Requests.Count;
        for (var i = 0; i < 50; i++) await house.Platform.SayAsync(house.Mate, house.Help, $"my clutch drags too {i}");
        await TroubleAsync(house, house.Rider, "what is the weather");
        Assert.DoesNotContain(house.Platform.Messages(house.Help), m => m.AuthorId == house.Platform.Bot.Id && !m.Private);
        Assert.InRange(house.Platform.Requests.Count - before, 1, 3);
    }

    private static async Task<Deed> TroubleAsync(ClubHouse house, Person who, string words, bool @private = false)
    {
        var options = new Dictionary<string, object> { ["words"] = words };
        if (@private) options["private"] = true;
        var deed = await house.Platform.CommandAsync(who, house.Lobby, "trouble", options);
        Assert.False((await deed.Answered).Failed);
        return deed;
    }
}
