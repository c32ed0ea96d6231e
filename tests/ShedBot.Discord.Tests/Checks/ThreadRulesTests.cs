using ShedBot.DiscordStandIn.Checks;

namespace ShedBot.Discord.Tests.Checks;

/// <summary>Threads. Source of the figures: the platform's channel reference (name 100, the four archive times, slow mode 21600).</summary>
public sealed class ThreadRulesTests
{
    private const string OnMessage = "/channels/{channel_id}/messages/{message_id}/threads", Channel = "/channels/{channel_id}";
    private static readonly CheckedRequest Alone = Asked.To("POST", Asked.Threads, """{"name":"A trouble","type":11}""");
    private static readonly CheckedRequest Post = Asked.To("POST", Asked.Threads, """{"name":"A trouble","message":{"content":"x","allowed_mentions":{"parse":[]}}}""");
    private static readonly CheckedRequest Change = Asked.To("PATCH", Channel, """{"archived":true}""");

    [Fact]
    public void Violations_GoodSamples_None() =>
        Assert.All([Alone, Post, Change, Asked.To("POST", OnMessage, """{"name":"A trouble"}""")], request => Holds.Clean(request));

    [Theory]
    [InlineData(60)]
    [InlineData(1440)]
    [InlineData(4320)]
    [InlineData(10080)]
    public void Violations_ArchiveTimeOfTheFour_Passes(int minutes) => Holds.Clean(Alone.With("auto_archive_duration", $"{minutes}"));

    [Theory]
    [InlineData("1441")]
    [InlineData("0")]
    [InlineData("\"1440\"")]
    public void Violations_ArchiveTimeOfOther_Refused(string minutes)
    {
        Holds.Refuses("auto_archive_duration: ", Alone.With("auto_archive_duration", minutes));
        Holds.Refuses("auto_archive_duration: ", Change.With("auto_archive_duration", minutes));
    }

    [Fact]
    public void Violations_Name_OneTo100()
    {
        Holds.Clean(Alone.With("name", $"\"{Asked.Repeat('n', 100)}\""));
        Holds.Refuses("name: 1 to 100", Alone.With("name", $"\"{Asked.Repeat('n', 101)}\""));
        Holds.Refuses("name: is needed", Alone.With("name", null));
        Holds.Refuses("name: 1 to 100", Change.With("name", "\"\""));
    }

    [Fact]
    public void Violations_SlowMode_UpTo21600()
    {
        Holds.Clean(Change.With("rate_limit_per_user", "21600"));
        Holds.Refuses("rate_limit_per_user: ", Change.With("rate_limit_per_user", "21601"));
    }

    [Fact]
    public void Violations_KindNotStated_RefusedForOurs()
    {
        Holds.Refuses("type: must be stated", Alone.With("type", null));
        Holds.Clean(Alone.With("type", null), Holds.Theirs);
        Holds.Refuses("type: a thread is 10, 11 or 12", Alone.With("type", "15"));
    }

    [Fact]
    public void Violations_Invitable_OnlyOnPrivate()
    {
        Holds.Clean(Alone.With("type", "12").With("invitable", "false"));
        Holds.Refuses("invitable: ", Alone.With("invitable", "false"));
        Holds.Clean(Alone.With("invitable", "false"), Holds.Theirs);
    }

    [Fact]
    public void Violations_PostBeginsOldStyle_OnlyThatPasses() =>
        Holds.Refuses("message.flags: 32768 may not", Post.With("message", """{"flags":32768,"components":[{"type":10,"content":"x"}],"allowed_mentions":{"parse":[]}}"""));

    [Fact]
    public void Violations_PostsMessageIsChecked_Refused() => Holds.Refuses("message.allowed_mentions: must say", Post.With("message", """{"content":"x"}"""));

    [Fact]
    public void Violations_Tags_UpToFive()
    {
        Holds.Clean(Post.With("applied_tags", """["1","2","3","4","5"]"""));
        Holds.Refuses("applied_tags: 0 to 5", Post.With("applied_tags", """["1","2","3","4","5","6"]"""));
    }

    [Fact]
    public void Violations_DirectMessageToNobody_Refused() => Holds.Refuses("recipient_id: is needed", Asked.To("POST", "/users/@me/channels", "{}"));
}
