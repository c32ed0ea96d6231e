using ShedBot.Coaching.Clubs;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>Makes the thread of a room, once, whatever happens in between: on a message where it can, since a message has but one thread; else it looks first whether it is there.</summary>
internal sealed class RoomThreads(Parts parts, Rooms rooms)
{
    /// <summary>Minutes of silence after which the platform takes a thread out of the list: a repair may take a weekend.</summary>
    private const int ArchiveAfterMinutes = 10080;

    /// <summary>Our clock and the platform's may differ by so much.</summary>
    private static readonly TimeSpan ClockSlack = TimeSpan.FromSeconds(30);

    /// <param name="openingWords">The member's own words, shown where the thread begins; empty for none.</param>
    /// <returns>The room with its thread; null when the room is no more.</returns>
    public async Task<Room?> EnsureAsync(Room room, string name, string openingWords, CancellationToken ct)
    {
        if (room.Thread is not null) return room;
        var channel = Snowflake.Read(room.Channel) ?? default;
        var source = Snowflake.Read(room.Source);
        var parent = await parts.Rest.GetChannelAsync(channel, ct);
        var member = Names.Person(room.Member);
        Channel thread;
        if (source is { } message)
        {
            thread = await parts.Rest.StartThreadFromMessageAsync(channel, message, Body(name), ct);
        }
        else if (room.Private && !ChannelTypes.IsForum(parent.Type))
        {
            thread = await AlreadyThereAsync(room, channel, name, ct)
                ?? await parts.Rest.StartThreadAsync(channel, Body(name) with { Type = ChannelTypes.PrivateThread, Invitable = false }, ct);
            await parts.Rest.AddThreadMemberAsync(thread.Id, member, ct);
        }
        else if (ChannelTypes.IsForum(parent.Type))
        {
            thread = await AlreadyThereAsync(room, channel, name, ct)
                ?? await parts.Rest.StartThreadAsync(channel, Body(name) with { AppliedTags = Tag(parent), Message = Starter(member, openingWords, null) }, ct);
        }
        else
        {
            var starter = await parts.Rest.PostMessageAsync(channel, Starter(member, openingWords, Names.Nonce(room.Place)), [], ct);
            thread = await parts.Rest.StartThreadFromMessageAsync(channel, starter.Id, Body(name), ct);
        }

        return await rooms.ChangeAsync(room.Place, r => r with { Thread = thread.Id.ToString(), Name = name, LastHeard = r.LastHeard ?? thread.Id.ToString() }, ct);
    }

    private static ThreadBody Body(string name) => new(name, AutoArchiveDuration: ArchiveAfterMinutes);

    /// <summary>A forum may take no post without a tag; one that only moderators may give is not ours to give.</summary>
    private static IReadOnlyList<Snowflake>? Tag(Channel forum) =>
        ((forum.Flags ?? 0) & Channel.RequireTagFlag) != 0 && forum.AvailableTags?.FirstOrDefault(t => !t.Moderated) is { } tag ? [tag.Id] : null;

    private static MessageBody Starter(Snowflake member, string words, string? nonce)
    {
        var asked = $"<@{member}> asked for help with a clutch.";
        var quoted = words.Length == 0 ? asked : $"{asked}\n> {Shortened(Markup.Safe(words.ReplaceLineEndings(" ")))}";
        return new MessageBody(Content: quoted, AllowedMentions: AllowedMentions.None, Nonce: nonce, EnforceNonce: nonce is null ? null : true);
    }

    /// <summary>After a crash the owner's name is not at hand, so the first part of the thread's name decides.</summary>
    private static bool IsNamed(Channel thread, string name) => thread.Name?.StartsWith(name, StringComparison.Ordinal) == true;

    private static string Shortened(string text)
    {
        const int most = 900;
        if (text.Length <= most) return text;
        var end = char.IsHighSurrogate(text[most - 1]) ? most - 1 : most;
        return text[..end] + " ...";
    }

    /// <summary>A thread that we made for this very room and could not write down before the process died.</summary>
    private async Task<Channel?> AlreadyThereAsync(Room room, Snowflake channel, string name, CancellationToken ct)
    {
        var since = Snowflake.First(room.OpenedAt - ClockSlack);
        var active = await parts.Rest.ActiveThreadsAsync(Names.Guild(room.Club), ct);
        foreach (var thread in active.Where(t => t.OwnerId == parts.Me.User && t.ParentId == channel && t.Id > since && IsNamed(t, name)).OrderBy(t => t.Id))
        {
            if (await rooms.FindByThreadAsync(thread.Id, ct) is null) return thread;
        }

        return null;
    }
}
