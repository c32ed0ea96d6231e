using ShedBot.DiscordStandIn.Checks;
using ShedBot.DiscordStandIn.Checks.Contract;

namespace ShedBot.Discord.Tests.Checks;

/// <summary>The reading of a description, on a small one made up here: so it is tested where the real one is absent.</summary>
public sealed class DescriptionTests
{
    private const string Small = """
        {"paths":{
          "/lists/{id}":{
            "parameters":[{"name":"id","in":"path","schema":{"type":"string"}}],
            "get":{"parameters":[{"name":"limit","in":"query","schema":{"type":"integer","minimum":1,"maximum":9}},
                                 {"name":"full","in":"query","schema":{"type":"boolean"}},
                                 {"name":"before","in":"query","schema":{"$ref":"#/components/schemas/SnowflakeType"}}]},
            "post":{"requestBody":{"required":true,"content":{"application/json":{"schema":{"$ref":"#/components/schemas/List"}}}}}}},
         "components":{"schemas":{
          "SnowflakeType":{"type":"string","pattern":"^(0|[1-9][0-9]*)$"},
          "Days":{"type":"integer","oneOf":[{"const":1},{"const":7}]},
          "List":{"type":"object","required":["name"],"properties":{
            "name":{"type":["string","null"],"maxLength":5},
            "owner":{"oneOf":[{"type":"null"},{"$ref":"#/components/schemas/SnowflakeType"}]},
            "days":{"oneOf":[{"type":"null"},{"$ref":"#/components/schemas/Days"}]},
            "names":{"type":"object","additionalProperties":{"type":"string"}},
            "items":{"type":"array","items":{"oneOf":[{"$ref":"#/components/schemas/Word"},{"$ref":"#/components/schemas/Box"}]}}}},
          "Word":{"type":"object","required":["type","text"],"properties":{"type":{"type":"integer","enum":[1]},"text":{"type":"string"}}},
          "Box":{"type":"object","required":["type"],"properties":{"type":{"type":"integer","enum":[2]},"size":{"type":"integer"}}}}}}
        """;

    private static readonly ContractCheck Strict = new(Description.Parse(Small, Strictness.Strict), ""), Lenient = new(Description.Parse(Small, Strictness.Lenient), "");

    [Theory]
    [InlineData("""{"name":"a","owner":"12","days":7,"names":{"anything":"x"},"items":[{"type":1,"text":"x"},{"type":2,"size":3}]}""")]
    [InlineData("""{"name":null,"owner":null,"days":null}""")]
    public void Violations_BodyFits_None(string body) => Holds.Clean(Post(body), Strict);

    [Theory]
    [InlineData("""{"name":"a","nmae":"b"}""", "/nmae: the platform knows no such field here")]
    [InlineData("""{"name":"abcdef"}""", "/name: ")]
    [InlineData("""{}""", "/: Required properties [\"name\"]")]
    [InlineData("""{"name":"a","owner":12}""", "/owner: is none of the kinds or values")]
    [InlineData("""{"name":"a","owner":"012"}""", "/owner: ")]
    [InlineData("""{"name":"a","days":2}""", "/days: is none of the kinds or values")]
    [InlineData("""{"name":"a","items":[{"type":3}]}""", "/items/0: is none of the kinds or values")]
    [InlineData("""{"name":"a","items":[{"type":2,"size":"big"}]}""", "/items/0/size: ")]
    [InlineData("""{"name":"a","items":[{"type":1,"text":"x"},{"type":2,"sise":3}]}""", "/items/1/sise: the platform knows no such field here")]
    [InlineData("""{"name":"a","items":[{"type":1}]}""", "/items/0: Required properties [\"text\"]")]
    public void Violations_BodyDoesNotFit_SaysWhereOnce(string body, string start) => Holds.Refuses(start, Post(body), Strict);

    [Fact]
    public void Violations_Lenient_IdAsNumberAndUnknownFieldPass()
    {
        Holds.Clean(Post("""{"name":"a","owner":12,"more":true}"""), Lenient);
        Holds.Refuses("/name: ", Post("""{"name":"abcdef"}"""), Lenient);
    }

    [Theory]
    [InlineData("limit", "9")]
    [InlineData("full", "1")]
    [InlineData("full", "True")]
    [InlineData("before", "12")]
    public void Violations_QueryFits_None(string name, string value) => Holds.Clean(Asked.To("GET", "/lists/{id}", null, (name, value)), Strict);

    [Theory]
    [InlineData("limit", "10", "query limit: the value")]
    [InlineData("full", "yes", "query full: the value")]
    [InlineData("before", "x", "query before: the value")]
    [InlineData("limits", "9", "query limits: the operation knows no such parameter")]
    [InlineData("id", "9", "query id: the operation knows no such parameter")]
    public void Violations_QueryDoesNotFit_SaysWhich(string name, string value, string start) =>
        Holds.Refuses(start, Asked.To("GET", "/lists/{id}", null, (name, value)), Strict);

    [Fact]
    public void Violations_BodyWhereNoneIsTaken_Refused() => Holds.Refuses("body: the operation takes none", Asked.To("GET", "/lists/{id}", "{}"), Strict);

    [Fact]
    public void Violations_NoBodyWhereOneIsNeeded_Refused() => Holds.Refuses("body: the operation needs one", Asked.To("POST", "/lists/{id}"), Strict);

    [Fact]
    public void Violations_FilesWhereNoneAreTaken_Refused() => Holds.Refuses("body: the operation takes no files", Post("""{"name":"a"}""").WithFiles(), Strict);

    [Theory]
    [InlineData("DELETE", "/lists/{id}")]
    [InlineData("GET", "/boxes/{id}")]
    public void Violations_UnknownOperation_Refused(string method, string route) => Holds.Refuses($"{method} {route}: the platform has no", Asked.To(method, route), Strict);

    [Fact]
    public void Violations_NoDescription_OffAndSilent()
    {
        var off = new ContractCheck(null, "off");
        Assert.False(off.IsOn);
        Holds.Clean(Asked.To("DELETE", "/nothing"), off);
    }

    [Fact]
    public void Violations_HalfASurrogatePair_SaidNotThrown() =>
        Assert.Single(Strict.Violations(Post("""{"name":"\ud800"}""")), reason => reason.Contains("Unicode", StringComparison.Ordinal));

    private static CheckedRequest Post(string body) => Asked.To("POST", "/lists/{id}", body);
}
