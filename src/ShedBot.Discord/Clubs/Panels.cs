using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>Messages of ours that are there already: known again by their mark, and freed of controls that are over.</summary>
internal sealed class Panels(Parts parts)
{
    private const int LookBack = 50;

    /// <summary>The newest message of ours here that carries this mark, or null.</summary>
    public async Task<Message?> FindAsync(Snowflake thread, int mark, CancellationToken ct)
    {
        var recent = await parts.Rest.ListMessagesAsync(thread, default, LookBack, ct);
        return recent.FirstOrDefault(m => m.Author?.Id == parts.Me.User && (m.Components ?? []).Any(c => c.Id == mark));
    }

    /// <summary>The newest message of ours here that carries a mark, or null.</summary>
    public async Task<Message?> NewestAsync(Snowflake channel, CancellationToken ct)
    {
        var recent = await parts.Rest.ListMessagesAsync(channel, default, LookBack, ct);
        return recent.FirstOrDefault(m => m.Author?.Id == parts.Me.User && MarkOf(m) is not null);
    }

    /// <returns>The mark that a message of ours carries, whatever it shows by now; or null.</returns>
    public static int? MarkOf(Message? message) =>
        message?.Components?.FirstOrDefault(c => c.Type == ComponentTypes.Container)?.Id is { } id && id >= Names.LeastMark ? id : null;

    /// <summary>Takes the buttons and lists off a message of ours. It is only tidying: when it fails, a late press is answered all the same.</summary>
    public async Task RetireAsync(Snowflake thread, string? panel, CancellationToken ct)
    {
        if (Snowflake.Read(panel) is not { } message) return;
        try
        {
            await RetireAsync(await parts.Rest.GetMessageAsync(thread, message, ct), thread, ct);
        }
        catch (DiscordException e)
        {
            parts.Log.NotTidied(e.Trouble, e);
        }
    }

    public async Task RetireAsync(Message message, Snowflake thread, CancellationToken ct)
    {
        // The address under which the platform gives a picture back runs out, so a question that is over goes without its pictures.
        var left = Without(ComponentTypes.MediaGallery, Without(ComponentTypes.Row, message.Components ?? []));
        if (left.Count == 0) return;
        left.Add(new Component(ComponentTypes.Text, Content: "-# We went on from here."));
        try
        {
            var body = new MessageBody(Components: left, AllowedMentions: AllowedMentions.None, Flags: MessageFlags.ComponentsV2, Attachments: []);
            await parts.Rest.EditMessageAsync(thread, message.Id, body, [], ct);
        }
        catch (DiscordException e)
        {
            parts.Log.NotTidied(e.Trouble, e);
        }
    }

    /// <summary>What the member picked, as the control itself says it; null when it does not say.</summary>
    public static string? LabelOf(Interaction press)
    {
        var all = Flat(press.Message?.Components ?? []);
        if (press.Data?.Values is [var value, ..])
            return all.SelectMany(c => c.Options ?? []).FirstOrDefault(o => o.Value == value)?.Label;
        return all.FirstOrDefault(c => c.CustomId is not null && c.CustomId == press.Data?.CustomId)?.Label;
    }

    public static MessageBody WithoutPictures(MessageBody body) =>
        body with { Components = Without(ComponentTypes.MediaGallery, body.Components ?? []), Attachments = null };

    private static List<Component> Without(int type, IEnumerable<Component> components) =>
    [
        .. components.Where(c => c.Type != type)
            .Select(c => c.Components is { } inner ? c with { Components = Without(type, inner) } : c)
            .Where(c => c.Components is not { Count: 0 }),
    ];

    private static IEnumerable<Component> Flat(IEnumerable<Component> components) =>
        components.SelectMany(c => Flat(c.Components ?? []).Prepend(c));
}
