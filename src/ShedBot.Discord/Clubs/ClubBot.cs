using System.Collections.Concurrent;
using ShedBot.Coaching.Clubs;
using ShedBot.Discord.Drawing;
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
    private readonly Rooms rooms;
    private readonly Pressing pressing;
    private readonly Saying saying;
    private readonly Commanding commanding;
    private readonly Logbooks logbooks;
    private readonly BikeSheets sheets;
    private readonly Offers offers;
    private readonly Reminders reminders;
    private readonly Reminding reminding;
    private readonly ReminderPresses reminderPresses;
    private readonly Beside beside;
    private readonly Teaching teaching;
    private readonly TeachingOffers teachingOffers;
    private readonly WordDelivery words;
    private readonly LearningKeeper learning;
    private readonly Leaving leaving;
    private readonly SetUp setUp;
    private readonly RightsCheck rights;
    private readonly CatchingUp catchingUp;
    private readonly Upkeep upkeep;
    private readonly Registering registering;
    private readonly Arrivals arrivals;
    private readonly Snowflake registerIn;
    private readonly TimeSpan keepAfterLeaving;
    private readonly Lanes lanes = new();
    private readonly CancellationToken stopping;

    /// <summary>Clubs of a session that was not resumed: what was written there meanwhile was not told to us.</summary>
    private readonly ConcurrentDictionary<ulong, bool> unheard = new();

    private int begun;

    /// <param name="registerIn">The one club in which commands are registered while trying things out; none: in all.</param>
    /// <param name="keepAfterLeaving">How long a club's data is kept once it has sent us away.</param>
    /// <param name="restored">The data file may be older than the chat.</param>
    /// <param name="trialTold">How often it is told how far a trial of rules is.</param>
    /// <param name="stopping">Ends all work that is going on.</param>
    public ClubBot(Parts parts, Snowflake registerIn, TimeSpan keepAfterLeaving, bool restored, TimeSpan trialTold, CancellationToken stopping)
    {
        (this.parts, this.registerIn, this.keepAfterLeaving, this.stopping) = (parts, registerIn, keepAfterLeaving, stopping);
        rooms = new Rooms(parts.Clubs);
        var panels = new Panels(parts);
        var eyes = new CaseEyes(parts);
        rights = new RightsCheck(parts);
        var delivery = new Delivery(parts, rooms, new RoomThreads(parts, rooms), panels);
        var turns = new Turns(parts, delivery, rights);
        var starting = new Starting(parts, rooms, turns);
        setUp = new SetUp(parts, rights);
        learning = new LearningKeeper(parts);
        leaving = new Leaving(parts, learning);
        logbooks = new Logbooks(parts);
        sheets = new BikeSheets(parts, logbooks);
        offers = new Offers(parts, starting);
        var direct = new DirectChannels(parts);
        var reminderDelivery = new ReminderDelivery(parts, direct, panels);
        reminders = new Reminders(parts);
        reminding = new Reminding(parts, reminderDelivery, restored ? new Recalling(parts, direct, panels) : null);
        reminderPresses = new ReminderPresses(parts, direct, new ShownTrouble(parts, starting), logbooks);
        saying = new Saying(parts, rooms, turns, starting);
        pressing = new Pressing(parts, rooms, turns, panels, eyes);
        commanding = new Commanding(parts, rooms, starting, turns, delivery, eyes, logbooks, sheets, reminders);
        catchingUp = new CatchingUp(parts, rooms, saying, setUp);
        words = new WordDelivery(parts, direct, panels);
        beside = new Beside(parts, words);
        arrivals = new Arrivals(parts);
        var show = new TeachingShow(parts);
        teaching = new Teaching(parts, new TeachingTrials(parts, show, arrivals, Aside, trialTold), show, words, learning, Aside);
        teachingOffers = new TeachingOffers(parts);
        upkeep = new Upkeep(parts, rooms, delivery, reminderDelivery, words, keepAfterLeaving);
        registering = new Registering(parts);
    }

    /// <summary>Work that is going on or waiting.</summary>
    public int Busy => lanes.Busy;

    /// <summary>To be awaited before the first event comes in.</summary>
    public async Task PrepareAsync(CancellationToken ct)
    {
        var waiting = await upkeep.BeginAsync(ct);
        await arrivals.LoadAsync(ct);
        parts.Log.Began((await parts.Clubs.ClubsAsync(ct)).Length, waiting);
    }

    /// <summary>Looks after what nobody asks for, until it is called off.</summary>
    public Task KeepUpAsync(CancellationToken ct) => Task.WhenAll(RepeatAsync(RoundAsync, ct), RepeatAsync(reminding.RoundAsync, ct), RepeatAsync(words.RoundAsync, ct), RepeatAsync(learning.RoundAsync, ct));

    private async Task RepeatAsync(Func<CancellationToken, Task> round, CancellationToken ct)
    {
        using var timer = new PeriodicTimer(Upkeep.Every, parts.Clock);
        while (await timer.WaitForNextTickAsync(ct)) await GuardAsync(() => Volatile.Read(ref begun) == 0 ? Task.CompletedTask : round(ct));
    }

    /// <summary>Waits until all that came in was dealt with.</summary>
    public Task DrainAsync() => lanes.DrainAsync();

    public bool Wants(in MessagePeek message) =>
        !message.FromBot && (message.MentionsUs || message.Guild.IsNone || rooms.Unhinted(message.Channel));

    public void Take(GatewayEvent happened, Action done)
    {
        if (happened is Ready ready)
        {
            parts.Me.Set(ready.Me.Id, ready.Application);
            if (ready.Fresh) rooms.FallBehind();
        }

        var lane = LaneOf(happened);
        // An interaction's three seconds run while its lane is busy with something else, so its clock is started here.
        var live = happened is InteractionCame came ? Acknowledge(came) : null;
        lanes.Post(lane, async () =>
        {
            await GuardAsync(() => HandleAsync(happened, live));
            if (live is not null) await live.DisposeAsync();
            if (stopping.IsCancellationRequested) return;
            if (live is { Kept: true }) await GuardAsync(() => arrivals.DropAsync((InteractionCame)happened, stopping));
            done();
        });
    }

    /// <summary>Does work that takes its time in a lane of its own; it is waited for like all the rest.</summary>
    /// <param name="of">What it came of: no other lane is named so.</param>
    private void Aside(Snowflake of, Func<Task> work) => lanes.Post(of.Value, () => GuardAsync(work));

    /// <summary>Deals with what an earlier process has told members to wait for.</summary>
    private void TakeUp()
    {
        foreach (var came in arrivals.TakeLeft())
        {
            lanes.Post(LaneOf(came), () => GuardAsync(async () =>
            {
                await using var live = Acknowledge(came);
                try
                {
                    await InteractAsync(came, live);
                }
                catch (DiscordException e) when (e.Trouble == Trouble.Busy)
                {
                    parts.Log.NotSaid(e.Trouble, e);
                    arrivals.PutBack(came);
                    return;
                }

                await arrivals.DropAsync(came, stopping);
            }));
        }
    }

    private ulong LaneOf(GatewayEvent happened) => happened switch
    {
        InteractionCame { Interaction: var i } => rooms.IsRoom(i.ChannelId) ? i.ChannelId.Value : i.Who?.Id.Value ?? i.Id.Value,
        MessageCame { Message: var m } => rooms.IsRoom(m.ChannelId) ? m.ChannelId.Value : m.Author?.Id.Value ?? m.Id.Value,
        GuildThere { Guild.Id: var id } => id.Value,
        GuildGone { Guild: var id } => id.Value,
        ThreadGone { Thread: var id } => id.Value,
        ChannelGone { Guild: var id } => id.Value,
        MessageGone { Channel: var id } => id.Value,
        _ => 0,
    };

    private Acknowledgement Acknowledge(InteractionCame came)
    {
        var id = CustomId.Read(came.Interaction.Data?.CustomId);
        var form = came.Interaction.Type == InteractionTypes.Autocomplete
            || came.Interaction.Type == InteractionTypes.Component && TeachingIds.OpensForm(came.Interaction.Data)
            || came.Interaction.Type == InteractionTypes.Component && id is { } pressed && (pressed.Verb is CustomId.Words or BikeSheets.Open || ReminderIds.OpensForm(pressed))
            || came.Interaction.Type == InteractionTypes.Command && Commanding.AnswersWithForm(came.Interaction);
        return new Acknowledgement(
            parts.Rest, came, parts.Clock, (_, e) => parts.Log.NotAnswered(e.Trouble, e), ct => arrivals.KeepAsync(came, ct), form);
    }

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
                    await InteractAsync(came, live!);
                }
                catch (Exception e) when (e is not OperationCanceledException)
                {
                    await live!.TellAsync(Texts.Draw(Texts.CannotNow), stopping);
                    throw;
                }

                break;
            case MessageCame came:
                await saying.HandleAsync(came.Message, came.At, stopping);
                break;
            case GuildThere there:
                await ThereAsync(there.Guild);
                break;
            case GuildGone { Outage: false } gone:
                await SentAwayAsync(Names.Club(gone.Guild));
                break;
            case ThreadGone gone:
                if (await rooms.FindByThreadAsync(gone.Thread, stopping) is { } room)
                    await rooms.ChangeAsync(room.Place, r => r with { State = RoomState.Gone }, stopping);
                break;
            case MessageGone gone:
                if (await rooms.FindByThreadAsync(gone.Channel, stopping) is { Panel: { } panel } at && gone.Messages.Any(m => m.ToString() == panel))
                    await rooms.ChangeAsync(at.Place, r => r.Panel == panel ? r with { Panel = null } : r, stopping);
                break;
        }
    }

    private async Task InteractAsync(InteractionCame came, Acknowledgement live)
    {
        var used = came.Interaction;
        switch (used.Type)
        {
            case InteractionTypes.Command when TeachingCommands.Has(used.Data?.Name):
                await teaching.HandleAsync(came, live, stopping);
                await beside.AfterAsync(came, noted: false, mayShow: true, live, stopping);
                break;
            case InteractionTypes.Autocomplete when used.Data is { Name: TeachingCommands.Rules }:
                await teachingOffers.SuggestAsync(used, live, stopping);
                break;
            case InteractionTypes.Component or InteractionTypes.ModalSubmit when TeachingIds.Is(used.Data?.CustomId):
                await teaching.UseAsync(came, live, stopping);
                await beside.AfterAsync(came, noted: false, mayShow: false, live, stopping);
                break;
            case InteractionTypes.Command when used.Data is { Type: CommandTypes.Message }:
                await offers.CoachThisAsync(came, live, stopping);
                break;
            case InteractionTypes.Command when used.Data is { Name: ClubCommands.Club }:
                await setUp.HandleAsync(used, live, stopping);
                break;
            case InteractionTypes.Command when used.Data is not null:
                var noted = await commanding.HandleAsync(came, live, stopping);
                await beside.AfterAsync(came, noted, !Commanding.AnswersWithForm(used), live, stopping);
                break;
            case InteractionTypes.Autocomplete when used.Data is { Name: ClubCommands.Reminders }:
                await reminders.SuggestAsync(used, live, stopping);
                break;
            case InteractionTypes.Autocomplete:
                await logbooks.SuggestAsync(used, live, stopping);
                break;
            case InteractionTypes.Component or InteractionTypes.ModalSubmit:
                await UseAsync(came, live);
                await beside.AfterAsync(came, noted: false, mayShow: false, live, stopping);
                break;
        }
    }

    private async Task UseAsync(InteractionCame came, Acknowledgement live)
    {
        switch (CustomId.Read(came.Interaction.Data?.CustomId))
        {
            case { Verb: Leaving.Verb }:
                await leaving.ForgetAsync(came.Interaction, live, stopping);
                break;
            case { } reminder when ReminderIds.Is(reminder.Verb):
                await reminderPresses.HandleAsync(came, reminder, live, stopping);
                break;
            case { Verb: Logbooks.Verb } garage:
                await logbooks.AnswerAsync(came, garage, live, stopping);
                break;
            case { } sheet when BikeSheets.Is(sheet.Verb):
                await sheets.HandleAsync(came, sheet, live, stopping);
                break;
            case { Verb: Offers.Verb } offer:
                if (!await offers.AcceptAsync(came, offer.Rest, live, stopping)) await live.ShowFormAsync(Forms.Trouble(false), stopping);
                break;
            case { Verb: CustomId.Form, Case.Value: Forms.NoCase } form:
                var (@private, bike) = Forms.TroubleOf(form);
                await commanding.TroubleAsync(came, Forms.WordsOf(came.Interaction) ?? "", @private, bike, live, stopping);
                break;
            case { } known:
                await pressing.HandleAsync(came, known, live, stopping);
                break;
            default:
                await live.TellAsync(Texts.Draw(Texts.NotMineAnyMore), stopping);
                break;
        }
    }

    private async Task BeginAsync(Ready ready)
    {
        if (ready.Fresh)
        {
            foreach (var guild in ready.Guilds) unheard[guild.Value] = true;
            await SentAwayMeanwhileAsync(ready);
        }

        if (Interlocked.Exchange(ref begun, 1) == 0)
        {
            await GuardAsync(() => registering.EnsureAsync(registerIn, stopping));
            // A session that is resumed does not tell of its clubs again, and what we may do there can have changed meanwhile.
            if (!ready.Fresh)
            {
                foreach (var club in await parts.Clubs.ClubsAsync(stopping))
                {
                    await CheckAsync(club);
                    // The process before may have lost a session and not have caught up.
                    unheard[Names.Guild(club.Id).Value] = true;
                    await HearHelpChannelAsync(club);
                }
            }
        }

        TakeUp();
        await upkeep.RoundAsync(stopping);
        if (rooms.Behind) await catchingUp.RoomsAsync(stopping);
    }

    private async Task RoundAsync(CancellationToken ct)
    {
        TakeUp();
        await upkeep.RoundAsync(ct);
        if (rooms.Behind) await catchingUp.RoomsAsync(ct);
        if (unheard.IsEmpty) return;
        foreach (var club in await parts.Clubs.ClubsAsync(ct)) await HearHelpChannelAsync(club);
    }

    private async Task HearHelpChannelAsync(Coaching.Clubs.Club club)
    {
        var guild = Names.Guild(club.Id).Value;
        if (club.LeftAt is not null || !unheard.TryRemove(guild, out _)) return;
        var heard = false;
        try
        {
            heard = await catchingUp.HelpChannelAsync(club, stopping);
        }
        finally
        {
            if (!heard) unheard[guild] = true;
        }
    }

    /// <summary>A club that sends us away while nobody listens tells us by not being in the list any more.</summary>
    private async Task SentAwayMeanwhileAsync(Ready ready)
    {
        foreach (var club in await parts.Clubs.ClubsAsync(stopping))
        {
            var guild = Names.Guild(club.Id);
            if (club.LeftAt is null && (int)((guild.Value >> 22) % (ulong)ready.Shards) == ready.Shard && !ready.Guilds.Contains(guild)) await SentAwayAsync(club.Id);
        }
    }

    private async Task SentAwayAsync(ClubId club)
    {
        await setUp.ChangeAsync(club, c => c with { LeftAt = parts.Clock.GetUtcNow() }, save: true, stopping);
        parts.Log.SentAway(club.Value, keepAfterLeaving.TotalDays);
    }

    private async Task ThereAsync(Guild guild)
    {
        if (guild.Unavailable == true) return;
        var id = Names.Club(guild.Id);
        var known = await parts.Clubs.FindClubAsync(id, stopping);
        if (known is null or { LeftAt: not null }) known = await setUp.ChangeAsync(id, c => c with { LeftAt = null }, save: true, stopping);
        await CheckAsync(known);
        await HearHelpChannelAsync(known);
    }

    private async Task CheckAsync(Coaching.Clubs.Club club)
    {
        if (club.LeftAt is not null) return;
        if (club.HelpChannel is not { } help)
        {
            parts.Log.NotSetUp(club.Id.Value);
            return;
        }

        var missing = await rights.MissingAsync(club.Id, help, stopping);
        if (!missing.IsEmpty) parts.Log.Lacks(club.Id.Value, string.Join(", ", missing));
    }

    /// <summary>One event that goes wrong must not take others with it.</summary>
    private async Task GuardAsync(Func<Task> work)
    {
        try
        {
            await work();
        }
        catch (OperationCanceledException) when (stopping.IsCancellationRequested)
        {
            // Not dealt with to the end: it comes again when the session is resumed, and what was kept of it counts once.
        }
        catch (Exception e) when (stopping.IsCancellationRequested)
        {
            parts.Log.CutOff(e);
        }
        catch (Exception e)
        {
            parts.Log.Failed(e);
        }
    }
}
