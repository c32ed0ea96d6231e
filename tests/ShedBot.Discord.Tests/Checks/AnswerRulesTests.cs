using ShedBot.DiscordStandIn.Checks;

namespace ShedBot.Discord.Tests.Checks;

/// <summary>First answers to interactions, modals included. Source of the figures: the platform's pages on receiving and responding to
/// interactions and its component reference.</summary>
public sealed class AnswerRulesTests
{
    [Theory]
    [InlineData("""{"type":4,"data":{"content":"x","flags":64,"allowed_mentions":{"parse":[]}}}""")]
    [InlineData("""{"type":5}""")]
    [InlineData("""{"type":5,"data":{"flags":64}}""")]
    [InlineData("""{"type":6}""")]
    [InlineData("""{"type":7,"data":{"flags":32768,"components":[{"type":10,"content":"x"}],"allowed_mentions":{"parse":[]}}}""")]
    [InlineData("""{"type":8,"data":{"choices":[{"name":"x","value":"y"},{"name":"z","value":3}]}}""")]
    public void Violations_GoodAnswer_None(string body) => Holds.Clean(Answer(body));

    [Theory]
    [InlineData("""{"type":1}""", "type: an answer is 4 to 9")]
    [InlineData("""{"type":10,"data":{}}""", "type: an answer is 4 to 9")]
    [InlineData("""{"type":4}""", "data: is needed")]
    [InlineData("""{"type":9}""", "data: is needed")]
    [InlineData("""{"type":5,"data":{"flags":32768}}""", "data.flags: 32768 may not")]
    [InlineData("""{"type":5,"data":{"content":"x"}}""", "data.content: nothing can be said")]
    [InlineData("""{"type":6,"data":{"flags":0}}""", "data: nothing can be said")]
    [InlineData("""{"type":7,"data":{"content":"x","flags":64,"allowed_mentions":{"parse":[]}}}""", "data.flags: 64 may not")]
    [InlineData("""{"type":4,"data":{"content":"x"}}""", "data.allowed_mentions: must say")]
    [InlineData("""{"type":8,"data":{}}""", "data.choices: is needed")]
    [InlineData("""{"type":8,"data":{"choices":[{"name":"","value":"y"}]}}""", "data.choices[0].name: 1 to 100")]
    [InlineData("""{"type":8,"data":{"choices":[{"name":"x"}]}}""", "data.choices[0].value: is needed")]
    public void Violations_BadAnswer_Refused(string body, string start) => Holds.Refuses(start, Answer(body));

    [Fact]
    public void Violations_Suggestions_UpTo25()
    {
        static CheckedRequest Suggest(int count) => Answer($$$"""{"type":8,"data":{"choices":[{{{string.Join(',', Enumerable.Repeat("""{"name":"x","value":"y"}""", count))}}}]}}""");
        Holds.Clean(Suggest(25));
        Holds.Refuses("data.choices: 0 to 25", Suggest(26));
    }

    [Theory]
    [InlineData("""{"type":4,"custom_id":"q","style":2,"min_length":0,"max_length":4000}""")]
    [InlineData("""{"type":3,"custom_id":"q","min_values":1,"options":[{"label":"x","value":"y"}]}""")]
    [InlineData("""{"type":5,"custom_id":"q"}""")]
    [InlineData("""{"type":19,"custom_id":"q","min_values":0,"required":false}""")]
    [InlineData("""{"type":21,"custom_id":"q","options":[{"label":"x","value":"x"},{"label":"y","value":"y"}]}""")]
    [InlineData("""{"type":22,"custom_id":"q","options":[{"label":"x","value":"x","default":true},{"label":"y","value":"y","default":true}]}""")]
    [InlineData("""{"type":23,"custom_id":"q"}""")]
    public void Violations_GoodFormField_None(string field) => Holds.Clean(Form(Label(field)));

