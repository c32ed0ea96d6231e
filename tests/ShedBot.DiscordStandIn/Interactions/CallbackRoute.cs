using System.Text.Json;
using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Rest;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Interactions;

/// <summary>The first answer to an interaction.</summary>
internal static class CallbackRoute
{
    private const long Settable = MessageFlags.SuppressEmbeds | MessageFlags.Ephemeral | MessageFlags.SuppressNotifications | MessageFlags.ComponentsV2;

    public static void Add(RouteTable table) =>
        table.Add("POST", "/interactions/{interaction_id}/{interaction_token}/callback", Answer);

    private static Reply Answer(RestCall c)
    {
        var interaction = c.Realm.Interactions.GetValueOrDefault(c.Id("interaction_id"));
        if (interaction is null || interaction.Token != c.Values["interaction_token"])
            throw Refusal.UnknownInteraction();
        if (interaction.Answered is not null)
            throw Refusal.AlreadyAnswered();
        if (c.Realm.Now - interaction.At > c.Realm.Options.AnswerWithin)
            throw Refusal.UnknownInteraction();
        var type = (int)(c.Body.Of("type").AsNumber() ?? 0);
        if (!Allowed(interaction, type))
            throw Refusal.BadForm($"type: {type} is no answer to an interaction of type {interaction.Type}");
        var data = c.Body.Of("data");
        Do(c, interaction, type, data);
        interaction.Answered = type;
        interaction.AnswerTook = c.Realm.Now - interaction.At;
        c.Realm.Changed();
        return c.AskedTrue("with_response") ? Reply.Ok(Response(c.Realm, interaction, type)) : Reply.Empty;
    }

    private static bool Allowed(Interaction i, int type) => type switch
    {
        AnswerType.Message or AnswerType.DeferredMessage => i.Type is InteractionType.Command or InteractionType.Component or InteractionType.Modal,
        AnswerType.DeferredUpdate or AnswerType.Update => i.Source is not null && i.Type is (InteractionType.Component or InteractionType.Modal),
        AnswerType.Choices => i.Type == InteractionType.Autocomplete,
        AnswerType.Modal => i.Type is InteractionType.Command or InteractionType.Component,
        _ => false,
    };

    private static void Do(RestCall c, Interaction i, int type, JsonElement? data)
    {
        var draft = new Draft(data, c.Files);
        switch (type)
        {
            case AnswerType.Message:
                RefuseShutAndLocked(c.Realm, i);
                i.Original = MessageDesk.Post(c.Realm, i.Channel, c.Realm.Bot, draft, Setting(i, Settable));
                i.Settled = true;
                break;
            case AnswerType.DeferredMessage:
                RefuseShutAndLocked(c.Realm, i);
                // Of what a deferral says only the private flag counts.
                var empty = new Draft(JsonSerializer.SerializeToElement(new JsonObject { ["flags"] = draft.Flags & MessageFlags.Ephemeral }), []);
                i.Original = MessageDesk.Post(c.Realm, i.Channel, c.Realm.Bot, empty, Setting(i, MessageFlags.Ephemeral) with { MayBeEmpty = true });
                break;
            case AnswerType.DeferredUpdate:
                i.Original = i.Source;
                break;
            case AnswerType.Update:
                RefuseGone(i.Source!);
                MessageDesk.Edit(c.Realm, i.Source!, draft);
                i.Original = i.Source;
                i.Settled = true;
                break;
            default:
                if (data is not { ValueKind: JsonValueKind.Object })
                    throw Refusal.BadForm("data: needed");
                i.Shown = data.Value.Clone();
                i.Settled = true;
                break;
        }
    }

    public static Setting Setting(Interaction i, long settable) => new()
    {
        Answers = i,
        SettableFlags = settable,
        Type = i.Type switch
        {
            InteractionType.Command => i.CommandType == 1 ? MessageType.Command : MessageType.MenuCommand,
            _ => i.Source is { Deleted: false } ? MessageType.Reply : MessageType.Default,
        },
        Reference = i.Type == InteractionType.Command ? null : i.Source,
    };

    public static void RefuseGone(Message message)
    {
        if (message.Deleted)
            throw Refusal.UnknownMessage();
        // A private message lives in the member's app alone and is not shut with the thread.
        if (!message.Ephemeral && message.Channel.Thread is { Archived: true })
            throw Refusal.Archived();
        if (message.Channel.Deleted)
            throw Refusal.UnknownChannel();
    }

    private static void RefuseShutAndLocked(Realm realm, Interaction i)
    {
        if (i.Channel.Deleted)
            throw Refusal.UnknownChannel();
        if (i.Channel.Thread is { Archived: true, Locked: true } && !RightsOf.In(i.Channel, realm.Bot).HasFlag(Rights.ManageThreads))
            throw Refusal.Archived();
    }

    private static JsonObject Response(Realm realm, Interaction i, int type)
    {
        var about = new JsonObject { ["id"] = i.Id.Text(), ["type"] = i.Type };
        var response = new JsonObject { ["interaction"] = about };
        if (i.Original is not { } message)
            return response;
        about["response_message_id"] = message.Id.Text();
        about["response_message_loading"] = message.Loading;
        about["response_message_ephemeral"] = message.Ephemeral;
        // Only a message made or redrawn at once is told; a deferral has nothing to tell yet.
        if (type is AnswerType.Message or AnswerType.Update)
            response["resource"] = new JsonObject { ["type"] = type, ["message"] = RenderMessage.Message(realm, message) };
        return response;
    }
}
