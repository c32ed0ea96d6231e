using System.Collections.Concurrent;
using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>
/// Says what was decided to be said. A press on the open question changes that message into the next question; words, and what closes a case,
/// get a message of their own. Everything here may be done twice without the member seeing it twice: a change of a message is the same when
/// it is made again, a new message carries a nonce, and where it is not known whether one went out the thread is looked at first.
/// </summary>
internal sealed class Delivery(Parts parts, Rooms rooms, RoomThreads threads, Panels panels)
{
    private const int MostUnsaid = 100, Gates = 256;

    /// <summary>A place that would not take what is to be said is left alone for so long, unless somebody does something there.</summary>
    private static readonly TimeSpan Rest = TimeSpan.FromMinutes(10);

    /// <summary>One speaks in a place at a time. Places share gates, so that these do not grow with the cases.</summary>
    private readonly ImmutableArray<SemaphoreSlim> gates = [.. Enumerable.Range(0, Gates).Select(_ => new SemaphoreSlim(1, 1))];

    /// <summary>Places in which a message may have gone out without our knowing.</summary>
    private readonly ConcurrentDictionary<string, bool> unsure = new(StringComparer.Ordinal);

    private readonly ConcurrentDictionary<string, DateTimeOffset> resting = new(StringComparer.Ordinal);

    /// <summary>Says all that waits in a place.</summary>
    /// <param name="live">The interaction that brought it about, if it is still waiting for its answer.</param>
    /// <param name="owner">What the club calls the member, where it is at hand.</param>
    /// <returns>What stood in the way, or null when all was said.</returns>
    public async Task<DiscordException?> SpeakAsync(string place, Acknowledgement? live, string? owner, CancellationToken ct)
    {
        var gate = GateOf(place);
        await gate.WaitAsync(ct);
        try
        {
            await SpeakHeldAsync(place, live, owner, ct);
            unsure.TryRemove(place, out _);
            resting.TryRemove(place, out _);
            return null;
        }
        catch (DiscordException e)
        {
            unsure[place] = true;
            resting[place] = parts.Clock.GetUtcNow();
            parts.Log.NotSaid(e.Trouble, e);
            return e;
        }
        catch
        {
            unsure[place] = true;
            throw;
        }
        finally
        {
            gate.Release();
        }
    }

    /// <summary>After a start: whatever waits may have gone out before the last process ended.</summary>
    public void DoubtAll(IEnumerable<string> places)
    {
        foreach (var place in places) unsure[place] = true;
    }

    /// <summary>Whether it is of use to try again by ourselves now.</summary>
    public bool IsDue(string place) => !resting.TryGetValue(place, out var since) || parts.Clock.GetUtcNow() - since >= Rest;

    /// <summary>Puts the open question anew at the end of the thread.</summary>
    /// <param name="asked">The event that asked for it: the same one again puts nothing more.</param>
    public async Task PutAnewAsync(Room room, Snowflake asked, CancellationToken ct)
    {
        var gate = GateOf(room.Place);
        await gate.WaitAsync(ct);
        try
        {
            if (await rooms.FindAsync(room.Place, ct) is not { Thread: { } at } now || Snowflake.Read(at) is not { } thread) return;
            if (await OpenQuestionAsync(now, ct) is not { } question) return;
            var drawn = CardDrawing.Draw([question.Card], question.Case.Id, Names.Mark(question.Case.Id, question.Case.Turn) | 8, parts.Pictures, Context(null, AllowedMentions.None, null));
            Snowflake last = default;
            for (var i = 0; i < drawn.Length; i++) last = await PostAsync(thread, drawn[i], Names.Nonce($"anew/{asked}/{i}"), ct);
            await rooms.ChangeAsync(room.Place, r => r with { Panel = last.ToString() }, ct);
            await panels.RetireAsync(thread, now.Panel, ct);
        }
        finally
        {
            gate.Release();
        }
    }

    /// <summary>A closed case's room is put away; one that was handed over stays, since people go on there.</summary>
    public async Task PutAwayAsync(Room room, Case @case, CancellationToken ct)
    {
        if (room.State != RoomState.Open) return;
        if (room.OwnThread && @case.Phase is CasePhase.Solved or CasePhase.Left && Snowflake.Read(room.Thread) is { } thread)
            await ArchiveAsync(thread, ct);
        await rooms.ChangeAsync(room.Place, r => r with { State = RoomState.Closed }, ct);
    }

    /// <summary>A thread that is archived takes no changes, not even this one: it was put away before, and we did not hear of it.</summary>
    private async Task ArchiveAsync(Snowflake thread, CancellationToken ct)
    {
        try
        {
            await parts.Rest.EditChannelAsync(thread, new ChannelEdit(Archived: true), ct);
        }
        catch (DiscordException e) when (e.Trouble == Trouble.Archived)
        {
            parts.Log.NotTidied(e.Trouble, e);
        }
    }

