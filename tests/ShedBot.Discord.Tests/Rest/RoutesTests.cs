using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;
using static ShedBot.Discord.Tests.Rest.RestWorld;

namespace ShedBot.Discord.Tests.Rest;

/// <summary>Source of methods, paths and success bodies: the platform's published OpenAPI description of version 10 (names of the operations in the comments), and its pages under resources.</summary>
public sealed class RoutesTests
{
    private static readonly CancellationToken None = CancellationToken.None;
    private static readonly MessageBody Hello = new("hello");

    public static TheoryData<string, string, string, string> Calls => new()
    {
        // name, request, its body, the answer
        { "get_my_user", "GET users/@me", "", """{"id":"1","username":"n","discriminator":"0"}""" },
        { "get_bot_gateway", "GET gateway/bot", "", """{"url":"wss://gateway.invalid","shards":1,"session_start_limit":{"total":1000,"remaining":999,"reset_after":14400000,"max_concurrency":1}}""" },
        { "create_message", "POST channels/2001/messages", """{"content":"hello"}""", """{"id":"1"}""" },
        { "update_message", "PATCH channels/2001/messages/6001", """{"content":"hello"}""", """{"id":"1"}""" },
        { "delete_message", "DELETE channels/2001/messages/6001", "", "" },
        { "get_message", "GET channels/2001/messages/6001", "", """{"id":"1"}""" },
        { "list_messages", "GET channels/2001/messages?limit=100&after=6001", "", """[{"id":"1"}]""" },
        { "list_messages, newest", "GET channels/2001/messages?limit=1", "", "[]" },
        { "create_thread_from_message", "POST channels/2001/messages/6001/threads", """{"name":"t","auto_archive_duration":1440}""", """{"id":"1"}""" },
        { "create_thread", "POST channels/2001/threads", """{"name":"t","type":12,"invitable":false}""", """{"id":"1"}""" },
        { "get_channel", "GET channels/2001", "", """{"id":"1"}""" },
        { "update_channel", "PATCH channels/2001", """{"archived":true}""", """{"id":"1"}""" },
        { "add_thread_member", "PUT channels/2001/thread-members/4001", "", "" },
        { "get_active_guild_threads", "GET guilds/3001/threads/active", "", """{"threads":[{"id":"1"}],"members":[]}""" },
        { "list_guild_roles", "GET guilds/3001/roles", "", """[{"id":"1","permissions":"8"}]""" },
        { "get_guild_member", "GET guilds/3001/members/4001", "", """{"roles":["1"],"user":{"id":"1"}}""" },
        { "list_application_commands", "GET applications/5001/commands", "", """[{"id":"1","name":"n","type":1}]""" },
        { "list_guild_application_commands", "GET applications/5001/guilds/3001/commands", "", "[]" },
        { "bulk_set_application_commands", "PUT applications/5001/commands", """[{"name":"n","type":1,"description":"d"}]""", "[]" },
        { "bulk_set_guild_application_commands", "PUT applications/5001/guilds/3001/commands", """[{"name":"n","type":1,"description":"d"}]""", "[]" },
        { "create_dm", "POST users/@me/channels", """{"recipient_id":"4001"}""", """{"id":"1","type":1}""" },
    };

