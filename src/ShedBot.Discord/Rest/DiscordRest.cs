using System.Diagnostics.Metrics;
using System.Globalization;
using System.Net;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.Extensions.Logging;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Rest;

/// <summary>The platform's HTTP side.</summary>
internal sealed class DiscordRest : IDiscordRest
{
    private const int UnknownMessage = 10008, UnknownWebhook = 10015, ThreadExists = 160004;

    private static readonly TimeSpan EditAgainAfter = TimeSpan.FromSeconds(1);

    private readonly RestOptions options;
    private readonly TimeProvider time;
    private readonly ILogger log;
    private readonly RestMeters meters;
    private readonly Sending sending;

    /// <param name="http">From <see cref="RestClient"/>.</param>
    /// <param name="chance">From 0 up to but not 1; spreads the pauses before a request is sent again.</param>
    /// <param name="meter">Named <see cref="RestMeters.MeterName"/>.</param>
    public DiscordRest(
        HttpClient http, BotToken token, RestOptions options, TimeProvider time, Func<double> chance, Meter meter, ILogger<DiscordRest> log)
    {
        (this.options, this.time, this.log) = (options, time, log);
        meters = new RestMeters(meter);
        sending = new Sending(http, token, options, time, chance, meters, log);
    }

    /// <summary>The bot's token is not taken: raised once, and nothing is sent from then on.</summary>
    public event Action? TokenRefused
    {
        add => sending.TokenRefused += value;
        remove => sending.TokenRefused -= value;
    }

    public Task<User> GetMeAsync(CancellationToken ct) => GetAsync(Routes.Me, WireJson.Default.User, ct);

    public async Task<GatewayInfo> GetGatewayAsync(CancellationToken ct) =>
        (await GetAsync(Routes.Gateway, WireJson.Default.GatewayAnswer, ct)).Read() ?? throw Unreadable(Routes.Gateway, HttpStatusCode.OK);

    public Task<Message> PostMessageAsync(Snowflake channel, MessageBody body, IReadOnlyList<Upload> files, CancellationToken ct)
    {
        // The platform gives back the first message of a nonce, but only where it is asked to look. Source: resources/message, "Create Message".
        var repeat = body is { Nonce: not null, EnforceNonce: true } ? Repeat.Safe : Repeat.Unsent;
        return FetchAsync(Request(Routes.PostMessage(channel), Json(body, files), repeat, files), WireJson.Default.Message, ct);
    }

    public Task<Message> EditMessageAsync(Snowflake channel, Snowflake message, MessageBody body, IReadOnlyList<Upload> files, CancellationToken ct) =>
        FetchAsync(Request(Routes.Message(HttpMethod.Patch, channel, message), Json(body, files), Repeat.Safe, files), WireJson.Default.Message, ct);

    public async Task DeleteMessageAsync(Snowflake channel, Snowflake message, CancellationToken ct)
    {
        try
        {
            await sending.SendAsync(Request(Routes.Message(HttpMethod.Delete, channel, message), null, Repeat.Safe), ct);
        }
        catch (DiscordException e) when (e.Trouble == Trouble.MessageGone)
        {
            // What was wanted; perhaps by our own first try, whose answer was lost.
        }
    }

    public Task<Message> GetMessageAsync(Snowflake channel, Snowflake message, CancellationToken ct) =>
        GetAsync(Routes.Message(HttpMethod.Get, channel, message), WireJson.Default.Message, ct);

    public Task<IReadOnlyList<Message>> ListMessagesAsync(Snowflake channel, Snowflake after, int limit, CancellationToken ct)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(limit, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(limit, Limits.HistoryPage);
        return GetAsync(Routes.ListMessages(channel, after, limit), WireJson.Default.IReadOnlyListMessage, ct);
    }

    public async Task<Channel> StartThreadFromMessageAsync(Snowflake channel, Snowflake message, ThreadBody body, CancellationToken ct)
    {
        try
        {
            return await FetchAsync(Request(Routes.StartThreadFrom(channel, message), Json(body), Repeat.Safe), WireJson.Default.Channel, ct);
        }
        catch (DiscordException e) when (e.Code == ThreadExists)
        {
            // The thread of a message has the message's own id.
            return await GetChannelAsync(message, ct);
        }
    }

    public Task<Channel> StartThreadAsync(Snowflake channel, ThreadBody body, CancellationToken ct) =>
        FetchAsync(Request(Routes.StartThread(channel), Json(body), Repeat.Unsent), WireJson.Default.Channel, ct);

    public Task<Channel> GetChannelAsync(Snowflake channel, CancellationToken ct) =>
        GetAsync(Routes.Channel(HttpMethod.Get, channel), WireJson.Default.Channel, ct);

    public Task<Channel> EditChannelAsync(Snowflake channel, ChannelEdit edit, CancellationToken ct)
    {
        var json = JsonSerializer.SerializeToUtf8Bytes(edit, WireJson.Default.ChannelEdit);
        return FetchAsync(Request(Routes.Channel(HttpMethod.Patch, channel), json, Repeat.Safe), WireJson.Default.Channel, ct);
    }

    public Task AddThreadMemberAsync(Snowflake thread, Snowflake user, CancellationToken ct) =>
        sending.SendAsync(Request(Routes.AddThreadMember(thread, user), null, Repeat.Safe), ct);

    public async Task<IReadOnlyList<Channel>> ActiveThreadsAsync(Snowflake guild, CancellationToken ct) =>
        (await GetAsync(Routes.ActiveThreads(guild), WireJson.Default.ThreadList, ct)).Threads ?? [];

