using System.Net;
using Microsoft.Extensions.Time.Testing;
using Moq;
using ShedBot.Discord.Clubs;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Clubs;

/// <summary>
/// Source of the rules: the platform's published description, interactions/receiving-and-responding: a first answer within 3 seconds, one only;
/// a deferred one is filled in by changing it; further ones are follow-ups.
/// </summary>
public sealed class AcknowledgementTests
{
    private static readonly Drawn Something = new(new MessageBody(Flags: MessageFlags.ComponentsV2, Components: [new Component(ComponentTypes.Text, Content: "hello")]), []);

    private readonly FakeTimeProvider clock = new(new DateTimeOffset(2026, 5, 1, 10, 0, 0, TimeSpan.Zero));
    private readonly Mock<IDiscordRest> rest = new();
    private readonly List<InteractionAnswer> answers = [];
    private readonly List<Trouble> refused = [];
    private bool writable = true;

    public AcknowledgementTests() => rest
        .Setup(r => r.AnswerAsync(It.IsAny<Interaction>(), It.IsAny<InteractionAnswer>(), It.IsAny<IReadOnlyList<Upload>>(), It.IsAny<CancellationToken>()))
        .Callback<Interaction, InteractionAnswer, IReadOnlyList<Upload>, CancellationToken>((_, a, _, _) => answers.Add(a))
        .ReturnsAsync((Message?)null);

    [Fact]
    public async Task TryUpdate_InTime_IsTheFirstAnswer()
    {
        await using var live = Press();
        Assert.True(await live.TryUpdateAsync(Something, default));
        Assert.Equal([AnswerTypes.Update], answers.Select(a => a.Type));
    }

    [Fact]
    public async Task Nothing_ForMoreThanASecond_IsAnnouncedByItself()
    {
        await using var live = Press();
        clock.Advance(Acknowledgement.AnnounceAfter);
        Assert.Equal([AnswerTypes.DeferredUpdate], answers.Select(a => a.Type));
        Assert.False(await live.TryUpdateAsync(Something, default));
    }

    [Fact]
    public async Task Nothing_ThatCouldNotBeWrittenDown_IsAnnounced()
    {
        writable = false;
        await using var live = Press();
        clock.Advance(Acknowledgement.AnnounceAfter);
        Assert.Empty(answers);
        Assert.True(await live.TryUpdateAsync(Something, default));
    }

    [Fact]
    public async Task Kept_OnlyOfWhatWasAnnouncedBeforeItWasDealtWith()
    {
        await using var settled = Press();
        await settled.SettleAsync(default);
        Assert.False(settled.Kept);

        await using var waiting = Press();
        await waiting.AnnounceAsync(default);
        Assert.True(waiting.Kept);
    }

    [Fact]
    public async Task Anything_OfAnEarlierProcess_IsNotAnsweredAnyMore()
    {
        await using var left = Of(new Interaction(new Snowflake(1), new Snowflake(2), InteractionTypes.Command, ""), false);
        Assert.False(await left.TellAsync(Something, default));
        Assert.Empty(answers);
    }

    [Fact]
    public async Task Announced_OfACommand_IsSeenByOneAloneAndFilledInLater()
    {
        await using var live = Command();
        clock.Advance(Acknowledgement.AnnounceAfter);
        Assert.Equal((AnswerTypes.DeferredMessage, MessageFlags.Ephemeral), (answers.Single().Type, answers.Single().Data!.Flags));
        Assert.True(await live.TellAsync(Something, default));
        rest.Verify(r => r.EditAnswerAsync(live.Interaction, Something.Body, Something.Files, It.IsAny<CancellationToken>()), Times.Once);
    }

    [Fact]
    public async Task Tell_Twice_TheSecondFollowsUp()
    {
        await using var live = Press();
        await live.TellAsync(Something, default);
        await live.TellAsync(Something, default);
        Assert.Equal([AnswerTypes.Message], answers.Select(a => a.Type));
        rest.Verify(
            r => r.FollowUpAsync(live.Interaction, It.Is<MessageBody>(b => (b.Flags & MessageFlags.Ephemeral) != 0), Something.Files, It.IsAny<CancellationToken>()), Times.Once);
    }

    [Fact]
    public async Task Answer_AfterThreeSeconds_IsNotTried()
    {
        await using var live = Press(formPlanned: true);
        clock.Advance(TimeSpan.FromSeconds(3));
        Assert.False(await live.TryUpdateAsync(Something, default));
        Assert.False(await live.TellAsync(Something, default));
        Assert.Empty(answers);
    }

    [Fact]
    public async Task Form_Planned_IsNotAnnouncedBefore()
    {
        await using var live = Press(formPlanned: true);
        clock.Advance(Acknowledgement.AnnounceAfter * 1.5);
        Assert.True(await live.ShowFormAsync(new InteractionAnswer(AnswerTypes.Modal, new InteractionAnswerData()), default));
        Assert.Equal([AnswerTypes.Modal], answers.Select(a => a.Type));
    }

    [Fact]
    public async Task Answer_RefusedByThePlatform_IsToldAndDoesNotThrow()
    {
        rest.Setup(r => r.AnswerAsync(It.IsAny<Interaction>(), It.IsAny<InteractionAnswer>(), It.IsAny<IReadOnlyList<Upload>>(), It.IsAny<CancellationToken>()))
            .ThrowsAsync(new DiscordException(Trouble.InteractionOver, HttpStatusCode.NotFound, 10062, "answer", "unknown interaction"));
        await using var live = Press();
        Assert.False(await live.TryUpdateAsync(Something, default));
        Assert.Equal([Trouble.InteractionOver], refused);
        Assert.False(await live.TellAsync(Something, default));
    }

    [Fact]
    public async Task Settle_NothingSaid_TakesThePressAsDone()
    {
        await using var live = Press();
        await live.SettleAsync(default);
        await live.SettleAsync(default);
        Assert.Equal([AnswerTypes.DeferredUpdate], answers.Select(a => a.Type));
    }

    [Fact]
    public async Task Dispose_WhileNothingWasSaid_EndsTheAnnouncing()
    {
        await Press().DisposeAsync();
        clock.Advance(TimeSpan.FromSeconds(2));
        Assert.Empty(answers);
    }

    private Acknowledgement Press(bool formPlanned = false) => Of(new Interaction(
        new Snowflake(1), new Snowflake(2), InteractionTypes.Component, "secret", new InteractionData(CustomId: "x"), Message: new Message(new Snowflake(3))), formPlanned);

    private Acknowledgement Command() => Of(new Interaction(new Snowflake(1), new Snowflake(2), InteractionTypes.Command, "secret"), false);

    private Acknowledgement Of(Interaction interaction, bool formPlanned) =>
        new(rest.Object, new InteractionCame(interaction) { At = clock.GetUtcNow() }, clock, (_, e) => refused.Add(e.Trouble), _ => Task.FromResult(writable), formPlanned);
}
