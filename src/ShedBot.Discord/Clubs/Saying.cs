using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Turns;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>Somebody wrote a message that mentions us, replies to us, or stands in a room. Without leave to read along, the words of all others come in empty.</summary>
internal sealed class Saying(Parts parts, Rooms rooms, Turns turns, Starting starting)
{
    private const int Ordinary = 0, Reply = 19;

    public async Task HandleAsync(Message message, DateTimeOffset cameIn, CancellationToken ct)
    {
        if (message.Author is not { IsBot: false } author || !message.WebhookId.IsNone || message.Type is not (Ordinary or Reply)) return;
        if (message.GuildId.IsNone)
        {
            await ReplyAsync(message, [Texts.OnlyInClub], null, ct);
            return;
        }

        var words = WordsOf(message);
        if (await rooms.FindByThreadAsync(message.ChannelId, ct) is { State: not RoomState.Gone } room)
            await InRoomAsync(message, room, author, words, cameIn, ct);
        else if (Mentioned(message))
            await InChannelAsync(message, author, words, cameIn, ct);
    }

    /// <summary>What was written, without our name in it.</summary>
    private string WordsOf(Message message) => (message.Content ?? "")
        .Replace(parts.Me.Mention, " ", StringComparison.Ordinal)
        .Replace($"<@!{parts.Me.User}>", " ", StringComparison.Ordinal)
        .Trim();

    private bool Mentioned(Message message) => message.Mentions?.Any(m => m.Id == parts.Me.User) == true;

    private async Task InRoomAsync(Message message, Room room, User author, string words, DateTimeOffset cameIn, CancellationToken ct)
    {
        if (!room.MayAnswer(room.Club.Member(author.Id.ToString())))
        {
            // Who replies to one of our messages is commenting; who calls us by name wants something.
            if (message.Content?.Contains(parts.Me.Mention, StringComparison.Ordinal) == true)
                await ReplyAsync(message, [Texts.NotYours], null, ct);
            return;
        }

        if (words.Length > 0 || Mentioned(message))
        {
            await turns.TakeAsync(room, new MemberSaid(Names.SaidEvent(message.Id), words), null, null, cameIn, ct);
        }
        else if (!room.Hinted)
        {
            await rooms.ChangeAsync(room.Place, r => r with { Hinted = true }, ct);
            await ReplyAsync(message, [Texts.Plain("I cannot read that", Texts.WhatReachesMe)], null, ct);
        }
    }

    private async Task InChannelAsync(Message message, User author, string words, DateTimeOffset cameIn, CancellationToken ct)
    {
        var club = Names.Club(message.GuildId);
        if (await parts.Clubs.FindClubAsync(club, ct) is not { HelpChannel: { } help })
        {
            await ReplyAsync(message, [Texts.NoHelpChannel], null, ct);
            return;
        }

        var inHelpChannel = message.ChannelId.ToString() == help;
        var thread = inHelpChannel ? default : await ThreadUnderAsync(message.ChannelId, help, ct);
        if (!inHelpChannel && thread.IsNone)
        {
            await ReplyAsync(message, [Texts.HelpIsThere], $"<#{help}>", ct);
            return;
        }

        if (words.Length == 0)
        {
            await ReplyAsync(message, [Texts.TellMeMore], null, ct);
            return;
        }

        var wish = new StartWish(
            club, author.Id, People.NameOf(message.Member, author), message.Id, words, Snowflake.Read(help) ?? default, thread,
            Source: inHelpChannel ? message.Id : default, Private: false, cameIn);
        var started = await starting.StartAsync(wish, null, ct);
        if (!started.Instead.IsEmpty) await ReplyAsync(message, started.Instead, started.Link, ct);
    }

    /// <returns>The thread, when this channel is one in the help channel; else none.</returns>
    private async Task<Snowflake> ThreadUnderAsync(Snowflake channel, string help, CancellationToken ct)
    {
        var here = await parts.Rest.GetChannelAsync(channel, ct);
        return ChannelTypes.IsThread(here.Type) && here.ParentId.ToString() == help ? channel : default;
    }

    /// <summary>A reply that asks nothing; the nonce keeps it from being said twice.</summary>
    private async Task ReplyAsync(Message to, IReadOnlyList<Card> cards, string? link, CancellationToken ct)
    {
        var reply = new MessageReference(to.Id, FailIfNotExists: false);
        foreach (var (card, i) in cards.Select((c, i) => (c, i)))
        {
            var drawn = Texts.Draw(card, link);
            var body = drawn.Body with { MessageReference = reply, Nonce = Names.Nonce($"reply/{to.Id}/{i}"), EnforceNonce = true };
            try
            {
                await parts.Rest.PostMessageAsync(to.ChannelId, body, drawn.Files, ct);
            }
            catch (DiscordException e)
            {
                parts.Log.NotTidied(e.Trouble, e);
                return;
            }
        }
    }
}
