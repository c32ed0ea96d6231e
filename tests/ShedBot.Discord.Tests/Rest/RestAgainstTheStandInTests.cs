using System.Diagnostics.Metrics;
using Microsoft.Extensions.Logging.Abstractions;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;
using ShedBot.DiscordStandIn;
using ShedBot.DiscordStandIn.Checks;
using ShedBot.DiscordStandIn.Faults;

namespace ShedBot.Discord.Tests.Rest;

/// <summary>Over real sockets, against a platform that was written without our code and holds every request against the published description and its limits.</summary>
public sealed class RestAgainstTheStandInTests
{
    private const string Post = "POST /channels/{channel_id}/messages";

    private static readonly CancellationToken None = CancellationToken.None;

    [Theory]
    [InlineData(FaultKind.DroppedBeforeHandling)]
    [InlineData(FaultKind.DroppedAfterHandling)]
    [InlineData(FaultKind.DroppedMidBody)]
    [InlineData(FaultKind.ServerErrorJson)]
    [InlineData(FaultKind.ServerErrorHtml)]
    [InlineData(FaultKind.ServerErrorAfterHandling)]
    [InlineData(FaultKind.RateLimitedUser)]
    [InlineData(FaultKind.RateLimitedShared)]
    [InlineData(FaultKind.RateLimitedGlobal)]
    [InlineData(FaultKind.RateLimitedWithoutBody)]
    public async Task Post_WithANonceThroughAFault_TheMessageIsThereOnce(object fault)
    {
        await using var scene = await Scene.SetAsync();
        scene.Platform.Faults.Next((FaultKind)fault, Post);

        var message = await scene.Rest.PostMessageAsync(scene.Room, Say("hello") with { Nonce = "n1", EnforceNonce = true }, [], None);

        Assert.Equal(1, scene.Platform.Faults.Injected[(FaultKind)fault]);
        Assert.Equal(message.Id.Value, Assert.Single(scene.Platform.Messages(scene.Channel)).Id);
    }

    [Theory]
    [InlineData(FaultKind.DroppedAfterHandling, 1)]
    [InlineData(FaultKind.DroppedBeforeHandling, 0)]
    public async Task Post_WithoutANonceThroughADrop_IsNeverThereTwice(object fault, int there)
    {
        await using var scene = await Scene.SetAsync();
        scene.Platform.Faults.Next((FaultKind)fault, Post);

        var refused = await Assert.ThrowsAsync<DiscordException>(() => scene.Rest.PostMessageAsync(scene.Room, Say("hello"), [], None));

        Assert.Equal(Trouble.Busy, refused.Trouble);
        Assert.Equal(there, scene.Platform.Messages(scene.Channel).Count);
    }

    [Fact]
    public async Task StartThreadFromMessage_AnswerLost_GivesBackTheOneThread()
    {
        await using var scene = await Scene.SetAsync();
        var message = await scene.Rest.PostMessageAsync(scene.Room, Say("hello"), [], None);
        scene.Platform.Faults.Next(FaultKind.DroppedAfterHandling, "POST /channels/{channel_id}/messages/{message_id}/threads");

        var thread = await scene.Rest.StartThreadFromMessageAsync(scene.Room, message.Id, new ThreadBody("clutch drags", AutoArchiveDuration: 1440), None);

        Assert.Equal(message.Id, thread.Id);
        Assert.Single(scene.Platform.Threads(scene.Channel));
    }

    [Fact]
    public async Task Post_APicture_ArrivesByteForByteWithItsAltText()
    {
        await using var scene = await Scene.SetAsync();
        byte[] png = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0x00, 0xFF];

        await scene.Rest.PostMessageAsync(
            scene.Room,
            Say("look") with { Attachments = [new OutgoingAttachment("0", "plan.png", "The cover from above")] },
            [new Upload("plan.png", "image/png", png)],
            None);

