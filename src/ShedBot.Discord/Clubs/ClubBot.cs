using ShedBot.Coaching.Clubs;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>
/// Takes what happens on the platform to whom it concerns. The reading thread only puts it into a lane: what belongs to one thread is dealt
/// with in order, everything else side by side.
/// </summary>
internal sealed class ClubBot : IEventSink, IMessageInterest
{
    private readonly Parts parts;
    private readonly Handlers to;
    private readonly Snowflake registerIn;
    private readonly Lanes lanes = new();
    private readonly Guard guard;
    private readonly CancellationToken stopping;

    private int begun;

    /// <param name="registerIn">The one club in which commands are registered while trying things out; none: in all.</param>
    /// <param name="stopping">Ends all work that is going on.</param>
    /// <inheritdoc cref="Handlers(Parts, TimeSpan, bool, TimeSpan, Action{Snowflake, Func{Task}})"/>
    public ClubBot(Parts parts, Snowflake registerIn, TimeSpan keepAfterLeaving, bool restored, TimeSpan trialTold, CancellationToken stopping)
    {
        (this.parts, this.registerIn, this.stopping) = (parts, registerIn, stopping);
        guard = new Guard(parts, stopping);
        to = new Handlers(parts, keepAfterLeaving, restored, trialTold, Aside);
    }

    /// <summary>Work that is going on or waiting.</summary>
    public int Busy => lanes.Busy;

    /// <summary>To be awaited before the first event comes in.</summary>
    public async Task PrepareAsync(CancellationToken ct)
    {
        var waiting = await to.Upkeep.BeginAsync(ct);
        await to.Arrivals.LoadAsync(ct);
        parts.Log.Began((await parts.Clubs.ClubsAsync(ct)).Length, waiting);
    }

    /// <summary>Looks after what nobody asks for, until it is called off.</summary>
    public Task KeepUpAsync(CancellationToken ct) => Task.WhenAll(to.Rounds.Prepend(RoundAsync).Select(round => RepeatAsync(round, ct)));

    private async Task RepeatAsync(Func<CancellationToken, Task> round, CancellationToken ct)
    {
        using var timer = new PeriodicTimer(Upkeep.Every, parts.Clock);
        while (await timer.WaitForNextTickAsync(ct)) await guard.RunAsync(() => Volatile.Read(ref begun) == 0 ? Task.CompletedTask : round(ct));
    }

    /// <summary>Waits until all that came in was dealt with.</summary>
    public Task DrainAsync() => lanes.DrainAsync();

    public bool Wants(in MessagePeek message) =>
        !message.FromBot && (message.MentionsUs || message.Guild.IsNone || to.Rooms.Unhinted(message.Channel));

    public void Take(GatewayEvent happened, Action done)
    {
        if (happened is Ready ready)
        {
            parts.Me.Set(ready.Me.Id, ready.Application);
            if (ready.Fresh) to.Rooms.FallBehind();
        }

        var lane = LaneOf(happened);
        // An interaction's three seconds run while its lane is busy with something else, so its clock is started here.
        var live = happened is InteractionCame came ? Acknowledge(came) : null;
        lanes.Post(lane, async () =>
        {
            await guard.RunAsync(() => HandleAsync(happened, live));
            if (live is not null) await live.DisposeAsync();
            if (stopping.IsCancellationRequested) return;
            if (live is { Kept: true }) await guard.RunAsync(() => to.Arrivals.DropAsync((InteractionCame)happened, stopping));
            done();
        });
    }

    /// <summary>Does work that takes its time in a lane of its own; it is waited for like all the rest.</summary>
    /// <param name="of">What it came of: no other lane is named so.</param>
    private void Aside(Snowflake of, Func<Task> work) => lanes.Post(of.Value, () => guard.RunAsync(work));

