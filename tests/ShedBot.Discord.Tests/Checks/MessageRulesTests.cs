using ShedBot.DiscordStandIn.Checks;

namespace ShedBot.Discord.Tests.Checks;

/// <summary>Limits of messages. Source of the figures: the platform's message reference (content 2000, embeds 6000 together, nonce 25,
/// allowed mentions); both sides of each boundary are tried.</summary>
public sealed class MessageRulesTests
{
    private static readonly CheckedRequest Plain = Asked.To("POST", Asked.Messages, """{"content":"x","allowed_mentions":{"parse":[]}}""");

    private static readonly CheckedRequest Panel = Asked.To("POST", Asked.Messages,
        """{"flags":32768,"components":[{"type":10,"content":"x"}],"allowed_mentions":{"parse":[]},"nonce":"n","enforce_nonce":true}""");

    private static readonly CheckedRequest Change = Asked.To("PATCH", Asked.OneMessage, """{"content":"x","allowed_mentions":{"parse":[]}}""");

    [Fact]
    public void Violations_GoodSamples_None() => Assert.All([Plain, Panel, Change], request => Holds.Clean(request));

    [Fact]
    public void Violations_Content_UpTo2000()
    {
        Holds.Clean(Plain.With("content", Text(2000)));
        Holds.Refuses("content: 0 to 2000", Plain.With("content", Text(2001)));
    }

    [Theory]
    [InlineData("content", "\"x\"")]
    [InlineData("embeds", """[{"title":"x"}]""")]
    [InlineData("poll", "{}")]
    [InlineData("sticker_ids", """["1"]""")]
    public void Violations_BesideComponentsOnly_Refused(string field, string value) => Holds.Refuses($"{field}: not beside", Panel.With(field, value));

    [Fact]
    public void Violations_TurningIntoComponentsOnly_OldPartsMayBeEmptied() =>
        Holds.Clean(Change.With("flags", "32768").With("content", "null").With("embeds", "[]").With("components", """[{"type":10,"content":"x"}]"""));

    [Fact]
    public void Violations_ComponentsOnlyWithout_Refused() => Holds.Refuses("components: a message of components", Panel.With("components", "[]"), Holds.Theirs);

    [Fact]
    public void Violations_NothingToSay_Refused() => Holds.Refuses("content: an empty message", Plain.With("content", null));

    [Theory]
    [InlineData(4)]
    [InlineData(4096)]
    public void Violations_FlagOfANewMessage_Passes(long flag) => Holds.Clean(Plain.With("flags", $"{flag}"));

    [Theory]
    [InlineData(64)]
    [InlineData(32)]
    [InlineData(128)]
    public void Violations_FlagNotForANewMessage_Refused(long flag) => Holds.Refuses($"flags: {flag} may not", Plain.With("flags", $"{flag}"));

    [Fact]
    public void Violations_PrivateFlag_OnlyOnAnswers()
    {
        var answer = Asked.To("POST", Asked.Further, """{"content":"x","flags":64,"allowed_mentions":{"parse":[]}}""");
        Holds.Clean(answer);
        Holds.Refuses("flags: 64 may not", answer with { Method = "PATCH", Route = Asked.Original });
        Holds.Refuses("flags: 4096 may not", Change.With("flags", "4096"));
    }

    [Fact]
    public void Violations_Nonce_UpTo25AndEnforced()
    {
        Holds.Clean(Panel.With("nonce", Text(25)));
        Holds.Refuses("nonce: 1 to 25", Panel.With("nonce", Text(26)));
        Holds.Refuses("enforce_nonce: ", Panel.With("enforce_nonce", null));
        Holds.Clean(Panel.With("enforce_nonce", "false"), Holds.Theirs);
        Holds.Refuses("nonce: enforce_nonce without", Panel.With("nonce", null));
    }

    [Fact]
    public void Violations_NobodySaidWhoMayBeCalled_RefusedForOurs()
    {
        Holds.Refuses("allowed_mentions: must say", Plain.With("allowed_mentions", null));
        Holds.Refuses("allowed_mentions: must say", Change.With("allowed_mentions", null));
        Holds.Clean(Plain.With("allowed_mentions", null), Holds.Theirs);
        Holds.Clean(Asked.To("PATCH", Asked.OneMessage, """{"components":[]}"""));
    }

