using System.Text.Json;
using ShedBot.Knowledge.Shapes;
using ShedBot.Knowledge.Tests.Loading;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Tests.Shapes;

public class RuleSchemaTests
{
    private static readonly string Path = System.IO.Path.Combine(ShippedRulesTests.Root(), "knowledge", RuleSchema.File);

    [Fact]
    public void Text_ShippedSchema_IsTheLoadersOwn()
    {
        if (Environment.GetEnvironmentVariable("SHEDBOT_WRITE_SCHEMA") == "1")
        {
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(Path)!);
            File.WriteAllText(Path, RuleSchema.Text);
        }

        Assert.Equal(RuleSchema.Text, File.ReadAllText(Path));
    }

    [Fact]
    public void Text_Keys_AreThoseTheLoaderTakes()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(Path));
        var check = schema.RootElement.GetProperty("$defs").GetProperty("check");

        Assert.Equal("https://json-schema.org/draft/2020-12/schema", schema.RootElement.GetProperty("$schema").GetString());
        Assert.Equal(WorkShapes.Check.Keys.Select(k => k.Name), check.GetProperty("properties").EnumerateObject().Select(p => p.Name));
        Assert.Equal(WorkShapes.Check.Keys.Where(k => k.Required).Select(k => k.Name), check.GetProperty("required").EnumerateArray().Select(r => r.GetString()));
        Assert.False(check.GetProperty("additionalProperties").GetBoolean());
    }

    [Fact]
    public void Text_Words_AreThoseTheCompilerKnows()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(Path));
        var kinds = schema.RootElement.GetProperty("$defs");

        Assert.Equal(ChanceWords.Scale.Select(s => s.Word), Words(kinds.GetProperty("value"), "how often"));
        Assert.Equal(FrequencyWords.Priors.Keys.Order(StringComparer.Ordinal), Words(kinds.GetProperty("fault"), "how common").Order(StringComparer.Ordinal));
        Assert.Equal(ReliabilityWords.Rates.Keys.Order(StringComparer.Ordinal), Words(kinds.GetProperty("check"), "reliability").Order(StringComparer.Ordinal));
        Assert.Equal(HazardWords.Levels.Keys.Order(StringComparer.Ordinal), Words(kinds.GetProperty("repair"), "hazard").Order(StringComparer.Ordinal));
        Assert.Equal(SignalWords.All, Words(kinds.GetProperty("caution"), "word"));
    }

    [Fact]
    public void Text_EveryReference_PointsAtADefinition()
    {
        using var schema = JsonDocument.Parse(RuleSchema.Text);
        var kinds = schema.RootElement.GetProperty("$defs").EnumerateObject().Select(p => p.Name).ToHashSet();
        var references = new List<string>();
        Collect(schema.RootElement);

        Assert.NotEmpty(references);
        Assert.All(references, r => Assert.Contains(r, kinds));

        void Collect(JsonElement at)
        {
            if (at.ValueKind == JsonValueKind.Array)
            {
                foreach (var item in at.EnumerateArray()) Collect(item);
            }

            if (at.ValueKind != JsonValueKind.Object) return;
            foreach (var property in at.EnumerateObject())
            {
                if (property.Name == "$ref") references.Add(Uri.UnescapeDataString(property.Value.GetString()!["#/$defs/".Length..]));
                else Collect(property.Value);
            }
        }
    }

    private static IEnumerable<string> Words(JsonElement kind, string key) =>
        kind.GetProperty("properties").GetProperty(key).GetProperty("enum").EnumerateArray().Select(w => w.GetString()!);
}