    private SemaphoreSlim GateOf(string place) => gates[(int)((uint)string.GetHashCode(place, StringComparison.Ordinal) % Gates)];

    private async Task SpeakHeldAsync(string place, Acknowledgement? live, string? owner, CancellationToken ct)
    {
        while (await parts.Store.UnsaidAsync(place, MostUnsaid, ct) is { IsEmpty: false } waiting)
        {
            ImmutableArray<OutboxMessage> turn = [.. waiting.TakeWhile(m => Names.TurnOf(m) == Names.TurnOf(waiting[0]))];
            var room = await rooms.FindAsync(place, ct);
            if (room is null or { State: RoomState.Gone } || await parts.Store.FindCaseAsync(turn[0].Case, ct) is not { } @case)
            {
                foreach (var message in turn) await parts.Store.MarkSaidAsync(message.Id, ct);
                continue;
            }

            try
            {
                await SayTurnAsync(room, @case, turn, last: turn.Length == waiting.Length, live, owner, ct);
            }
            catch (DiscordException e) when (e.Trouble == Trouble.Gone)
            {
                parts.Log.RoomGone(e);
                await rooms.ChangeAsync(place, r => r with { State = RoomState.Gone }, [.. waiting.Select(m => m.Id)], ct);
                return;
            }
        }

        if (await rooms.FindAsync(place, ct) is { State: RoomState.Open } after
            && await parts.Store.FindLastCaseAsync(after.Member, place, ct) is { IsClosed: true } closed)
        {
            await PutAwayAsync(after, closed, ct);
        }
    }

    private async Task SayTurnAsync(
        Room room, Case @case, ImmutableArray<OutboxMessage> turn, bool last, Acknowledgement? live, string? owner, CancellationToken ct)
    {
        var rules = (await parts.Coaches.OfAsync(@case.Member, ct)).Knowledge;
        var name = RoomName.Of(@case, await parts.Store.FindBikeAsync(@case.Bike, ct), owner, rules);
        var first = Names.TurnNumber(turn[0]) == 1;
        if (await threads.EnsureAsync(room, name, @case.OpeningWords, ct) is not { Thread: { } at } there || Snowflake.Read(at) is not { } thread) return;
        var closing = last && @case.IsClosed;
        var mark = Names.Mark(@case.Id, Names.TurnNumber(turn[0]));
        var drawn = CardDrawing.Draw([.. turn.Select(m => m.Card)], @case.Id, mark, parts.Pictures, await ContextAsync(there, @case, closing, first, turn, live, ct));
        var pressed = Names.PressedIn(turn[0].Answers);

        Snowflake panel;
        if (pressed is not null && pressed == there.Panel && !closing && Snowflake.Read(pressed) is { } message
            && await ChangeAsync(thread, message, drawn[0], live, ct))
        {
            panel = drawn.Length == 1 ? message : await PostAsync(thread, drawn[1..], Nonces(turn, 1), mark + 1, there.Place, ct);
            await rooms.ChangeAsync(room.Place, r => Heard(r, turn[0]) with { Panel = panel.ToString(), State = StateAfter(r, @case) }, [.. turn.Select(m => m.Id)], ct);
        }
        else
        {
            panel = await PostAsync(thread, drawn, Nonces(turn, 0), mark, there.Place, ct);
            await rooms.ChangeAsync(room.Place, r => Heard(r, turn[0]) with { Panel = panel.ToString(), State = StateAfter(r, @case) }, [.. turn.Select(m => m.Id)], ct);
            if (there.Panel != panel.ToString()) await panels.RetireAsync(thread, there.Panel, ct);
        }

        if (live is not null) await live.SettleAsync(ct);
        await RenameAsync(there, thread, name, ct);
    }

    /// <summary>A closed room whose case came back, or in which a new one began, is open again.</summary>
    private static RoomState StateAfter(Room room, Case @case) => @case.IsClosed ? room.State : RoomState.Open;

    /// <summary>While older words may still be unheard, newer ones must not hide them.</summary>
    private Room Heard(Room room, OutboxMessage message) =>
        !rooms.Behind && Names.SaidIn(message.Answers) is { } heard && (Snowflake.Read(room.LastHeard) is not { } before || before < heard)
            ? room with { LastHeard = heard.ToString() }
            : room;

    private static Func<int, string> Nonces(ImmutableArray<OutboxMessage> turn, int from) => i => Names.Nonce($"{Names.TurnOf(turn[0])}#{from + i}");

    private static DrawContext Context(string? lead, AllowedMentions mentions, string? footer) => new(WordsButton: true, lead, mentions, footer);

