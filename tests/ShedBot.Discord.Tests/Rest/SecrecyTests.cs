using System.Net;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;
using static ShedBot.Discord.Tests.Rest.RestWorld;

namespace ShedBot.Discord.Tests.Rest;

/// <summary>Neither a token nor a member's words leave by way of a log, an exception, a measurement or a record's text. House rule.</summary>
public sealed class SecrecyTests
{
    private const string Private = "my clutch will not let go";

    private static readonly CancellationToken None = CancellationToken.None;

    public static TheoryData<string> Ways => ["refused", "quoted", "late", "html", "dropped", "silent", "token", "unreadable"];

    [Theory]
    [MemberData(nameof(Ways))]
    public async Task EveryCall_HoweverItGoesWrong_TellsNothing(string way)
    {
        using var world = new RestWorld(_ => way switch
        {
            "refused" => Task.FromResult(Answers.Refusal(403, 50013, Private)),
            "quoted" => Task.FromResult(Answers.Json(HttpStatusCode.BadRequest, """{"code":50035,"message":"@","errors":{"content":{"_errors":[{"code":"@","message":"@"}]},"@":{"_errors":[{"code":"X"}]}}}""".Replace("@", Private, StringComparison.Ordinal))),
            "late" => Task.FromResult(Answers.TooMany("user", "0.2")),
            "html" => Task.FromResult(new HttpResponseMessage(HttpStatusCode.BadGateway) { Content = new StringContent(Private) }),
            "dropped" => Task.FromException<HttpResponseMessage>(new HttpRequestException("hung up")),
            "silent" => new TaskCompletionSource<HttpResponseMessage>().Task,
            "token" => Task.FromResult(Answers.Refusal(401, 0, Secret)),
            _ => Task.FromResult(Answers.Ok($"\"{Private}\"")),
        });
        var interaction = world.Interaction() with { Data = new InteractionData(CustomId: Private) };
        var body = new MessageBody(Private, Nonce: "n", EnforceNonce: true);
        var said = new List<string>();

        foreach (var call in new Func<IDiscordRest, Task>[]
        {
            r => r.PostMessageAsync(Room, body, [], None),
            r => r.PostMessageAsync(Room, body, [new Upload("plan.png", "image/png", new byte[] { 1 })], None),
            r => r.EditAnswerAsync(interaction, body, [], None),
            r => r.FollowUpAsync(interaction, body, [], None),
            r => r.AnswerAsync(interaction, new InteractionAnswer(AnswerTypes.Message, new InteractionAnswerData(Private)), [], None),
            r => r.StartThreadAsync(Room, new ThreadBody(Private), None),
            r => r.GetMeAsync(None),
        })
        {
            var (_, refused, _) = await world.RunAsync(async r =>
            {
                await call(r);
                return true;
            });
            said.Add(refused?.ToString() ?? "");
        }

        Assert.NotEmpty(world.Log.Lines);
        foreach (var text in said.Concat(world.Log.Lines.Select(l => l.Text)).Concat(world.Measured.Select(m => m.Tags)))
        {
            Assert.DoesNotContain(Secret, text, StringComparison.Ordinal);
            Assert.DoesNotContain(InteractionToken, text, StringComparison.Ordinal);
            Assert.DoesNotContain(Private, text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void ToString_OfEverythingThatHoldsASecret_TellsNothing()
    {
        var interaction = new Interaction(new Snowflake(1), App, 3, InteractionToken);
        var route = Routes.EditAnswer(interaction);
        var outgoing = new Outgoing(route, System.Text.Encoding.UTF8.GetBytes(Private), [], Repeat.Safe, default, default);

        foreach (var holder in new object[] { interaction, route, outgoing, Routes.Answer(interaction), Routes.FollowUp(interaction), new BotToken(Secret) })
        {
            Assert.DoesNotContain(InteractionToken, holder.ToString(), StringComparison.Ordinal);
            Assert.DoesNotContain(Secret, holder.ToString(), StringComparison.Ordinal);
            Assert.DoesNotContain(Private, holder.ToString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Handler_Settings_KeepPathsOutOfTracesAndFollowNobody()
    {
        using var handler = RestClient.Handler();

        Assert.Null(handler.ActivityHeadersPropagator);
        Assert.False(handler.AllowAutoRedirect);
        Assert.False(handler.UseCookies);
        Assert.Equal(TimeSpan.FromMinutes(5), handler.PooledConnectionLifetime);
        Assert.Equal(DecompressionMethods.All, handler.AutomaticDecompression);
    }
}
