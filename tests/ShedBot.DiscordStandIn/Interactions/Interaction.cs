using System.Text.Json;
using System.Text.Json.Nodes;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Interactions;

/// <summary>Interaction types and answer types, with the platform's numbers.</summary>
internal static class InteractionType
{
    public const int Command = 2, Component = 3, Autocomplete = 4, Modal = 5;
}

/// <summary>Types of first answer.</summary>
internal static class AnswerType
{
    public const int Message = 4, DeferredMessage = 5, DeferredUpdate = 6, Update = 7, Choices = 8, Modal = 9;
}

/// <summary>One thing a member did that the bot must answer.</summary>
internal sealed class Interaction(ulong id, string token, int type, Person person, Channel channel, DateTimeOffset at)
{
    public ulong Id { get; } = id;

    public string Token { get; } = token;

    public int Type { get; } = type;

    public Person Person { get; } = person;

    public Channel Channel { get; } = channel;

    public DateTimeOffset At { get; } = at;

    /// <summary>The message a part was pressed on, also of the modal opened from it.</summary>
    public Message? Source { get; init; }

    /// <summary>1 slash, 2 person menu, 3 message menu.</summary>
    public int CommandType { get; init; } = 1;

    public int? Answered { get; set; }

    public TimeSpan AnswerTook { get; set; }

    /// <summary>What <c>@original</c> means: the message made, or the one the pressed part is on.</summary>
    public Message? Original { get; set; }

    /// <summary>A modal or choices shown as the first answer.</summary>
    public JsonElement? Shown { get; set; }

    /// <summary>Set once a deferred answer was filled in or a deferred change made.</summary>
    public bool Settled { get; set; }

    public List<Message> Followups { get; } = [];

    public JsonObject Metadata()
    {
        var metadata = new JsonObject
        {
            ["id"] = Id.Text(),
            ["type"] = Type,
            ["user"] = Render.User(Person),
            ["authorizing_integration_owners"] = Owners(),
        };
        if (Source is not null)
            metadata["interacted_message_id"] = Source.Id.Text();
        return metadata;
    }

    public JsonObject Owners() => new() { ["0"] = (Channel.Guild?.Id ?? 0).Text() };
}