    private async Task<DrawContext> ContextAsync(
        Room room, Case @case, bool closing, bool first, ImmutableArray<OutboxMessage> turn, Acknowledgement? live, CancellationToken ct)
    {
        if (closing && @case.Phase is CasePhase.HandedOver or CasePhase.Stopped
            && await parts.Clubs.FindClubAsync(room.Club, ct) is { HelperRole: { } role } && Snowflake.Read(role) is { } helpers)
        {
            return Context($"<@&{helpers}>, please take over here: all that is known stands below.", AllowedMentions.Role(helpers), null);
        }

        if (first) return Context($"<@{Names.Person(room.Member)}>", AllowedMentions.User(Names.Person(room.Member)), Texts.WhatReachesMe);
        var picked = live is not null && turn[0].Answers == Names.PressEvent(live.Interaction.Id, live.Interaction.Message?.Id ?? default)
            ? Panels.LabelOf(live.Interaction) : null;
        return Context(picked is null ? null : $"-# Answered: {Markup.Safe(picked)}", AllowedMentions.None, null);
    }

    /// <returns>False when the message is gone: then a new one is due.</returns>
    private async Task<bool> ChangeAsync(Snowflake thread, Snowflake message, Drawn drawn, Acknowledgement? live, CancellationToken ct)
    {
        if (live?.Interaction.Message?.Id == message && await live.TryUpdateAsync(drawn, ct)) return true;
        try
        {
            await InOpenThreadAsync(thread, () => parts.Rest.EditMessageAsync(thread, message, drawn.Body, drawn.Files, ct), ct);
            return true;
        }
        catch (DiscordException e) when (e.Trouble == Trouble.MessageGone)
        {
            return false;
        }
    }

    private async Task<Snowflake> PostAsync(
        Snowflake thread, ImmutableArray<Drawn> drawn, Func<int, string> nonce, int mark, string place, CancellationToken ct)
    {
        var look = unsure.ContainsKey(place);
        Snowflake posted = default;
        for (var i = 0; i < drawn.Length; i++)
        {
            posted = look && await panels.FindAsync(thread, mark + i, ct) is { } there
                ? there.Id
                : await PostAsync(thread, drawn[i], nonce(i), ct);
        }

        return posted;
    }

    private async Task<Snowflake> PostAsync(Snowflake thread, Drawn drawn, string nonce, CancellationToken ct)
    {
        var body = drawn.Body with { Nonce = nonce, EnforceNonce = true };
        return (await InOpenThreadAsync(thread, () => PostTakenAsync(thread, body, drawn.Files, ct), ct)).Id;
    }

    /// <summary>A place that takes no pictures takes the words.</summary>
    private async Task<Message> PostTakenAsync(Snowflake thread, MessageBody body, IReadOnlyList<Upload> files, CancellationToken ct)
    {
        try
        {
            return await parts.Rest.PostMessageAsync(thread, body, files, ct);
        }
        catch (DiscordException e) when (e.Trouble == Trouble.ContentRefused && files.Count > 0)
        {
            return await parts.Rest.PostMessageAsync(thread, Panels.WithoutPictures(body), [], ct);
        }
    }

    /// <summary>What an archived thread does not take, it takes once it was opened.</summary>
    private async Task<Message> InOpenThreadAsync(Snowflake thread, Func<Task<Message>> act, CancellationToken ct)
    {
        try
        {
            return await act();
        }
        catch (DiscordException e) when (e.Trouble == Trouble.Archived)
        {
            await parts.Rest.EditChannelAsync(thread, new ChannelEdit(Archived: false), ct);
            return await act();
        }
    }

    /// <summary>Once the trouble has a name the thread gets it, once. Only for looks: when it fails nothing else does.</summary>
    private async Task RenameAsync(Room room, Snowflake thread, string name, CancellationToken ct)
    {
        if (!room.OwnThread || !room.Name.StartsWith(RoomName.Unknown, StringComparison.Ordinal) || name.StartsWith(RoomName.Unknown, StringComparison.Ordinal)) return;
        try
        {
            await parts.Rest.EditChannelAsync(thread, new ChannelEdit(Name: name), ct);
        }
        catch (DiscordException e)
        {
            parts.Log.NotTidied(e.Trouble, e);
        }

        await rooms.ChangeAsync(room.Place, r => r with { Name = name }, ct);
    }

    private async Task<(Coaching.Cards.Card Card, Case Case)?> OpenQuestionAsync(Room room, CancellationToken ct)
    {
        if (await parts.Store.FindLastCaseAsync(room.Member, room.Place, ct) is not { } @case) return null;
        var card = await new CaseEyes(parts).OpenQuestionAsync(@case, ct);
        return card is null ? null : (card, @case);
    }
}
