using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.Interactions;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn;

// Buttons, menus and forms. Only what a person could really do; the forged ones say so in their names.
public sealed partial class StandIn
{
    private const int Button = 2, StringMenu = 3;

    /// <summary>Presses a button that is on the message now and not greyed out.</summary>
    public Task<Deed> PressAsync(Person person, SeenMessage message, string customId)
    {
        lock (realm.Gate)
        {
            var source = Reachable(person, message);
            var part = Live(source, customId);
            if (ComponentTree.TypeOf(part) != Button)
                throw new InvalidOperationException($"'{customId}' is not a button.");
            return Done(InteractionDesk.Component(realm, person, source, Button, customId, part["id"]!.GetValue<int>(), null, null));
        }
    }

    /// <summary>Presses the usable button of that label.</summary>
    public Task<Deed> PressLabelAsync(Person person, SeenMessage message, string label)
    {
        lock (realm.Gate)
            return PressAsync(person, message, SeenMessage.Of(Standing(message.Id)).Control(label).CustomId!);
    }

    /// <summary>Picks from a menu: values of its choices, or ids of people, roles and channels.</summary>
    public Task<Deed> PickAsync(Person person, SeenMessage message, string customId, params string[] values)
    {
        lock (realm.Gate)
        {
            var source = Reachable(person, message);
            var part = Live(source, customId);
            var control = SeenControl.Of(part) ?? throw new InvalidOperationException($"'{customId}' is not a menu.");
            var least = part["min_values"]?.GetValue<int>() ?? 1;
            var most = part["max_values"]?.GetValue<int>() ?? 1;
            if (control.Kind == Button || values.Length < least || values.Length > most)
                throw new InvalidOperationException($"'{customId}' takes {least} to {most} choices of a menu.");
            if (control.Kind == StringMenu && values.FirstOrDefault(v => control.Choices.All(c => c.Value != v)) is { } odd)
                throw new InvalidOperationException($"'{odd}' is not offered by '{customId}'.");
            var resolved = control.Kind == StringMenu ? null : Resolved.ByIds(realm, source.Channel.Guild, values.Select(ulong.Parse));
            return Done(InteractionDesk.Component(realm, person, source, control.Kind, customId, control.PartId, TextArray(values), resolved));
        }
    }

    /// <summary>Fills in the form a deed was answered with and sends it.</summary>
    /// <param name="values">By custom id: text for an input or a radio group, a list of texts for menus and check lists, true or false for one box.</param>
    public async Task<Deed> SubmitAsync(Deed opener, IReadOnlyDictionary<string, object> values)
    {
        var answer = await opener.Answered.ConfigureAwait(false);
        if (answer.Type != AnswerType.Modal)
            throw new InvalidOperationException($"No form was shown; the answer was of type {answer.Type}.");
        lock (realm.Gate)
        {
            var form = (JsonObject)JsonNode.Parse(answer.Shown!.Value.GetRawText())!;
            return new Deed(realm, InteractionDesk.Modal(realm, opener.Interaction.Person, opener.Interaction, form["custom_id"]!.ToString(), FormFilling.Fill(form, values)));
        }
    }

    /// <summary>A press no app would send: of a button that is not there, is greyed out, or is on another's private message.</summary>
    public Task<Deed> ForgedPressAsync(Person person, SeenMessage message, string customId)
    {
        lock (realm.Gate)
        {
            var source = realm.Channels.SelectMany(c => c.Messages).First(m => m.Id == message.Id);
            return Done(InteractionDesk.Component(realm, person, source, Button, customId, 1, null, null));
        }
    }

    /// <summary>A pick no app would send.</summary>
    public Task<Deed> ForgedPickAsync(Person person, SeenMessage message, string customId, params string[] values)
    {
        lock (realm.Gate)
        {
            var source = realm.Channels.SelectMany(c => c.Messages).First(m => m.Id == message.Id);
            return Done(InteractionDesk.Component(realm, person, source, StringMenu, customId, 1, TextArray(values), null));
        }
    }

    /// <summary>A form nobody was shown, sent as if it had been opened by that deed.</summary>
    public Task<Deed> ForgedSubmitAsync(Deed opener, string customId, IReadOnlyDictionary<string, string> texts)
    {
        lock (realm.Gate)
        {
            var parts = Wire.ArrayOf(texts.Select((t, i) => (JsonNode)new JsonObject
            {
                ["type"] = 18,
                ["id"] = (2 * i) + 1,
                ["component"] = new JsonObject { ["type"] = 4, ["id"] = (2 * i) + 2, ["custom_id"] = t.Key, ["value"] = t.Value },
            }));
            return Done(InteractionDesk.Modal(realm, opener.Interaction.Person, opener.Interaction, customId, parts));
        }
    }

    private Task<Deed> Done(Interaction interaction) => Task.FromResult(new Deed(realm, interaction));

    private static JsonArray TextArray(IEnumerable<string> values) => Wire.ArrayOf(values.Select(v => (JsonNode)v));

    private static JsonObject Live(Message source, string customId) =>
        ComponentTree.Pressable(source.Components, customId)
        ?? throw new InvalidOperationException($"'{customId}' is not on message {source.Id} or is greyed out.");

    private Message Reachable(Person person, SeenMessage message)
    {
        var source = Standing(message.Id);
        if (source.Ephemeral && source.Answers?.Person != person)
            throw new InvalidOperationException($"{person.Name} cannot see that private message.");
        if (!RightsOf.In(source.Channel, person).HasFlag(Rights.ViewChannel))
            throw new InvalidOperationException($"{person.Name} cannot see {source.Channel.Name}.");
        if (source.Ephemeral || source.Channel.Thread is not { Archived: true } state)
            return source;
        // The app opens a shut thread as the person presses; a locked one it cannot, and the button seems dead.
        if (state.Locked && !RightsOf.In(source.Channel, person).HasFlag(Rights.ManageThreads))
            throw new InvalidOperationException($"{source.Channel.Name} is locked; its buttons are dead.");
        ThreadDesk.SetArchived(realm, source.Channel, false);
        return source;
    }
}