    [Theory]
    [MemberData(nameof(Calls))]
    public async Task EveryCall_GoesWhereTheDescriptionSays(string name, string request, string body, string answer)
    {
        using var world = new RestWorld(_ => answer.Length == 0 ? new HttpResponseMessage(System.Net.HttpStatusCode.NoContent) : Answers.Ok(answer));

        var (_, refused, _) = await world.RunAsync(async r =>
        {
            await Call(r, name);
            return true;
        });

        Assert.Null(refused);
        var seen = Assert.Single(world.Requests);
        Assert.Equal(request.Replace(" ", " /api/v10/", StringComparison.Ordinal), seen.ToString());
        Assert.Equal(body, seen.Text);
        Assert.Equal(body.Length == 0 ? null : "application/json", seen.MediaType);
        Assert.Equal($"Bot {Secret}", seen.Authorization);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(101)]
    public async Task ListMessages_LimitOutOfRange_IsOurOwnMistake(int limit)
    {
        using var world = new RestWorld(_ => Answers.Ok("[]"));

        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => world.Rest.ListMessagesAsync(Room, default, limit, None));
    }

    // Source: topics/opcodes-and-status-codes (160004); topics/threads: a thread started from a message has the message's id.
    [Fact]
    public async Task StartThreadFromMessage_ThereIsOne_GivesItBack()
    {
        using var world = new RestWorld(s => s.Method == "POST" ? Answers.Refusal(400, 160004) : Answers.Ok("""{"id":"6001","name":"there"}"""));

        var (thread, _, _) = await world.RunAsync(r => r.StartThreadFromMessageAsync(Room, Words, new ThreadBody("t"), None));

        Assert.Equal("there", thread!.Name);
        Assert.Equal("GET /api/v10/channels/6001", world.Requests[1].ToString());
    }

    // The example of the description, events/gateway, "Get Gateway Bot".
    [Fact]
    public async Task GetGateway_TheExampleOfTheDescription_IsRead()
    {
        using var world = new RestWorld(_ => Answers.Ok("""{"url":"wss://gateway.discord.gg/","shards":9,"session_start_limit":{"total":1000,"remaining":999,"reset_after":14400000,"max_concurrency":1}}"""));

        var (info, _, _) = await world.RunAsync(r => r.GetGatewayAsync(None));

        Assert.Equal(new GatewayInfo(new Uri("wss://gateway.discord.gg/"), 9, 999, TimeSpan.FromHours(4), 1), info);
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("""{"url":null}""")]
    [InlineData("""{"url":"https://elsewhere.invalid"}""")]
    public async Task GetGateway_NoAddressOfASocket_IsRefused(string answer)
    {
        using var world = new RestWorld(_ => Answers.Ok(answer));

        Assert.Equal(Trouble.Busy, (await world.RunAsync(r => r.GetGatewayAsync(None))).Refused!.Trouble);
    }

    // Source: reference, "Snowflakes" and "Nullable and Optional Resource Fields"; the change log of 2026-08-05 makes ids of a channel null.
    [Fact]
    public async Task Answers_WithNullsNumbersAndUnknownFields_AreRead()
    {
        using var world = new RestWorld(_ => Answers.Ok("""
            {"id":12345678901234567,"channel_id":"2001","guild_id":null,"webhook_id":null,"nonce":42,"content":null,"author":null,"mentions":null,
             "never_heard_of":{"a":[1,2,{"b":null}]},"attachments":[{"id":"9","filename":null,"new_field":true}],"message_reference":{"channel_id":"1","message_id":null}}
            """));

        var (message, _, _) = await world.RunAsync(r => r.GetMessageAsync(Room, Words, None));

        Assert.Equal(new Snowflake(12345678901234567), message!.Id);
        Assert.Equal(Room, message.ChannelId);
        Assert.True(message.GuildId.IsNone);
        Assert.True(message.MessageReference!.MessageId.IsNone);
        Assert.Equal("42", message.Nonce.ToString());
        Assert.Equal(new Snowflake(9), Assert.Single(message.Attachments!).Id);
    }

    // Source: reference, "User Agent"; the address must end with a slash or the version would be lost.
    [Fact]
    public void Client_Settings_SayWhoWeAre()
    {
        using var client = RestClient.Create(new RestOptions(new Uri("https://club.invalid/shedbot"), "1.2.3"), new HttpClientHandler());

        Assert.Equal("DiscordBot (https://club.invalid/shedbot, 1.2.3)", client.DefaultRequestHeaders.UserAgent.ToString());
        Assert.Equal("https://discord.com/api/v10/users/@me", new Uri(client.BaseAddress!, Routes.Me.Path).ToString());
        Assert.Throws<ArgumentException>(() => RestClient.Create(new RestOptions(new Uri("https://club.invalid"), "1") { BaseAddress = new Uri("https://platform.invalid/api/v10") }, new HttpClientHandler()));
    }

    private static Task Call(IDiscordRest r, string name)
    {
        IReadOnlyList<Command> commands = [new Command("n", CommandTypes.Slash, "d")];
        return name switch
        {
            "get_my_user" => r.GetMeAsync(None),
            "get_bot_gateway" => r.GetGatewayAsync(None),
            "create_message" => r.PostMessageAsync(Room, Hello, [], None),
            "update_message" => r.EditMessageAsync(Room, Words, Hello, [], None),
            "delete_message" => r.DeleteMessageAsync(Room, Words, None),
            "get_message" => r.GetMessageAsync(Room, Words, None),
            "list_messages" => r.ListMessagesAsync(Room, Words, 100, None),
            "list_messages, newest" => r.ListMessagesAsync(Room, default, 1, None),
            "create_thread_from_message" => r.StartThreadFromMessageAsync(Room, Words, new ThreadBody("t", AutoArchiveDuration: 1440), None),
            "create_thread" => r.StartThreadAsync(Room, new ThreadBody("t", ChannelTypes.PrivateThread, Invitable: false), None),
            "get_channel" => r.GetChannelAsync(Room, None),
            "update_channel" => r.EditChannelAsync(Room, new ChannelEdit(Archived: true), None),
            "add_thread_member" => r.AddThreadMemberAsync(Room, Rider, None),
            "get_active_guild_threads" => r.ActiveThreadsAsync(Club, None),
            "list_guild_roles" => r.ListRolesAsync(Club, None),
            "get_guild_member" => r.GetMemberAsync(Club, Rider, None),
            "list_application_commands" => r.ListCommandsAsync(App, default, None),
            "list_guild_application_commands" => r.ListCommandsAsync(App, Club, None),
            "bulk_set_application_commands" => r.PutCommandsAsync(App, default, commands, None),
            "bulk_set_guild_application_commands" => r.PutCommandsAsync(App, Club, commands, None),
            _ => r.OpenDmAsync(Rider, None),
        };
    }
}
