using System.Collections.Concurrent;
using System.Collections.Immutable;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>The rooms of open cases: finds and changes them, and knows at a glance whether a channel is one of them.</summary>
internal sealed class Rooms(IClubStore store)
{
    private const int MostTries = 5;

    /// <summary>Threads of open rooms, and whether the member still may have to be told which words can be read there.</summary>
    private readonly ConcurrentDictionary<ulong, bool> threads = new();

    private int missed = 1, caughtUp;

    /// <summary>Words may have been written that were not told to us; so it is at a start, and when a session is lost.</summary>
    public bool Behind => Missed != Volatile.Read(ref caughtUp);

    /// <summary>How often that was so.</summary>
    public int Missed => Volatile.Read(ref missed);

    public void FallBehind() => Interlocked.Increment(ref missed);

    public void CatchUp(int missedBefore) => Volatile.Write(ref caughtUp, missedBefore);

    public bool IsRoom(Snowflake channel) => threads.ContainsKey(channel.Value);

    /// <summary>Whether a message here that does not speak to us still matters.</summary>
    public bool Unhinted(Snowflake channel) => threads.GetValueOrDefault(channel.Value);

    public async Task LoadAsync(CancellationToken ct)
    {
        foreach (var room in await store.OpenRoomsAsync(ct)) Note(room);
    }

    public Task<Room?> FindAsync(string place, CancellationToken ct) => store.FindRoomAsync(place, ct);

    public Task<Room?> FindByThreadAsync(Snowflake thread, CancellationToken ct) => store.FindRoomByThreadAsync(thread.ToString(), ct);

    /// <summary>The same event can be met twice at once: told, and found while catching up. The first to come makes the room.</summary>
    /// <returns>The room that is there now.</returns>
    public async Task<Room> AddAsync(Room room, CancellationToken ct)
    {
        var added = room with { Version = 1 };
        try
        {
            await store.SaveRoomAsync(added, [], ct);
        }
        catch (StaleSaveException) when (!ct.IsCancellationRequested)
        {
            if (await store.FindRoomAsync(room.Place, ct) is not { } there) throw;
            added = there;
        }

        Note(added);
        return added;
    }

    public Task<Room?> ChangeAsync(string place, Func<Room, Room> change, CancellationToken ct) => ChangeAsync(place, change, [], ct);

    /// <summary>Changes a room as it is by then, and marks as said what was said in it, as a whole or not at all.</summary>
    /// <returns>The room after; null when it is no more.</returns>
    public async Task<Room?> ChangeAsync(string place, Func<Room, Room> change, ImmutableArray<string> said, CancellationToken ct)
    {
        for (var tries = 1; ; tries++)
        {
            if (await store.FindRoomAsync(place, ct) is not { } before) return null;
            var after = change(before) with { Version = before.Version + 1 };
            try
            {
                await store.SaveRoomAsync(after, said, ct);
                Note(after);
                return after;
            }
            catch (StaleSaveException) when (tries < MostTries)
            {
                // Somebody else changed the room since it was read: the change is made to the room as it is now.
            }
        }
    }

    private void Note(Room room)
    {
        if (Snowflake.Read(room.Thread) is not { } thread) return;
        if (room.State == RoomState.Gone) threads.TryRemove(thread.Value, out _);
        else threads[thread.Value] = !room.Hinted;
    }
}