    public Task<IReadOnlyList<Role>> ListRolesAsync(Snowflake guild, CancellationToken ct) =>
        GetAsync(Routes.Roles(guild), WireJson.Default.IReadOnlyListRole, ct);

    public Task<GuildMember> GetMemberAsync(Snowflake guild, Snowflake user, CancellationToken ct) =>
        GetAsync(Routes.Member(guild, user), WireJson.Default.GuildMember, ct);

    public Task<IReadOnlyList<Command>> ListCommandsAsync(Snowflake application, Snowflake guild, CancellationToken ct) =>
        GetAsync(Routes.Commands(HttpMethod.Get, application, guild), WireJson.Default.IReadOnlyListCommand, ct);

    public Task<IReadOnlyList<Command>> PutCommandsAsync(
        Snowflake application, Snowflake guild, IReadOnlyList<Command> commands, CancellationToken ct)
    {
        var json = JsonSerializer.SerializeToUtf8Bytes(commands, WireJson.Default.IReadOnlyListCommand);
        return FetchAsync(Request(Routes.Commands(HttpMethod.Put, application, guild), json, Repeat.Safe), WireJson.Default.IReadOnlyListCommand, ct);
    }

    public async Task<Message?> AnswerAsync(Interaction interaction, InteractionAnswer answer, IReadOnlyList<Upload> files, CancellationToken ct)
    {
        var filled = answer.Data is { } data && files.Count > 0 ? answer with { Data = data with { Attachments = Named(data.Attachments, files) } } : answer;
        var json = JsonSerializer.SerializeToUtf8Bytes(filled, WireJson.Default.InteractionAnswer);
        var request = new Outgoing(Routes.Answer(interaction), json, files, Repeat.Once, options.AnswerTry, TimeSpan.FromSeconds(Limits.AnswerSeconds));
        var given = await sending.SendAsync(request, ct);
        meters.Answered(time.GetUtcNow() - interaction.Id.At);

        // It was taken, whatever came back with it.
        return Read(given, WireJson.Default.InteractionCallback)?.Resource?.Message;
    }

    public async Task<Message> EditAnswerAsync(Interaction interaction, MessageBody body, IReadOnlyList<Upload> files, CancellationToken ct)
    {
        var request = Request(Routes.EditAnswer(interaction), Json(body, files), Repeat.Safe, files);
        try
        {
            return await FetchAsync(request, WireJson.Default.Message, ct);
        }
        catch (DiscordException e) when (e is { Status: HttpStatusCode.NotFound, Code: UnknownMessage or UnknownWebhook } && StillOpen(interaction))
        {
            // Now and then the platform does not find an answer that is there: once more, a little later. Source: its public issue thread 6851.
            log.Again(request.Route.Name, "an answer not found");
            await Task.Delay(EditAgainAfter, time, ct);
            return await FetchAsync(request, WireJson.Default.Message, ct);
        }
    }

    public Task<Message> FollowUpAsync(Interaction interaction, MessageBody body, IReadOnlyList<Upload> files, CancellationToken ct) =>
        FetchAsync(Request(Routes.FollowUp(interaction), Json(body, files), Repeat.Unsent, files), WireJson.Default.Message, ct);

    public Task<Channel> OpenDmAsync(Snowflake user, CancellationToken ct)
    {
        var json = JsonSerializer.SerializeToUtf8Bytes(new DmBody(user), WireJson.Default.DmBody);
        return FetchAsync(Request(Routes.OpenDm, json, Repeat.Safe), WireJson.Default.Channel, ct);
    }

    private static byte[] Json(ThreadBody body) => JsonSerializer.SerializeToUtf8Bytes(body, WireJson.Default.ThreadBody);

    private static byte[] Json(MessageBody body, IReadOnlyList<Upload> files) => JsonSerializer.SerializeToUtf8Bytes(
        files.Count == 0 ? body : body with { Attachments = Named(body.Attachments, files) }, WireJson.Default.MessageBody);

    // A file that is not listed would not be shown.
    private static IReadOnlyList<OutgoingAttachment> Named(IReadOnlyList<OutgoingAttachment>? listed, IReadOnlyList<Upload> files) =>
        listed ?? [.. files.Select((file, n) => new OutgoingAttachment(n.ToString(CultureInfo.InvariantCulture), file.Name, null))];

    /// <returns>Null when there is nothing readable.</returns>
    private static T? Read<T>(Answer answer, JsonTypeInfo<T> shape) where T : class
    {
        try
        {
            return answer.Body.Length == 0 ? null : JsonSerializer.Deserialize(answer.Body.Span, shape);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private DiscordException Unreadable(Route route, HttpStatusCode status)
    {
        log.Unreadable(route.Name, (int)status);
        return new DiscordException(Trouble.Busy, status, 0, route.Name, "The answer could not be read");
    }

    private bool StillOpen(Interaction interaction) => time.GetUtcNow() - interaction.Id.At < TimeSpan.FromMinutes(Limits.TokenMinutes);

    private Outgoing Request(Route route, byte[]? json, Repeat repeat, IReadOnlyList<Upload>? files = null) => new(
        route, json is null ? default(ReadOnlyMemory<byte>?) : json, files ?? [], repeat, files is { Count: > 0 } ? options.UploadTry : options.Try, options.Patience);

    private Task<T> GetAsync<T>(Route route, JsonTypeInfo<T> shape, CancellationToken ct) where T : class =>
        FetchAsync(Request(route, null, Repeat.Safe), shape, ct);

    private async Task<T> FetchAsync<T>(Outgoing request, JsonTypeInfo<T> shape, CancellationToken ct) where T : class
    {
        var answer = await sending.SendAsync(request, ct);
        return Read(answer, shape) ?? throw Unreadable(request.Route, answer.Status);
    }
}