        var file = Assert.Single(Assert.Single(scene.Platform.Messages(scene.Channel)).Files);
        Assert.Equal(("plan.png", "The cover from above"), (file.FileName, file.Description));
        Assert.Equal(png, file.Bytes.ToArray());
    }

    // Forty messages in four rooms under limits that are soon reached, while one answer in five goes wrong in some way.
    [Fact]
    public async Task ManyPosts_TightLimitsAndFaults_EachIsThereOnceAndInOrder()
    {
        await using var scene = await Scene.SetAsync(new StandInOptions { BucketLimit = 3, BucketWindow = TimeSpan.FromMilliseconds(300), GlobalLimit = 50 });
        var rooms = Enumerable.Range(0, 4).Select(n => scene.Platform.AddTextChannel(scene.Club, $"bay-{n}")).ToList();
        scene.Platform.Faults.RetryAfter = TimeSpan.FromMilliseconds(50);
        scene.Platform.Faults.Plan(7, new Dictionary<FaultKind, double>
        {
            [FaultKind.DroppedBeforeHandling] = 0.03,
            [FaultKind.DroppedAfterHandling] = 0.03,
            [FaultKind.DroppedMidBody] = 0.03,
            [FaultKind.ServerErrorAfterHandling] = 0.03,
            [FaultKind.RateLimitedUser] = 0.04,
            [FaultKind.RateLimitedGlobal] = 0.02,
            [FaultKind.NullFields] = 0.3,
            [FaultKind.UnknownFields] = 0.3,
        });

        await Task.WhenAll(rooms.SelectMany(room => Enumerable.Range(0, 10).Select(n => scene.Rest.PostMessageAsync(
            new Snowflake(room.Id), Say($"{n}") with { Nonce = $"{room.Id}-{n}", EnforceNonce = true }, [], None))));

        foreach (var room in rooms)
            Assert.Equal(Enumerable.Range(0, 10).Select(n => $"{n}"), scene.Platform.Messages(room).Select(m => m.Content));
        Assert.NotEmpty(scene.Platform.Faults.Injected);
    }

    [Fact]
    public async Task AWrongToken_IsRefusedOnceAndNothingMoreIsSent()
    {
        await using var scene = await Scene.SetAsync(token: "wrong.token.of-nobody");

        for (var n = 0; n < 3; n++)
            Assert.Equal(Trouble.Token, (await Assert.ThrowsAsync<DiscordException>(() => scene.Rest.GetMeAsync(None))).Trouble);

        Assert.Single(scene.Platform.Requests);
    }

    private static MessageBody Say(string words) => new(words, AllowedMentions: AllowedMentions.None);

    private sealed record Scene(StandIn Platform, ShedBot.DiscordStandIn.World.Guild Club, ShedBot.DiscordStandIn.World.Channel Channel, DiscordRest Rest, HttpClient Http, Meter Meter) : IAsyncDisposable
    {
        public Snowflake Room => new(Channel.Id);

        public static async Task<Scene> SetAsync(StandInOptions? options = null, string? token = null)
        {
            var checks = (options ?? new StandInOptions()) with { Checks = [new LimitsCheck(Strictness.Strict), ContractCheck.Find(Strictness.Strict)] };
            var platform = await StandIn.StartAsync(checks);
            var club = await platform.AddGuildAsync("Invented club");
            var room = platform.AddTextChannel(club, "workshop");
            var ours = new RestOptions(new Uri("https://club.invalid/shedbot"), "1.2.3") { BaseAddress = new Uri(platform.ApiAddress) };
            var http = RestClient.Create(ours, RestClient.Handler());
            var meter = new Meter(RestMeters.MeterName);
            var rest = new DiscordRest(http, new BotToken(token ?? checks.Token), ours, TimeProvider.System, () => 0, meter, NullLogger<DiscordRest>.Instance);
            return new Scene(platform, club, room, rest, http, meter);
        }

        public async ValueTask DisposeAsync()
        {
            Http.Dispose();
            Meter.Dispose();
            var violations = Platform.Violations;
            await Platform.DisposeAsync();
            Assert.Empty(violations);
        }
    }
}
