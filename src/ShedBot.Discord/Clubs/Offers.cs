using System.Collections.Concurrent;
using ShedBot.Coaching.Cases;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>
/// "Coach this" on a message. On one's own it begins a case. On somebody else's it only offers: nobody is coached, and nothing is kept of them, before
/// they said yes. Their words are remembered for a while and not written down; when they are forgotten by then, a form asks for them.
/// </summary>
internal sealed class Offers(Parts parts, Starting starting)
{
    public const string Verb = "offer";

    private const int MostRemembered = 500;

    private readonly ConcurrentDictionary<ulong, string> remembered = new();

    public async Task CoachThisAsync(InteractionCame came, Acknowledgement live, CancellationToken ct)
    {
        var used = came.Interaction;
        var target = used.Data?.Resolved?.Messages?.GetValueOrDefault(used.Data.TargetId.ToString());
        if (used.Who is not { } who || target?.Author is not { } author || author.IsBot || used.GuildId.IsNone)
        {
            await live.TellAsync(Texts.Draw(Texts.NotAnOffer), ct);
            return;
        }

        await live.AnnounceAsync(ct);
        var club = Names.Club(used.GuildId);
        if (await parts.Clubs.FindClubAsync(club, ct) is not { HelpChannel: { } help } || Snowflake.Read(help) is not { } channel)
        {
            await live.TellAsync(Texts.Draw(Texts.NoHelpChannel), ct);
            return;
        }

        if (author.Id != who.Id)
        {
            await OfferAsync(used, target, author.Id, live, ct);
            return;
        }

        var (thread, source) = Where(used, target, channel);
        await BeginAsync(new StartWish(club, who.Id, People.NameOf(used.Member, who), used.Id, target.Content ?? "", channel, thread, source, false, came.At), live, ct);
    }

    /// <summary>The one to whom it was offered said yes. Anybody can press; nobody else counts.</summary>
    /// <returns>False when their words are not remembered any more: a form is to ask for them.</returns>
    public async Task<bool> AcceptAsync(InteractionCame came, string rest, Acknowledgement live, CancellationToken ct)
    {
        var press = came.Interaction;
        if (press.Who is not { } who || rest != who.Id.ToString())
        {
            await live.TellAsync(Texts.Draw(Texts.NotYourOffer), ct);
            return true;
        }

        if (press.Message is not { } offer || !remembered.TryGetValue(offer.Id.Value, out var words)) return false;
        var club = Names.Club(press.GuildId);
        if (await parts.Clubs.FindClubAsync(club, ct) is not { HelpChannel: { } help } || Snowflake.Read(help) is not { } channel)
        {
            await live.TellAsync(Texts.Draw(Texts.NoHelpChannel), ct);
            return true;
        }

        var source = offer.MessageReference?.MessageId ?? default;
        var (thread, from) = Where(press, new Message(source), channel);
        await BeginAsync(new StartWish(club, who.Id, People.NameOf(press.Member, who), press.Id, words, channel, thread, from, false, came.At), live, ct);
        return true;
    }

    private async Task BeginAsync(StartWish wish, Acknowledgement live, CancellationToken ct)
    {
        var started = await starting.StartAsync(wish, live, ct);
        foreach (var card in started.Instead) await live.TellAsync(Texts.Draw(card, started.Link), ct);
        if (started.Room?.Thread is { } thread) await live.TellAsync(Texts.Draw(Texts.Opened, $"<#{thread}>"), ct);
    }

    /// <summary>In the help channel the thread hangs on the message; in a thread under it we go on right there; from elsewhere a new thread is made in the help channel.</summary>
    private static (Snowflake Thread, Snowflake Source) Where(Interaction used, Message target, Snowflake help)
    {
        if (used.ChannelId == help) return (default, target.Id);
        return used.Channel is { } here && ChannelTypes.IsThread(here.Type) && here.ParentId == help ? (used.ChannelId, default) : (default, default);
    }

    private async Task OfferAsync(Interaction used, Message target, Snowflake author, Acknowledgement live, CancellationToken ct)
    {
        var drawn = CardDrawing.Plain(Texts.Offer, $"<@{author}>").WithButton(new CustomId(Verb, new CaseId(Forms.NoCase), author.ToString()), "Yes, coach me");
        var body = drawn.Body with
        {
            AllowedMentions = AllowedMentions.User(author),
            MessageReference = new MessageReference(target.Id, FailIfNotExists: false),
            Nonce = Names.Nonce($"offer/{used.Id}"),
            EnforceNonce = true,
        };
        try
        {
            var offer = await parts.Rest.PostMessageAsync(used.ChannelId, body, [], ct);
            if (remembered.Count >= MostRemembered) remembered.Clear();
            if (!string.IsNullOrWhiteSpace(target.Content)) remembered[offer.Id.Value] = target.Content;
            await live.TellAsync(Texts.Draw(Texts.Offered), ct);
        }
        catch (DiscordException e) when (e.Trouble is Trouble.Forbidden or Trouble.Locked)
        {
            await live.TellAsync(Texts.Draw(Texts.Lacking(["Send Messages"])), ct);
        }
    }
}
