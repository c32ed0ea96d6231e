using System.Globalization;
using ShedBot.DiscordStandIn.Checks;

namespace ShedBot.Discord.Tests.Checks;

/// <summary>Limits of components in messages. Source of the figures: the platform's component reference.</summary>
public sealed class ComponentRulesTests
{
    [Theory]
    [InlineData("""{"type":10,"content":"x"}""")]
    [InlineData("""{"type":1,"components":[{"type":2,"style":5,"label":"x","url":"https://bot.invalid"}]}""")]
    [InlineData("""{"type":1,"components":[{"type":3,"custom_id":"a","options":[{"label":"x","value":"y"}]}]}""")]
    [InlineData("""{"type":1,"components":[{"type":5,"custom_id":"a"}]}""")]
    [InlineData("""{"type":9,"components":[{"type":10,"content":"x"}],"accessory":{"type":11,"media":{"url":"https://bot.invalid/a.png"},"description":"x"}}""")]
    [InlineData("""{"type":12,"items":[{"media":{"url":"https://bot.invalid/a.png"},"description":"x"}]}""")]
    [InlineData("""{"type":14,"spacing":2}""")]
    [InlineData("""{"type":17,"accent_color":16777215,"components":[{"type":14},{"type":1,"components":[{"type":2,"style":4,"custom_id":"a","emoji":{"name":"x"}}]}]}""")]
    public void Violations_GoodComponent_None(string component) => Holds.Clean(Panel(component));

    [Theory]
    [InlineData("""{"type":2,"style":1,"label":"x","custom_id":"a"}""", "components[0].type: kind 2")]
    [InlineData("""{"type":11,"media":{"url":"https://bot.invalid/a.png"}}""", "components[0].type: kind 11")]
    [InlineData("""{"type":18,"label":"x"}""", "components[0].type: kind 18")]
    [InlineData("""{"type":1,"components":[{"type":4,"custom_id":"a"}]}""", "components[0].components[0].type: kind 4")]
    [InlineData("""{"type":17,"components":[{"type":17,"components":[{"type":14}]}]}""", "components[0].components[0].type: kind 17")]
    [InlineData("""{"type":9,"components":[{"type":10,"content":"x"}]}""", "components[0].accessory: is needed")]
    [InlineData("""{"type":9,"components":[],"accessory":{"type":2,"style":1,"label":"x","custom_id":"a"}}""", "components[0].components: 1 to 3")]
    [InlineData("""{"type":10,"content":""}""", "components[0].content: 1 to 4000")]
    [InlineData("""{"type":14,"spacing":3}""", "components[0].spacing: 1 to 2")]
    [InlineData("""{"type":12,"items":[]}""", "components[0].items: 1 to 10")]
    [InlineData("""{"type":12,"items":[{"media":{}}]}""", "components[0].items[0].media.url: ")]
    [InlineData("""{"type":13,"file":{"url":"https://bot.invalid/a.txt"}}""", "components[0].file.url: ")]
    [InlineData("""{"type":17,"accent_color":16777216,"components":[{"type":14}]}""", "components[0].accent_color: ")]
    [InlineData("""{"type":1,"components":[]}""", "components[0].components: a row needs")]
    [InlineData("""{"type":1,"components":[{"type":5,"custom_id":"a"},{"type":2,"style":1,"label":"x","custom_id":"b"}]}""", "components[0].components: a row holds")]
    [InlineData("""{"type":1,"components":[{"type":5,"custom_id":"a"},{"type":5,"custom_id":"b"}]}""", "components[0].components: a row holds")]
    public void Violations_BadComponent_Refused(string component, string start) => Holds.Refuses(start, Panel(component));

    [Theory]
    [InlineData("""{"type":2,"style":1,"label":"x"}""", "custom_id: is needed")]
    [InlineData("""{"type":2,"style":1,"label":"x","custom_id":""}""", "custom_id: 1 to 100")]
    [InlineData("""{"type":2,"style":1,"custom_id":"a"}""", "label: a button needs")]
    [InlineData("""{"type":2,"style":1,"label":"x","custom_id":"a","url":"https://bot.invalid"}""", "url: only a link")]
    [InlineData("""{"type":2,"style":5,"label":"x"}""", "url: is needed")]
    [InlineData("""{"type":2,"style":5,"label":"x","url":"https://bot.invalid","custom_id":"a"}""", "custom_id: a link has none")]
    [InlineData("""{"type":2,"style":6}""", "sku_id: is needed")]
    [InlineData("""{"type":2,"style":6,"sku_id":"1","label":"x"}""", "label: a button of this style")]
    [InlineData("""{"type":2,"style":7,"label":"x","custom_id":"a"}""", "style: 1 to 6")]
    public void Violations_BadButton_Refused(string button, string start) => Holds.Refuses($"components[0].components[0].{start}", Panel(Row(button)));

    [Fact]
    public void Violations_ButtonTexts_UpToTheirLimits()
    {
        Holds.Clean(Panel(Row(Button(80, 100))));
        Holds.Refuses("components[0].components[0].label: 1 to 80", Panel(Row(Button(81, 100))));
        Holds.Refuses("components[0].components[0].custom_id: 1 to 100", Panel(Row(Button(80, 101))));
    }

    [Fact]
    public void Violations_ButtonsInARow_UpToFive()
    {
        Holds.Clean(Panel(Row(Buttons("a", 5))));
        Holds.Refuses("components[0].components: at most 5 buttons", Panel(Row(Buttons("a", 6))));
    }

    [Fact]
    public void Violations_CustomIdTwice_Refused() => Holds.Refuses("components: the custom_id 'a0' is used twice", Panel(Row(Buttons("a", 1)), Row(Buttons("a", 1))));

