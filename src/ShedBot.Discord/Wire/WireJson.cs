using System.Text.Json.Serialization;
using ShedBot.Discord.Rest;

namespace ShedBot.Discord.Wire;

/// <summary>How the platform's JSON is read and written: names in snake_case, what is null is left out, what is not known is passed over.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    Converters = [typeof(NullAsZero), typeof(NullAsNo)])]
[JsonSerializable(typeof(Channel))]
[JsonSerializable(typeof(ChannelEdit))]
[JsonSerializable(typeof(Command))]
[JsonSerializable(typeof(IReadOnlyList<Command>))]
[JsonSerializable(typeof(IReadOnlyList<Message>))]
[JsonSerializable(typeof(IReadOnlyList<Role>))]
[JsonSerializable(typeof(DmBody))]
[JsonSerializable(typeof(GatewayAnswer))]
[JsonSerializable(typeof(Guild))]
[JsonSerializable(typeof(GuildMember))]
[JsonSerializable(typeof(Interaction))]
[JsonSerializable(typeof(InteractionAnswer))]
[JsonSerializable(typeof(InteractionCallback))]
[JsonSerializable(typeof(Message))]
[JsonSerializable(typeof(MessageBody))]
[JsonSerializable(typeof(ThreadBody))]
[JsonSerializable(typeof(ThreadList))]
[JsonSerializable(typeof(User))]
internal sealed partial class WireJson : JsonSerializerContext;
