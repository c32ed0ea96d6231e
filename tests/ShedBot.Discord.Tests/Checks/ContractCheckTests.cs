using ShedBot.DiscordStandIn.Checks;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.Checks;

/// <summary>The check against the platform's own published description (OpenAPI, version 10). That is not part of this project: where it
/// is absent these tests say so and compare nothing.</summary>
public sealed class ContractCheckTests(ITestOutputHelper output)
{
    private static readonly ContractCheck Ours = ContractCheck.Find(Strictness.Strict), Theirs = ContractCheck.Find(Strictness.Lenient);

    private const string Panel = """
        {"flags":32768,"components":[{"type":17,"accent_color":255,"components":[{"type":10,"content":".."},
         {"type":1,"components":[{"type":2,"style":1,"label":"..","custom_id":"sb1:.."}]}]}],"allowed_mentions":{"parse":[]},"nonce":"..","enforce_nonce":true}
        """;

    private const string Form = """
        {"type":9,"data":{"custom_id":"m","title":"t","components":[{"type":18,"label":"L","component":{"type":4,"custom_id":"q","style":2}}]}}
        """;

    private const string Command = """
        [{"name":"help","type":1,"description":"Ask about a trouble","default_member_permissions":"8192","contexts":[0,1],"integration_types":[0],
          "options":[{"type":3,"name":"trouble","description":"In your own words","required":true,"max_length":300}]}]
        """;

    [Theory]
    [InlineData("POST", Asked.Messages, Panel)]
    [InlineData("POST", Asked.Callback, Form)]
    [InlineData("POST", Asked.Callback, """{"type":4,"data":{"content":"x","flags":64,"allowed_mentions":{"parse":[]}}}""")]
    [InlineData("POST", Asked.Callback, """{"type":5,"data":{"flags":64}}""")]
    [InlineData("POST", Asked.Callback, """{"type":6}""")]
    [InlineData("POST", Asked.Callback, """{"type":8,"data":{"choices":[{"name":"a","value":"b"}]}}""")]
    [InlineData("POST", Asked.Threads, """{"name":"A trouble","type":11,"auto_archive_duration":1440}""")]
    [InlineData("POST", Asked.Threads, """{"name":"A trouble","message":{"content":"x"},"applied_tags":["12"]}""")]
    [InlineData("PATCH", "/channels/{channel_id}", """{"archived":true,"locked":false}""")]
    [InlineData("PATCH", Asked.Original, """{"flags":32768,"components":[{"type":10,"content":"x"}]}""")]
    [InlineData("PUT", Asked.Commands, Command)]
    [InlineData("POST", "/users/@me/channels", """{"recipient_id":"81"}""")]
    public void Violations_GoodSample_None(string method, string route, string body)
    {
        if (IsHere()) Holds.Clean(Asked.To(method, route, body), Ours);
    }

    [Theory]
    [InlineData("POST", Asked.Messages, """{"contnet":"x"}""", "/contnet: the platform knows no such field")]
    [InlineData("POST", Asked.Messages, """{"components":[{"type":2,"style":1,"label":"x","custom_id":"y"}]}""", "/components/0: is none of the kinds")]
    [InlineData("POST", Asked.Messages, """{"components":[{"type":1,"components":[{"type":2,"style":1,"lable":"x","custom_id":"y"}]}]}""", "/components/0/components/0/lable: the platform knows")]
    [InlineData("POST", Asked.Messages, """{"content":"x","allowed_mentions":{"users":[81]}}""", "/allowed_mentions/users/0: is none of the kinds")]
    [InlineData("POST", Asked.Messages, """{"content":"x","attachments":[{"id":0}]}""", "/attachments/0/id: ")]
    [InlineData("POST", Asked.Threads, """{"name":"x","type":11,"auto_archive_duration":1441}""", "/auto_archive_duration: is none of the kinds or values")]
    [InlineData("POST", Asked.Threads, """{"name":"x","type":11,"applied_tags":["12"]}""", "/applied_tags: the platform knows no such field")]
    [InlineData("POST", "/users/@me/channels", """{"recipient_id":81}""", "/recipient_id: is none of the kinds")]
    [InlineData("POST", Asked.Callback, """{"type":10}""", "body: is none of the shapes")]
    [InlineData("POST", Asked.Callback, """{"type":6,"data":{"title":"x"}}""", "/data/title: the platform knows no such field")]
    [InlineData("PUT", Asked.Commands, """[{"name":"help","description":"x","default_permission":true}]""", "/0/default_permission: the platform knows no such field")]
    [InlineData("PUT", Asked.Commands, """[{"name":"help","description":"x","default_member_permissions":"many"}]""", "/0/default_member_permissions: ")]
    public void Violations_BadSample_SaysWhy(string method, string route, string body, string start)
    {
        if (IsHere()) Holds.Refuses(start, Asked.To(method, route, body), Ours);
    }

    [Theory]
    [InlineData("POST", Asked.Messages, """{"content":"x","tts":false,"message_reference":{"message_id":81,"channel_id":82,"guild_id":83}}""")]
    [InlineData("POST", "/channels/{channel_id}/messages/{message_id}/threads", """{"name":"x","type":11,"rate_limit_per_user":null}""")]
    [InlineData("POST", "/users/@me/channels", """{"recipient_id":81}""")]
    public void Violations_HabitsOfOthers_PassWhenLenientOnly(string method, string route, string body)
    {
        if (!IsHere()) return;
        Holds.Clean(Asked.To(method, route, body), Theirs);
        Assert.NotEmpty(Ours.Violations(Asked.To(method, route, body)));
    }

    [Fact]
    public void Violations_Query_KnownPassesUnknownDoesNot()
    {
        if (!IsHere()) return;
        Holds.Clean(Asked.To("POST", Asked.Callback, """{"type":6}""", ("with_response", "true")), Ours);
        Holds.Refuses("query wait: ", Asked.To("POST", Asked.Callback, """{"type":6}""", ("wait", "true")), Ours);
        Holds.Refuses("query limit: ", Asked.To("GET", Asked.Messages, null, ("limit", "101")), Ours);
    }

    private bool IsHere()
    {
        if (!Ours.IsOn) output.WriteLine(Ours.About);
        return Ours.IsOn;
    }
}