    [Fact]
    public void Violations_IdTwice_Refused()
    {
        Holds.Refuses("components: the id 3 is used twice", Panel("""{"type":14,"id":3}""", """{"type":14,"id":3}"""));
        Holds.Clean(Panel("""{"type":14,"id":0}""", """{"type":14,"id":0}"""));
    }

    [Fact]
    public void Violations_ComponentsCountingNested_UpToForty()
    {
        // Six rows of five with their rows make 36.
        var rows = Enumerable.Range(0, 6).Select(index => Row(Buttons(index.ToString(CultureInfo.InvariantCulture) + "-", 5))).ToArray();
        Holds.Clean(Panel([.. rows, .. Enumerable.Repeat("""{"type":14}""", 4)]));
        Holds.Refuses("components: at most 40 counting nested ones, not 41", Panel([.. rows, .. Enumerable.Repeat("""{"type":14}""", 5)]));
    }

    [Fact]
    public void Violations_TextOverAllTexts_UpTo4000()
    {
        Holds.Clean(Panel(Words(2000), Words(2000)));
        Holds.Refuses("components: at most 4000 characters", Panel(Words(2000), $$"""{"type":17,"components":[{{Words(2001)}}]}"""));
    }

    [Fact]
    public void Violations_OldStyle_FiveRowsAndNothingElse()
    {
        Holds.Clean(Old([.. Enumerable.Range(0, 5).Select(index => Row(Buttons($"{index}-", 5)))]));
        Holds.Refuses("components: at most 5 rows", Old([.. Enumerable.Range(0, 6).Select(index => Row(Buttons($"{index}-", 1)))]));
        Holds.Refuses("components[0].type: kind 10", Old("""{"type":10,"content":"x"}"""));
    }

    [Fact]
    public void Violations_EditWithoutTheFlag_MayBeEitherStyle() =>
        Holds.Clean(Asked.To("PATCH", Asked.OneMessage, """{"components":[{"type":10,"content":"x"}],"allowed_mentions":{"parse":[]}}"""));

    [Fact]
    public void Violations_SelectOptions_UpTo25()
    {
        Holds.Clean(Panel(Row(Select(25))));
        Holds.Refuses("components[0].components[0].options: 1 to 25", Panel(Row(Select(26))));
        Holds.Refuses("components[0].components[0].options: 1 to 25", Panel(Row(Select(0))));
    }

    [Theory]
    [InlineData("""{"type":3,"custom_id":"a","options":[{"label":"x","value":"y"},{"label":"z","value":"y"}]}""", "options: the value 'y'")]
    [InlineData("""{"type":3,"custom_id":"a","options":[{"label":"","value":"y"}]}""", "options[0].label: 1 to 100")]
    [InlineData("""{"type":3,"custom_id":"a","options":[{"label":"x"}]}""", "options[0].value: is needed")]
    [InlineData("""{"type":3,"custom_id":"a","options":[{"label":"x","value":"x","default":true},{"label":"y","value":"y","default":true}]}""", "options: 2 are chosen")]
    [InlineData("""{"type":3,"custom_id":"a","min_values":2,"max_values":1,"options":[{"label":"x","value":"y"}]}""", "min_values: must not be above")]
    [InlineData("""{"type":3,"custom_id":"a","max_values":26,"options":[{"label":"x","value":"y"}]}""", "max_values: 1 to 25")]
    [InlineData("""{"type":5,"custom_id":"a","options":[{"label":"x","value":"y"}]}""", "options: only a list of our own")]
    [InlineData("""{"type":6,"custom_id":"a","channel_types":[0]}""", "channel_types: only a list of channels")]
    [InlineData("""{"type":5}""", "custom_id: is needed")]
    public void Violations_BadSelect_Refused(string select, string start) => Holds.Refuses($"components[0].components[0].{start}", Panel(Row(select)));

    [Fact]
    public void Violations_Placeholder_UpTo150()
    {
        static string Picker(int length) => Row($$"""{"type":5,"custom_id":"a","placeholder":"{{Asked.Repeat('p', length)}}"}""");
        Holds.Clean(Panel(Picker(150)));
        Holds.Refuses("components[0].components[0].placeholder: 1 to 150", Panel(Picker(151)));
    }

    private static CheckedRequest Panel(params string[] components) => Asked.To("POST", Asked.Messages,
        $$$"""{"flags":32768,"components":[{{{string.Join(',', components)}}}],"allowed_mentions":{"parse":[]}}""");

    private static CheckedRequest Old(params string[] components) => Asked.To("POST", Asked.Messages,
        $$$"""{"content":"x","components":[{{{string.Join(',', components)}}}],"allowed_mentions":{"parse":[]}}""");

    private static string Row(string inside) => $$"""{"type":1,"components":[{{inside}}]}""";

    private static string Words(int length) => $$"""{"type":10,"content":"{{Asked.Repeat('a', length)}}"}""";

    private static string Button(int label, int id) =>
        $$"""{"type":2,"style":2,"label":"{{Asked.Repeat('l', label)}}","custom_id":"{{Asked.Repeat('i', id)}}"}""";

    private static string Buttons(string prefix, int count) =>
        string.Join(',', Enumerable.Range(0, count).Select(index => $$"""{"type":2,"style":1,"label":"x","custom_id":"{{prefix}}{{index}}"}"""));

    private static string Select(int options) =>
        $$"""{"type":3,"custom_id":"a","options":[{{string.Join(',', Enumerable.Range(0, options).Select(index => $$"""{"label":"x","value":"{{index}}"}"""))}}]}""";
}
