using System.Text.RegularExpressions;
using CsCheck;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Knowledge.Tests.Layers;

public class NewIdTests
{
    [Theory]
    [InlineData("the little ball is missing", "little-ball-missing")]
    [InlineData("The screw's thread has gone!", "screws-thread-gone")]
    [InlineData("Öl läuft aus dem Gehäuse", "ol-lauft-aus-dem-gehause")]
    [InlineData("café – 6202 bearing", "cafe-6202-bearing")]
    [InlineData("is it on", "is-it-on")]
    [InlineData("сцепление", "rule")]
    [InlineData("", "rule")]
    [InlineData("@everyone <@123>", "everyone-123")]
    [InlineData("something else", "something-else-2")]
    [InlineData("one two three four five six seven eight", "one-two-three-four-five-six")]
    public void From_Words_GivesAName(string text, string name) => Assert.Equal(name, NewId.From(text, []));

    [Fact]
    public void From_TakenNames_CountsOn() =>
        Assert.Equal("little-ball-3", NewId.From("little ball", ["little-ball", "little-ball-2"]));

    [Theory]
    [InlineData(RuleKind.Fault, "bulb burnt", "bulb-burnt-2")]
    [InlineData(RuleKind.Fault, "switch worn", "switch-worn-2")]
    [InlineData(RuleKind.Finding, "dark", "dark-2")]
    [InlineData(RuleKind.Service, "fit bulb", "fit-bulb-2")]
    [InlineData(RuleKind.Check, "dark", "dark")]
    public void For_NameOfTheBaseOrTheClub_IsTakenWhereItWouldClash(RuleKind kind, string text, string name) =>
        Assert.Equal(name, NewId.For(kind, text, LampClub.Base, LampClub.Layer));

    [Fact]
    public void From_LongestWordTaken_KeepsTheLimit()
    {
        var name = NewId.From(new string('x', 300), [new string('x', 60)]);

        Assert.Equal(new string('x', 58) + "-2", name);
    }

    /// <summary>The form of an id is that of the format: ^[a-z0-9]+(-[a-z0-9]+)*$, 60 at most.</summary>
    [Fact]
    public void From_AnyTextAndNames_IsANameThatIsFree() =>
        Gen.Select(Gen.String[0, 200], Gen.OneOf(Gen.Const("ball"), Gen.Const("ball-2"), Gen.Const("rule"), Gen.String[0, 5]).Array[0, 5]).Sample((text, taken) =>
        {
            var name = NewId.From(text, taken);
            return Regex.IsMatch(name, "^[a-z0-9]+(-[a-z0-9]+)*$") && name.Length <= 60 && !taken.Contains(name) && name == NewId.From(text, taken);
        });
}