    [Theory]
    [InlineData("""{"type":2,"style":1,"label":"x","custom_id":"q"}""", "type: kind 2")]
    [InlineData("""{"type":10,"content":"x"}""", "type: kind 10")]
    [InlineData("""{"type":4,"custom_id":"q"}""", "style: 1 or 2")]
    [InlineData("""{"type":4,"style":1}""", "custom_id: is needed")]
    [InlineData("""{"type":4,"custom_id":"q","style":1,"label":"x"}""", "label: the label around it")]
    [InlineData("""{"type":4,"custom_id":"q","style":1,"disabled":true}""", "disabled: nothing in a modal")]
    [InlineData("""{"type":4,"custom_id":"q","style":1,"max_length":4001}""", "max_length: 1 to 4000")]
    [InlineData("""{"type":4,"custom_id":"q","style":1,"min_length":9,"max_length":8}""", "min_length: must not be above")]
    [InlineData("""{"type":3,"custom_id":"q","min_values":0,"options":[{"label":"x","value":"y"}]}""", "min_values: a required answer")]
    [InlineData("""{"type":19,"custom_id":"q","max_values":11}""", "max_values: 1 to 10")]
    [InlineData("""{"type":21,"custom_id":"q","options":[{"label":"x","value":"x"}]}""", "options: 2 to 10")]
    [InlineData("""{"type":22,"custom_id":"q","options":[]}""", "options: 1 to 10")]
    [InlineData("""{"type":23,"custom_id":"q","required":true}""", "required: a single tick")]
    public void Violations_BadFormField_Refused(string field, string start) => Holds.Refuses($"data.components[0].component.{start}", Form(Label(field)));

    [Theory]
    [InlineData("""{"type":18,"component":{"type":23,"custom_id":"q"}}""", "data.components[0].label: is needed")]
    [InlineData("""{"type":18,"label":"x"}""", "data.components[0].component: is needed")]
    [InlineData("""{"type":17,"components":[]}""", "data.components[0].type: kind 17")]
    public void Violations_BadFormPart_Refused(string part, string start) => Holds.Refuses(start, Form(part));

    [Fact]
    public void Violations_OldFormRow_RefusedForOursOnly()
    {
        var form = Form("""{"type":1,"components":[{"type":4,"custom_id":"q","style":1,"label":"x"}]}""");
        Holds.Refuses("data.components[0].type: kind 1 ", form);
        Holds.Clean(form, Holds.Theirs);
    }

    [Fact]
    public void Violations_FormLimits_BothSides()
    {
        static string Labelled(int length, string id) => $$$"""{"type":18,"label":"{{{Asked.Repeat('l', length)}}}","component":{"type":23,"custom_id":"{{{id}}}"}}""";
        Holds.Clean(Form(Labelled(45, "1"), Labelled(1, "2"), Labelled(1, "3"), Labelled(1, "4"), Labelled(1, "5")));
        Holds.Refuses("data.components[0].label: 1 to 45", Form(Labelled(46, "1")));
        Holds.Refuses("data.components: 1 to 5", Form([.. Enumerable.Range(1, 6).Select(id => Labelled(1, $"{id}"))]));
        Holds.Refuses("data.components: 1 to 5", Form());
        Holds.Refuses("data.components: the custom_id '1' is used twice", Form(Labelled(1, "1"), Labelled(1, "1")));
        Holds.Refuses("data.title: 1 to 45", Answer($$$"""{"type":9,"data":{"custom_id":"m","title":"{{{Asked.Repeat('t', 46)}}}","components":[{{{Labelled(1, "1")}}}]}}"""));
        Holds.Refuses("data.custom_id: is needed", Answer($$$"""{"type":9,"data":{"title":"t","components":[{{{Labelled(1, "1")}}}]}}"""));
    }

    private static CheckedRequest Answer(string body) => Asked.To("POST", Asked.Callback, body);

    private static CheckedRequest Form(params string[] parts) =>
        Answer($$$"""{"type":9,"data":{"custom_id":"m","title":"t","components":[{{{string.Join(',', parts)}}}]}}""");

    private static string Label(string field) => $$"""{"type":18,"label":"x","component":{{field}}}""";
}
