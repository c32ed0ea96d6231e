using ShedBot.DiscordStandIn.Rest;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Interactions;

/// <summary>What an interaction's token is good for after the first answer: changing it, and further messages.</summary>
internal static class WebhookRoutes
{
    private const long Settable = MessageFlags.SuppressEmbeds | MessageFlags.Ephemeral | MessageFlags.SuppressNotifications | MessageFlags.ComponentsV2;

    public static void Add(RouteTable table)
    {
        const string hook = "/webhooks/{webhook_id}/{webhook_token}", original = hook + "/messages/@original", one = hook + "/messages/{message_id}";
        table.Add("POST", hook, FollowUp, "hook");
        table.Add("GET", original, c => Read(c, Original(c)), "hook");
        table.Add("PATCH", original, c => Change(c, Original(c)), "hook");
        table.Add("DELETE", original, c => Remove(c, Original(c)), "hook");
        table.Add("GET", one, c => Read(c, Own(c)), "hook");
        table.Add("PATCH", one, c => Change(c, Own(c)), "hook");
        table.Add("DELETE", one, c => Remove(c, Own(c)), "hook");
    }

    private static Interaction Interaction(RestCall c)
    {
        var token = c.Values["webhook_token"];
        var found = c.Id("webhook_id") == c.Realm.ApplicationId ? c.Realm.Interactions.Values.FirstOrDefault(i => i.Token == token) : null;
        if (found is null)
            throw Refusal.UnknownWebhook();
        if (c.Realm.Now - found.At > c.Realm.Options.TokenLife)
            throw Refusal.TokenSpent();
        return found.Answered is null ? throw Refusal.UnknownWebhook() : found;
    }

    private static (Interaction, Message) Original(RestCall c)
    {
        var interaction = Interaction(c);
        return interaction.Original is { Deleted: false } message ? (interaction, message) : throw Refusal.UnknownMessage();
    }

    /// <summary>A message this token made: a follow-up, or the first answer by its id.</summary>
    private static (Interaction, Message) Own(RestCall c)
    {
        var interaction = Interaction(c);
        var id = c.Id("message_id");
        var message = interaction.Original?.Id == id ? interaction.Original : interaction.Followups.Find(m => m.Id == id);
        return message is { Deleted: false } ? (interaction, message) : throw Refusal.UnknownMessage();
    }

    private static Reply Read(RestCall c, (Interaction, Message Message) found) => Reply.Ok(RenderMessage.Message(c.Realm, found.Message));

    private static Reply Change(RestCall c, (Interaction Interaction, Message Message) found)
    {
        var (interaction, message) = found;
        CallbackRoute.RefuseGone(message);
        MessageDesk.Edit(c.Realm, message, c.Draft);
        if (message == interaction.Original)
            interaction.Settled = true;
        c.Realm.Changed();
        return Reply.Ok(RenderMessage.Message(c.Realm, message));
    }

    private static Reply Remove(RestCall c, (Interaction Interaction, Message Message) found)
    {
        MessageDesk.Delete(c.Realm, found.Message);
        return Reply.Empty;
    }

    private static Reply FollowUp(RestCall c)
    {
        var interaction = Interaction(c);
        if (interaction.Channel.Deleted)
            throw Refusal.UnknownChannel();
        // Right after a deferral a follow-up fills it in; the platform keeps this for older applications.
        if (interaction.Original is { Loading: true, Deleted: false } waiting)
            return Change(c, (interaction, waiting));
        var setting = CallbackRoute.Setting(interaction, Settable) with { Type = MessageType.Default };
        if (interaction.Original is { Deleted: false } answered)
            setting = setting with { Reference = answered, Type = MessageType.Reply };
        var message = MessageDesk.Post(c.Realm, interaction.Channel, c.Realm.Bot, c.Draft, setting);
        interaction.Followups.Add(message);
        c.Realm.Changed();
        return Reply.Ok(RenderMessage.Message(c.Realm, message));
    }
}