    /// <summary>Deals with what an earlier process has told members to wait for.</summary>
    private void TakeUp()
    {
        foreach (var came in to.Arrivals.TakeLeft())
        {
            lanes.Post(LaneOf(came), () => guard.RunAsync(async () =>
            {
                await using var live = Acknowledge(came);
                try
                {
                    await to.Routing.HandleAsync(came, live, stopping);
                }
                catch (DiscordException e) when (e.Trouble == Trouble.Busy)
                {
                    parts.Log.NotSaid(e.Trouble, e);
                    to.Arrivals.PutBack(came);
                    return;
                }

                await to.Arrivals.DropAsync(came, stopping);
            }));
        }
    }

    private ulong LaneOf(GatewayEvent happened) => happened switch
    {
        InteractionCame { Interaction: var i } => to.Rooms.IsRoom(i.ChannelId) ? i.ChannelId.Value : i.Who?.Id.Value ?? i.Id.Value,
        MessageCame { Message: var m } => to.Rooms.IsRoom(m.ChannelId) ? m.ChannelId.Value : m.Author?.Id.Value ?? m.Id.Value,
        GuildThere { Guild.Id: var id } => id.Value,
        GuildGone { Guild: var id } => id.Value,
        ThreadGone { Thread: var id } => id.Value,
        ChannelGone { Guild: var id } => id.Value,
        MessageGone { Channel: var id } => id.Value,
        _ => 0,
    };

    private Acknowledgement Acknowledge(InteractionCame came) =>
        new(parts.Rest, came, parts.Clock, (_, e) => parts.Log.NotAnswered(e.Trouble, e), ct => to.Arrivals.KeepAsync(came, ct), Routing.AnswersWithForm(came));

    private async Task HandleAsync(GatewayEvent happened, Acknowledgement? live)
    {
        switch (happened)
        {
            case Ready ready:
                await BeginAsync(ready);
                break;
            case InteractionCame came:
                try
                {
                    await to.Routing.HandleAsync(came, live!, stopping);
                }
                catch (Exception e) when (e is not OperationCanceledException)
                {
                    await live!.TellAsync(Texts.Draw(Texts.CannotNow), stopping);
                    throw;
                }

                break;
            case MessageCame came:
                await to.Saying.HandleAsync(came.Message, came.At, stopping);
                break;
            case GuildThere there:
                await to.There.ThereAsync(there.Guild, stopping);
                break;
            case GuildGone { Outage: false } gone:
                await to.There.SentAwayAsync(Names.Club(gone.Guild), stopping);
                break;
            case ThreadGone gone:
                if (await to.Rooms.FindByThreadAsync(gone.Thread, stopping) is { } room)
                    await to.Rooms.ChangeAsync(room.Place, r => r with { State = RoomState.Gone }, stopping);
                break;
            case MessageGone gone:
                if (await to.Rooms.FindByThreadAsync(gone.Channel, stopping) is { Panel: { } panel } at && gone.Messages.Any(m => m.ToString() == panel))
                    await to.Rooms.ChangeAsync(at.Place, r => r.Panel == panel ? r with { Panel = null } : r, stopping);
                break;
        }
    }

    private async Task BeginAsync(Ready ready)
    {
        if (ready.Fresh) await to.There.BeginFreshAsync(ready, stopping);
        if (Interlocked.Exchange(ref begun, 1) == 0)
        {
            await guard.RunAsync(() => to.Registering.EnsureAsync(registerIn, stopping));
            if (!ready.Fresh) await to.There.BeginResumedAsync(stopping);
        }

        TakeUp();
        await to.Upkeep.RoundAsync(stopping);
        if (to.Rooms.Behind) await to.CatchingUp.RoomsAsync(stopping);
    }

    private async Task RoundAsync(CancellationToken ct)
    {
        TakeUp();
        await to.Upkeep.RoundAsync(ct);
        if (to.Rooms.Behind) await to.CatchingUp.RoomsAsync(ct);
        await to.There.HearAsync(ct);
    }
}
