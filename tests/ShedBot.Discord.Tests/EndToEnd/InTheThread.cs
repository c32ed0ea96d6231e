using ShedBot.Coaching.Cases;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.World;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>What may happen in the thread of a case beside the plain course of things.</summary>
public sealed class InTheThread(ITestOutputHelper output)
{
    private const string Drag = "clutch wont let go when i pull it in, bike keeps pulling";

    [Fact]
    public async Task Press_OnAnAnswer_ChangesTheSameMessageIntoTheNextQuestion()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        var first = house.Panel(thread)!;
        var deed = await house.AnswerAsync(house.Rider, thread, "No, not lately");
        var answer = await deed.Answered;
        Assert.Equal(7, answer.Type);
        Assert.Equal(first.Id, house.Panel(thread)!.Id);
        Assert.Contains("Answered: No, not lately", house.Panel(thread)!.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("changed lately?", house.Panel(thread)!.Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Press_TwiceAtOnce_CountsOnce()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        var panel = house.Panel(thread)!;
        var deeds = await Task.WhenAll(PressAsync(house, panel, "No, not lately"), PressAsync(house, panel, "No, not lately"));
        var answers = await Task.WhenAll(deeds.Select(d => d.Settled));
        Assert.DoesNotContain(answers, a => a.Failed);
        Assert.Equal(2, (await CaseAsync(house)).Turn);
        Assert.Single(answers, a => a.Message is { Private: true } m && m.Words.Contains("answered already", StringComparison.Ordinal));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Press_OnAQuestionThatIsOver_ChangesNothingAndTakesItsButtonsAway()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        var old = house.Panel(thread)!;
        await house.SayAsync(house.Rider, thread, "no not lately");
        var turn = (await CaseAsync(house)).Turn;
        var answer = await (await house.Platform.ForgedPressAsync(house.Rider, old, old.Usable.First().CustomId!)).Settled;
        Assert.True(answer.Message!.Private);
        Assert.Equal(turn, (await CaseAsync(house)).Turn);
        await ClubHouse.UntilAsync(() => !house.Platform.Now(old).Usable.Any(), "the old question to lose its buttons");
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Press_OfSomebodyElse_IsKindlyRefused()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        var answer = await (await house.AnswerAsync(house.Mate, thread, "No, not lately")).Settled;
        Assert.True(answer.Message!.Private);
        Assert.Contains("Not your case", answer.Message.Words, StringComparison.Ordinal);
        Assert.Equal(1, (await CaseAsync(house)).Turn);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Press_OfANamedHelper_CountsForTheRider()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        var notTheirs = await (await house.Platform.CommandAsync(house.Mate, thread, "case helper", new Dictionary<string, object> { ["who"] = house.Mate })).Settled;
        Assert.Contains("Not your case", notTheirs.Message!.Words, StringComparison.Ordinal);
        await (await house.Platform.CommandAsync(house.Rider, thread, "case helper", new Dictionary<string, object> { ["who"] = house.Mate })).Settled;
        await house.AnswerAsync(house.Mate, thread, "No, not lately");
        var @case = await CaseAsync(house);
        Assert.Equal((2, house.Rider.Id.ToString()), (@case.Turn, @case.Member.Value.Split('/')[1]));
        house.AssertNoViolations();
    }

    [Theory]
    [InlineData("nonsense")]
    [InlineData("sb1:a:nobody:1/state:refit")]
    [InlineData("sb1:a::")]
    [InlineData("sb2:a:nobody:1/x")]
    [InlineData("sb1:offer:new:1")]
    public async Task Press_MadeUp_IsAnsweredAndDoesNothing(string customId)
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        var answer = await (await house.Platform.ForgedPressAsync(house.Rider, house.Panel(thread)!, customId)).Settled;
        Assert.False(answer.Failed);
        Assert.True(answer.Message!.Private);
        Assert.Equal(1, (await CaseAsync(house)).Turn);
        Assert.DoesNotContain(house.Log, l => l.StartsWith("Error", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Press_OfAnotherThreadsCase_IsRefused()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var mine = await BeginAsync(house);
        var theirs = await BeginAsync(house, house.Mate);
        var answer = await (await house.Platform.ForgedPressAsync(house.Mate, house.Panel(theirs)!, house.Panel(mine)!.Usable.First().CustomId!)).Settled;
        Assert.Contains("That one is over", answer.Message!.Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Press_AfterARestart_CountsAsBefore()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        await house.RestartAsync();
        Assert.Equal(7, (await (await house.AnswerAsync(house.Rider, thread, "No, not lately")).Answered).Type);
        Assert.Equal(2, (await CaseAsync(house)).Turn);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Why_IsShownToOneAloneAndChangesNothing()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        var before = house.Panel(thread)!.Words;
        var answer = await (await house.AnswerAsync(house.Rider, thread, "Why do you ask?")).Settled;
        Assert.True(answer.Message!.Private);
        Assert.Contains("Why I ask", answer.Message.Words, StringComparison.Ordinal);
        Assert.Equal(before, house.Panel(thread)!.Words);
        Assert.Equal(1, (await CaseAsync(house)).Turn);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Thoughts_OnRequest_AreShownToOneAlone()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        var byButton = await (await house.AnswerAsync(house.Rider, thread, "What do you think?")).Settled;
        var byCommand = await (await house.Platform.CommandAsync(house.Mate, thread, "case thoughts")).Settled;
        Assert.All([byButton, byCommand], a => Assert.True(a.Message!.Private && a.Message.Words.Contains('%', StringComparison.Ordinal)));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task OwnWords_ThroughTheForm_AreAnAnswer()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        var form = await house.AnswerAsync(house.Rider, thread, "In my own words");
        Assert.Equal(9, (await form.Answered).Type);
        var sent = await house.Platform.SubmitAsync(form, new Dictionary<string, object> { ["words"] = "no, not lately" });
        Assert.False((await sent.Settled).Failed);
        Assert.Equal(2, (await CaseAsync(house)).Turn);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Words_OfOthers_AreComments()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        await house.Platform.SayAsync(house.Mate, thread, "sounds like the cable to me", replyTo: house.Panel(thread));
        await house.SayAsync(house.Rider, thread, "no not lately");
        Assert.Equal(2, (await CaseAsync(house)).Turn);
        Assert.DoesNotContain((await CaseAsync(house)).Entries, e => e.Subject.Contains("cable", StringComparison.Ordinal));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Words_ThatWeMayNotRead_AreHintedAtOnce()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        await house.Platform.SayAsync(house.Rider, thread, "no nothing changed");
        var hint = await house.Platform.WaitForMessageAsync(m => m.ChannelId == thread.Id && m.Words.Contains("I cannot read that", StringComparison.Ordinal));
        await house.Platform.SayAsync(house.Rider, thread, "hello?");
        await house.SayAsync(house.Rider, thread, "no not lately");
        Assert.Single(house.Platform.Messages(thread), m => m.Words.Contains("I cannot read that", StringComparison.Ordinal));
        Assert.Empty(hint.RangFor);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Thread_ArchivedByHand_IsRevivedByAPress()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        await house.Platform.ArchiveAsync(thread);
        await house.AnswerAsync(house.Rider, thread, "No, not lately");
        await ClubHouse.UntilAsync(() => house.Panel(thread) is { } p && !p.Words.Contains("changed lately?", StringComparison.Ordinal), "the next question");
        Assert.Equal(2, (await CaseAsync(house)).Turn);
    }

    [Fact]
    public async Task Thread_Removed_EndsTheRoomAndKeepsTheCase()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        await house.Platform.DeleteChannelAsync(thread);
        await ClubHouse.UntilAsync(() => house.Store.OpenRoomsAsync(default).Result.IsEmpty, "the room to be gone");
        Assert.Equal(1, (await CaseAsync(house)).Turn);
    }

    [Fact]
    public async Task Panel_Removed_IsPutAnewOnRequest()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        await house.Platform.DeleteMessageAsync(house.Panel(thread)!);
        await (await house.Platform.CommandAsync(house.Rider, thread, "case go-on")).Settled;
        await ClubHouse.UntilAsync(() => house.Panel(thread) is not null, "the question anew");
        await house.AnswerAsync(house.Rider, thread, "No, not lately");
        Assert.Equal(2, (await CaseAsync(house)).Turn);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Helper_WantedByTheRider_RingsForTheRoleWithAllThatIsKnown()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        await house.SayAsync(house.Rider, thread, "i'd rather have a helper");
        var summary = await house.Platform.WaitForMessageAsync(m => m.ChannelId == thread.Id && m.RangForRoles.Contains(house.Helpers.Id));
        Assert.Contains("here is all we know", summary.Words, StringComparison.Ordinal);
        Assert.Contains(Drag, summary.Words, StringComparison.Ordinal);
        Assert.False(thread.Thread!.Archived);
        Assert.Equal(CasePhase.HandedOver, (await CaseAsync(house)).Phase);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Leave_ByCommand_PutsTheThreadAway()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await BeginAsync(house);
        await (await house.Platform.CommandAsync(house.Rider, thread, "case leave")).Settled;
        await ClubHouse.UntilAsync(() => thread.Thread!.Archived, "the thread to be put away");
        Assert.Equal(CasePhase.Left, (await CaseAsync(house)).Phase);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Words_WithMentionsInThem_RingForNobody()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        await (await house.Platform.CommandAsync(
            house.Rider, house.Lobby, "trouble", new Dictionary<string, object> { ["words"] = $"@everyone <@{house.Mate.Id}> <@&{house.Helpers.Id}> clutch drags **badly**" })).Settled;
        var thread = await house.ThreadAsync();
        await house.SayAsync(house.Rider, thread, "i'd rather have a helper");
        await house.Platform.WaitForMessageAsync(m => m.ChannelId == thread.Id && m.RangForRoles.Count > 0);
        var ours = house.Platform.Messages(thread).Concat(house.Platform.Messages(house.Help)).Where(m => m.AuthorId == house.Platform.Bot.Id).ToList();
        Assert.DoesNotContain(ours, m => m.RangForEveryone || m.RangFor.Contains(house.Mate.Id));
        house.AssertNoViolations();
    }

    internal static async Task<Channel> BeginAsync(ClubHouse house, Person? who = null)
    {
        var before = house.Platform.Threads(house.Help).Select(t => t.Id).ToHashSet();
        var deed = await house.Platform.CommandAsync(who ?? house.Rider, house.Lobby, "trouble", new Dictionary<string, object> { ["words"] = Drag });
        await deed.Settled;
        return house.Platform.Threads(house.Help).Single(t => !before.Contains(t.Id));
    }

    internal static async Task<Case> CaseAsync(ClubHouse house) =>
        (await house.Store.CasesOfAsync(new MemberId($"{house.Guild.Id}/{house.Rider.Id}"), 1, default)).Single();

    private static Task<Deed> PressAsync(ClubHouse house, SeenMessage panel, string label)
    {
        var button = panel.Usable.FirstOrDefault(c => ClubHouse.Same(c.Label, label));
        if (button is not null) return house.Platform.PressAsync(house.Rider, panel, button.CustomId!);
        var (control, choice) = panel.Usable.SelectMany(c => c.Choices, (c, o) => (c, o)).First(x => ClubHouse.Same(x.o.Label, label));
        return house.Platform.PickAsync(house.Rider, panel, control.CustomId!, choice.Value);
    }
}