    [Theory]
    [InlineData("""{"parse":["users"],"users":["1"]}""", "allowed_mentions.users: not beside")]
    [InlineData("""{"parse":["roles"],"roles":["1"]}""", "allowed_mentions.roles: not beside")]
    [InlineData("""{"parse":["user"]}""", "allowed_mentions.parse: no kind")]
    public void Violations_MentionsAtOdds_Refused(string mentions, string start) => Holds.Refuses(start, Plain.With("allowed_mentions", mentions), Holds.Theirs);

    [Theory]
    [InlineData("""{"parse":["users"]}""")]
    [InlineData("""{"users":["1"]}""")]
    public void Violations_MentionsTooWide_RefusedForOurs(string mentions)
    {
        Holds.Refuses("allowed_mentions.parse: ours", Plain.With("allowed_mentions", mentions));
        Holds.Clean(Plain.With("allowed_mentions", mentions), Holds.Theirs);
    }

    [Fact]
    public void Violations_MentionedUsers_UpTo100()
    {
        static string Users(int count) => $$"""{"parse":[],"users":[{{string.Join(',', Enumerable.Range(1, count).Select(id => $"\"{id}\""))}}]}""";
        Holds.Clean(Plain.With("allowed_mentions", Users(100)));
        Holds.Refuses("allowed_mentions.users: 0 to 100", Plain.With("allowed_mentions", Users(101)));
    }

    [Theory]
    [InlineData("title", 256)]
    [InlineData("description", 4096)]
    public void Violations_EmbedText_UpToItsLimit(string field, int most)
    {
        Holds.Clean(Plain.With("embeds", $$"""[{"{{field}}":{{Text(most)}}}]"""));
        Holds.Refuses($"embeds[0].{field}: 0 to {most}", Plain.With("embeds", $$"""[{"{{field}}":{{Text(most + 1)}}}]"""));
    }

    [Fact]
    public void Violations_EmbedsTogether_UpTo6000()
    {
        static string Two(int second) => $$"""[{"description":{{Text(3000)}}},{"footer":{"text":{{Text(1000)}}},"fields":[{"name":"n","value":{{Text(1000)}}}],"description":{{Text(second)}}}]""";
        Holds.Clean(Plain.With("embeds", Two(999)));
        Holds.Refuses("embeds: at most 6000", Plain.With("embeds", Two(1000)));
    }

    [Theory]
    [InlineData("""[{"color":16777216}]""", "embeds[0].color: ")]
    [InlineData("""[{"footer":{}}]""", "embeds[0].footer.text: ")]
    [InlineData("""[{"author":{"name":""}}]""", "embeds[0].author.name: ")]
    [InlineData("""[{"fields":[{"name":"","value":"v"}]}]""", "embeds[0].fields[0].name: ")]
    [InlineData("""[{},{},{},{},{},{},{},{},{},{},{}]""", "embeds: 0 to 10")]
    public void Violations_BadEmbed_Refused(string embeds, string start) => Holds.Refuses(start, Plain.With("embeds", embeds));

    [Fact]
    public void Violations_HalfASurrogatePair_SaidNotThrown() =>
        Holds.Refuses("body: holds a text that is not Unicode", Plain with { Body = System.Text.Json.JsonElement.Parse("""{"content":"\ud800"}""") });

    [Theory]
    [InlineData("[]")]
    [InlineData("\"x\"")]
    [InlineData("""{"components":{},"embeds":7,"attachments":"x","allowed_mentions":[],"flags":"many"}""")]
    [InlineData("""{"components":[1,null,{"type":"1","components":[[]]},{"type":9,"accessory":[]}],"embeds":[null,{"fields":[1]}],"attachments":[1]}""")]
    public void Violations_BodyOfAnyShape_NeverThrows(string body)
    {
        foreach (var route in new[] { Asked.Messages, Asked.Callback, Asked.Threads, Asked.Further, Asked.Commands })
        {
            _ = Holds.Ours.Violations(Asked.To("POST", route, body)).ToList();
            _ = Holds.Ours.Violations(Asked.To("PUT", route, $"[{body}]")).ToList();
        }
    }

    private static string Text(int length) => $"\"{Asked.Repeat('a', length)}\"";
}
