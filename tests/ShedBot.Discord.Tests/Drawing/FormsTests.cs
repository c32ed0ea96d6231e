using System.Text.Json;
using ShedBot.Coaching.Cases;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Drawing;

public sealed class FormsTests
{
    public static TheoryData<string> Questions => new("How much slack is there?", "", new string('q', 5000), "*Is* it <@1>?");

    // Limits: components reference and modal pages of the platform's documentation, API version 10.
    [Theory]
    [MemberData(nameof(Questions))]
    public void OwnWords_AnyQuestion_IsAFormWithinTheLimits(string question)
    {
        var answer = Forms.OwnWords(new CaseId("k7f3q9"), question);
        AssertForm(answer);
        Assert.Equal(new CustomId(CustomId.Form, new CaseId("k7f3q9"), ""), CustomId.Read(answer.Data!.CustomId));
    }

    [Theory]
    [InlineData(true, "private")]
    [InlineData(false, "open")]
    public void Trouble_PrivateOrNot_IsKeptInTheForm(bool @private, string expected)
    {
        var answer = Forms.Trouble(@private);
        AssertForm(answer);
        Assert.Equal(expected, CustomId.Read(answer.Data!.CustomId)!.Value.Rest);
    }

    // The shape of a sent form: modal submit interaction, in a label and in the older row.
    [Theory]
    [InlineData("""[{"type":18,"id":1,"component":{"type":4,"id":2,"custom_id":"words","value":" it drags "}}]""", "it drags")]
    [InlineData("""[{"type":10,"id":1},{"type":18,"id":2,"component":{"type":4,"id":3,"custom_id":"words","value":"a\nb"}}]""", "a\nb")]
    [InlineData("""[{"type":1,"components":[{"type":4,"custom_id":"words","value":"it slips"}]}]""", "it slips")]
    [InlineData("""[{"type":18,"component":{"type":4,"custom_id":"words","value":"  "}}]""", null)]
    [InlineData("""[{"type":18,"component":{"type":4,"custom_id":"other","value":"it slips"}}]""", null)]
    [InlineData("[]", null)]
    public void WordsOf_SentForm_GivesWhatWasWritten(string components, string? expected)
    {
        var json = $$"""{"id":"1","application_id":"2","type":5,"token":"t","data":{"custom_id":"sb1:form:k7f3q9:","components":{{components}} } }""";
        Assert.Equal(expected, Forms.WordsOf(JsonSerializer.Deserialize(json, WireJson.Default.Interaction)!));
    }

    [Fact]
    public void WordsOf_NoData_IsNothing() => Assert.Null(Forms.WordsOf(new Interaction(new Snowflake(1), new Snowflake(2), 5, "t")));

    private static void AssertForm(InteractionAnswer answer)
    {
        Assert.Equal(9, answer.Type);
        Assert.InRange(answer.Data!.Title!.Length, 1, 45);
        Assert.InRange(answer.Data.CustomId!.Length, 1, 100);
        Assert.InRange(answer.Data.Components!.Count, 1, 5);
        Assert.All(answer.Data.Components.Where(c => c.Type == 10), t => Assert.InRange(t.Content!.Length, 1, 4000));
        var label = Assert.Single(answer.Data.Components, c => c.Type == 18);
        Assert.InRange(label.Label!.Length, 1, 45);
        Assert.InRange(label.Description!.Length, 1, 100);
        Assert.Equal(4, label.Inner!.Type);
        Assert.InRange(label.Inner.MaxLength!.Value, 1, 4000);
    }
}
