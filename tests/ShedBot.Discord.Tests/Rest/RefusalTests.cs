using System.Net;
using System.Text;
using ShedBot.Discord.Rest;
using static ShedBot.Discord.Tests.Rest.RestWorld;

namespace ShedBot.Discord.Tests.Rest;

/// <summary>Source of the numbers and their meaning: the platform's description, topics/opcodes-and-status-codes, "JSON Error Codes". What we make of each is our own.</summary>
public sealed class RefusalTests
{
    [Theory]
    [InlineData(404, Trouble.Gone, 10003, 10004, 10007, 10013)]
    [InlineData(404, Trouble.MessageGone, 10008)]
    [InlineData(400, Trouble.MessageGone, 30046)]
    [InlineData(404, Trouble.InteractionOver, 10015, 10062)]
    [InlineData(400, Trouble.InteractionOver, 40094)]
    [InlineData(400, Trouble.AlreadyAnswered, 40060)]
    [InlineData(400, Trouble.OurRequest, 10014, 10063, 30003, 30010, 30032, 30033, 30034, 40041, 40333)]
    [InlineData(400, Trouble.OurRequest, 0, 50005, 50006, 50035, 50109, 160004, 999999)]
    [InlineData(400, Trouble.Locked, 30047, 30048, 40061, 40066, 40067, 160005, 160006)]
    [InlineData(403, Trouble.Token, 40001, 50014)]
    [InlineData(400, Trouble.DmsTooFast, 40003)]
    [InlineData(429, Trouble.DmsTooFast, 40003)]
    [InlineData(400, Trouble.Forbidden, 40058, 50008, 50024)]
    [InlineData(403, Trouble.Forbidden, 50001, 50013, 0)]
    [InlineData(429, Trouble.Busy, 20016, 20028, 20029, 0)]
    [InlineData(400, Trouble.Busy, 40062)]
    [InlineData(503, Trouble.Busy, 130000, 0)]
    [InlineData(403, Trouble.DmRefused, 50007, 50278)]
    [InlineData(400, Trouble.DmRefused, 50033)]
    [InlineData(413, Trouble.ContentRefused, 40005, 50045)]
    [InlineData(400, Trouble.ContentRefused, 50046, 50110, 50123, 400001, 160002, 200000, 200001, 240000)]
    [InlineData(400, Trouble.Archived, 50083)]
    [InlineData(404, Trouble.Gone, 0)]
    [InlineData(500, Trouble.Busy, 0, 50035)]
    [InlineData(401, Trouble.Token, 0, 40001, 50014, 50027)]
    public void Judge_OnARouteOfTheBot_EachCodeHasItsMeaning(int status, object expected, params int[] codes)
    {
        foreach (var code in codes)
            Assert.Equal((code, expected), (code, (object)Refusal.Judge((HttpStatusCode)status, code, ofInteraction: false)));
    }

    [Theory]
    [InlineData(401, 50027)]
    [InlineData(401, 50014)]
    [InlineData(404, 10015)]
    [InlineData(404, 0)]
    public void Judge_OnARouteOfAnInteraction_TheTokenOfTheBotIsNotBlamed(int status, int code) =>
        Assert.Equal(Trouble.InteractionOver, Refusal.Judge((HttpStatusCode)status, code, ofInteraction: true));

    // The first is the example of the description, reference, "Error Messages".
    [Theory]
    [InlineData("""{"code":50035,"errors":{"activities":{"0":{"platform":{"_errors":[{"code":"BASE_TYPE_CHOICES","message":"Value must be one of ('desktop', 'android', 'ios')."}]},"type":{"_errors":[{"code":"BASE_TYPE_CHOICES","message":"Value must be one of (0, 1, 2, 3, 4, 5)."}]}}}},"message":"Invalid Form Body"}""", 50035, "activities.0.platform: BASE_TYPE_CHOICES; activities.0.type: BASE_TYPE_CHOICES")]
    [InlineData("""{"code":50035,"message":"Invalid Form Body","errors":{"_errors":[{"code":"APPLICATION_COMMAND_TOO_LARGE","message":"x"}]}}""", 50035, ": APPLICATION_COMMAND_TOO_LARGE")]
    [InlineData("""{"code":50035,"errors":{"my words":{"_errors":[{"code":"it said: my words","message":"my words"}]}}}""", 50035, "?: ?")]
    [InlineData("""{"code":"50035","message":null,"errors":null}""", 0, "")]
    [InlineData("""{"code":null}""", 0, "")]
    [InlineData("""{"code":1e99,"errors":{"_errors":{"a":1},"b":{"_errors":[1,null,{}]}}}""", 0, "b: ?")]
    [InlineData("[]", 0, "")]
    [InlineData("null", 0, "")]
    [InlineData("", 0, "")]
    [InlineData("<html>502</html>", 0, "")]
    [InlineData("""{"code":500""", 0, "")]
    public void Read_AnyBody_NeverThrowsAndQuotesNobody(string body, int code, string paths)
    {
        var refusal = Refusal.Read(Encoding.UTF8.GetBytes(body));

        Assert.Equal((code, paths), (refusal.Code, refusal.Paths));
    }

    [Fact]
    public void Read_DeepAndWideErrors_IsBounded()
    {
        var deep = string.Concat(Enumerable.Repeat("{\"a\":", 60)) + "1" + new string('}', 60);
        var wide = string.Join(',', Enumerable.Range(0, 500).Select(n => $$"""{"code":"E{{n}}"}"""));

        Assert.Equal("", Refusal.Read(Encoding.UTF8.GetBytes($$$"""{"code":1,"errors":{{{deep}}}}""")).Paths);
        Assert.Equal(10, Refusal.Read(Encoding.UTF8.GetBytes($$$"""{"code":1,"errors":{"_errors":[{{{wide}}}]}}""")).Paths.Split(';').Length);
    }

    [Fact]
    public async Task Refused_AnyCall_CarriesStatusCodeAndRoute()
    {
        using var world = new RestWorld(_ => Answers.Refusal(403, 50013));

        var (_, refused, _) = await world.RunAsync(r => r.GetChannelAsync(Room, CancellationToken.None));

        Assert.Equal(
            (Trouble.Forbidden, HttpStatusCode.Forbidden, 50013, "GET channels/{channel_id}"),
            (refused!.Trouble, refused.Status, refused.Code, refused.Route));
        Assert.Single(world.Requests);
    }

    [Fact]
    public async Task OpenDm_TooFast_IsNotRepeated()
    {
        using var world = new RestWorld(_ => Answers.Json(HttpStatusCode.TooManyRequests, """{"code":40003,"message":"made up","retry_after":1}""").With("X-RateLimit-Scope", "user"));

        Assert.Equal(Trouble.DmsTooFast, (await world.RunAsync(r => r.OpenDmAsync(Rider, CancellationToken.None))).Refused!.Trouble);
        Assert.Single(world.Requests);
    }
}
