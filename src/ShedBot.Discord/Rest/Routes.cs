using System.Globalization;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Rest;

/// <summary>Every route that we use, by the names of the published description.</summary>
internal static class Routes
{
    public static Route Me { get; } = Free(HttpMethod.Get, "users/@me");

    public static Route Gateway { get; } = Free(HttpMethod.Get, "gateway/bot");

    public static Route OpenDm { get; } = Free(HttpMethod.Post, "users/@me/channels");

    public static Route PostMessage(Snowflake channel) => OfChannel(HttpMethod.Post, channel, "/messages");

    public static Route ListMessages(Snowflake channel, Snowflake after, int limit) => OfChannel(HttpMethod.Get, channel, "/messages") with
    {
        Path = string.Create(CultureInfo.InvariantCulture, $"channels/{channel}/messages?limit={limit}{(after.IsNone ? "" : $"&after={after}")}"),
    };

    public static Route Message(HttpMethod method, Snowflake channel, Snowflake message) =>
        OfChannel(method, channel, "/messages/{message_id}", $"/messages/{message}");

    public static Route StartThreadFrom(Snowflake channel, Snowflake message) =>
        OfChannel(HttpMethod.Post, channel, "/messages/{message_id}/threads", $"/messages/{message}/threads");

    public static Route StartThread(Snowflake channel) => OfChannel(HttpMethod.Post, channel, "/threads");

    public static Route Channel(HttpMethod method, Snowflake channel) => OfChannel(method, channel, "");

    public static Route AddThreadMember(Snowflake thread, Snowflake user) =>
        OfChannel(HttpMethod.Put, thread, "/thread-members/{user_id}", $"/thread-members/{user}");

    public static Route ActiveThreads(Snowflake guild) => OfGuild(guild, "/threads/active");

    public static Route Roles(Snowflake guild) => OfGuild(guild, "/roles");

    public static Route Member(Snowflake guild, Snowflake user) => OfGuild(guild, "/members/{user_id}", $"/members/{user}");

    public static Route Commands(HttpMethod method, Snowflake application, Snowflake guild) => guild.IsNone
        ? new(method, "applications/{application_id}/commands", $"applications/{application}/commands", "")
        : new(method, "applications/{application_id}/guilds/{guild_id}/commands", $"applications/{application}/guilds/{guild}/commands", guild.ToString());

    public static Route Answer(Interaction interaction) => new(
        HttpMethod.Post,
        "interactions/{interaction_id}/{interaction_token}/callback",
        $"interactions/{interaction.Id}/{Token(interaction)}/callback?with_response=true",
        interaction.Id.ToString(),
        OfInteraction: true);

    public static Route EditAnswer(Interaction interaction) => OfWebhook(HttpMethod.Patch, interaction, "/messages/@original");

    public static Route FollowUp(Interaction interaction) => OfWebhook(HttpMethod.Post, interaction, "");

    private static Route Free(HttpMethod method, string path) => new(method, path, path, "");

    private static Route OfChannel(HttpMethod method, Snowflake channel, string template, string? rest = null) =>
        new(method, "channels/{channel_id}" + template, $"channels/{channel}{rest ?? template}", channel.ToString());

    private static Route OfGuild(Snowflake guild, string template, string? rest = null) =>
        new(HttpMethod.Get, "guilds/{guild_id}" + template, $"guilds/{guild}{rest ?? template}", guild.ToString());

    private static Route OfWebhook(HttpMethod method, Interaction interaction, string rest) => new(
        method,
        "webhooks/{webhook_id}/{webhook_token}" + rest,
        $"webhooks/{interaction.ApplicationId}/{Token(interaction)}{rest}",
        interaction.Token,
        OfInteraction: true);

    private static string Token(Interaction interaction) => Uri.EscapeDataString(interaction.Token);
}
