using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Wire;
using Channel = ShedBot.DiscordStandIn.World.Channel;

namespace ShedBot.Discord.Tests.Campaign;

/// <summary>What must be so once the weather is fair again and all is said. Compares what is kept with what the platform shows.</summary>
internal sealed class Inspection(CampaignClub club)
{
    /// <summary>So many events a case remembers; no rider here has more.</summary>
    private const int Remembered = 20;

    private readonly List<ulong> threads = [];

    public List<string> Lost { get; } = [];

    public List<string> Doubled { get; } = [];

    public List<string> Mismatched { get; } = [];

    public int Turns { get; private set; }

    /// <summary>Announced to the platform, then neither counted nor told; the panel stood unchanged.</summary>
    public int Silent { get; private set; }

    public bool Clean => Lost.Count + Doubled.Count + Mismatched.Count == 0;

    public static async Task<Inspection> OfAsync(CampaignClub club, IReadOnlyList<Rider> riders, ulong since)
    {
        var seen = new Inspection(club);
        foreach (var rider in riders) await seen.RiderAsync(rider);
        await seen.ThreadsAsync(since);
        seen.Repeated(seen.threads, "rooms of one thread");
        return seen;
    }

    private async Task RiderAsync(Rider rider)
    {
        var member = new ClubId(club.Guild.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)).Member(rider.Who.Id.ToString(System.Globalization.CultureInfo.InvariantCulture));
        var cases = await club.Store.CasesOfAsync(member, 100, default);
        var handled = cases.SelectMany(c => c.Handled).GroupBy(e => e).ToDictionary(g => g.Key, g => g.Count());
        Turns += cases.Sum(c => c.Turn);
        foreach (var done in rider.Done)
        {
            var times = handled.GetValueOrDefault(done.Event);
            if (times > 1) Doubled.Add($"{done.What} {done.Event} counted {times} times");
            if (times > 0) continue;
            if (await done.MustCountAsync()) Lost.Add($"{done.What} {done.Event} of {rider.Who.Id} was taken and is not kept");
            else if (await done.WasOnlyAnnouncedAsync()) Silent++;
        }

        foreach (var odd in handled.Keys.Except(rider.Done.Select(d => d.Event))) Mismatched.Add($"{odd} of {rider.Who.Id} was never done");
        foreach (var @case in cases.Where(c => c.Handled.Length != Math.Min(c.Turn, Remembered))) Mismatched.Add($"case {@case.Id} has {@case.Turn} turns of {@case.Handled.Length} events");
        foreach (var room in await club.Store.RoomsOfAsync(member, 100, default)) await RoomAsync(room);
    }

    private async Task RoomAsync(Room room)
    {
        if (await club.Store.FindLastCaseAsync(room.Member, room.Place, default) is not { } @case) return;
        if (Snowflake.Read(room.Thread) is not { } id || club.Platform.ChannelOf(id.Value) is not { } thread)
        {
            Mismatched.Add($"room {room.Place} has no thread");
            return;
        }

        threads.Add(thread.Id);
        Shown(room, @case, thread);
        var ours = Panels.Ours(club, thread);
        Repeated(ours.SelectMany(Panels.Marks), $"mark in {thread.Id}");
        Repeated(ours.Select(m => m.Nonce).OfType<string>(), $"nonce in {thread.Id}");
    }

    private void Shown(Room room, Case @case, Channel thread)
    {
        if (@case.IsClosed)
        {
            if (room.State == RoomState.Open) Mismatched.Add($"case {@case.Id} is closed, its room {room.Place} is not");
            return;
        }

        if (@case.Open.Kind == AskKind.None) return;
        var panel = Panels.Last(club, thread);
        if (@case.Open.Kind == AskKind.Trouble)
        {
            // It has no answers to pick from, only the form for one's own words, which names the case.
            if (panel?.Usable.Any(c => CustomId.Read(c.CustomId) is { Verb: CustomId.Words } id && id.Case == @case.Id) != true)
                Mismatched.Add($"case {@case.Id} asks for the trouble, thread {thread.Id} does not");
            return;
        }

        var asked = panel is not null ? Panels.Asks(panel) : null;
        if (asked != (@case.Id.Value, @case.Open.Serial)) Mismatched.Add($"case {@case.Id} asks {@case.Open.Serial} ({@case.Open.Kind}), thread {thread.Id} shows {asked}");
    }

    private async Task ThreadsAsync(ulong since)
    {
        var rooms = new List<string>();
        foreach (var thread in club.Platform.Threads(club.Help).Where(t => t.Id > since))
        {
            if (await club.Store.FindRoomByThreadAsync(new Snowflake(thread.Id).ToString(), default) is { } room) rooms.Add(room.Place);
            else Doubled.Add($"thread {thread.Id} belongs to no room");
        }

        Repeated(rooms, "threads of one room");
        var ours = Panels.Ours(club, club.Help).Where(m => m.Id > since).ToImmutableArray();
        Repeated(ours.Select(m => m.Nonce).OfType<string>(), "nonce in the help channel");
        foreach (var starter in ours.Where(m => m.Words.Contains("asked for help", StringComparison.Ordinal) && club.Platform.ChannelOf(m.Id) is null))
            Doubled.Add($"message {starter.Id} has no thread");
    }

    private void Repeated<T>(IEnumerable<T> all, string what)
    {
        foreach (var twice in all.GroupBy(x => x).Where(g => g.Count() > 1)) Doubled.Add($"{what}: {twice.Key} {twice.Count()} times");
    }
}
