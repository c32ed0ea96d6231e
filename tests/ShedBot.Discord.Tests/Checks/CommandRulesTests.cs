using ShedBot.DiscordStandIn.Checks;

namespace ShedBot.Discord.Tests.Checks;

/// <summary>Commands as they are registered. Source of the figures: the platform's page on application commands (names, 25 options and
/// choices, 100 commands of the first kind and 15 of the others, 8000 characters a command).</summary>
public sealed class CommandRulesTests
{
    private const string Scope = "\"contexts\":[0,1],\"integration_types\":[0]";

    [Theory]
    [InlineData("""{"type":1,"name":"help","description":"x"}""")]
    [InlineData("""{"name":"help-me_2","description":"x","default_member_permissions":"8192"}""")]
    [InlineData("""{"name":"मदद","description":"x"}""")]
    [InlineData("""{"type":3,"name":"Look at This"}""")]
    [InlineData("""{"name":"bike","description":"x","options":[{"type":1,"name":"show","description":"x"},{"type":2,"name":"plan","description":"x","options":[{"type":1,"name":"show","description":"x"}]}]}""")]
    [InlineData("""{"name":"help","description":"x","options":[{"type":3,"name":"a","description":"x","required":true,"max_length":6000},{"type":3,"name":"b","description":"x","choices":[{"name":"x","value":"y"}]},{"type":4,"name":"c","description":"x","min_value":1,"max_value":9}]}""")]
    public void Violations_GoodCommand_None(string command) => Holds.Clean(All(command));

    [Theory]
    [InlineData("""{"name":"Help","description":"x"}""", "[0].name: 1 to 32 letters")]
    [InlineData("""{"name":"help me","description":"x"}""", "[0].name: 1 to 32 letters")]
    [InlineData("""{"name":"help\n","description":"x"}""", "[0].name: 1 to 32 letters")]
    [InlineData("""{"name":"","description":"x"}""", "[0].name: 1 to 32 letters")]
    [InlineData("""{"name":"help"}""", "[0].description: is needed")]
    [InlineData("""{"name":"help","description":""}""", "[0].description: 1 to 100")]
    [InlineData("""{"type":2,"name":"Look","description":"x"}""", "[0].description: a menu command")]
    [InlineData("""{"type":2,"name":"Look","options":[]}""", "[0].options: a menu command")]
    [InlineData("""{"name":"help","description":"x","default_member_permissions":"many"}""", "[0].default_member_permissions: ")]
    public void Violations_BadCommand_Refused(string command, string start) => Holds.Refuses(start, All(command));

    [Theory]
    [InlineData("""[{"type":3,"name":"a","description":"x"},{"type":3,"name":"b","description":"x","required":true}]""", "options: the required ones")]
    [InlineData("""[{"type":3,"name":"a","description":"x"},{"type":3,"name":"a","description":"x"}]""", "options: 'a' is used twice")]
    [InlineData("""[{"type":1,"name":"a","description":"x"},{"type":3,"name":"b","description":"x"}]""", "options: sub-commands and values")]
    [InlineData("""[{"type":2,"name":"a","description":"x","options":[{"type":2,"name":"b","description":"x"}]}]""", "options[0].options[0].type: groups")]
    [InlineData("""[{"type":1,"name":"a","description":"x","options":[{"type":1,"name":"b","description":"x"}]}]""", "options[0].options[0].type: sub-commands")]
    [InlineData("""[{"type":2,"name":"a","description":"x","options":[]}]""", "options[0].options: a group")]
    [InlineData("""[{"type":12,"name":"a","description":"x"}]""", "options[0].type: 1 to 11")]
    [InlineData("""[{"type":3,"name":"A","description":"x"}]""", "options[0].name: ")]
    [InlineData("""[{"type":3,"name":"a"}]""", "options[0].description: is needed")]
    [InlineData("""[{"type":3,"name":"a","description":"x","max_length":6001}]""", "options[0].max_length: 1 to 6000")]
    [InlineData("""[{"type":3,"name":"a","description":"x","min_value":1}]""", "options[0].min_value: only numbers")]
    [InlineData("""[{"type":4,"name":"a","description":"x","min_value":2,"max_value":1}]""", "options[0].min_value: must not be above")]
    [InlineData("""[{"type":6,"name":"a","description":"x","autocomplete":false}]""", "options[0].autocomplete: only words and numbers")]
    [InlineData("""[{"type":3,"name":"a","description":"x","autocomplete":true,"choices":[{"name":"x","value":"y"}]}]""", "options[0].choices: not beside")]
    [InlineData("""[{"type":3,"name":"a","description":"x","choices":[{"name":"x"}]}]""", "options[0].choices[0].value: is needed")]
    public void Violations_BadOptions_Refused(string options, string start) =>
        Holds.Refuses($"[0].{start}", All($$"""{"name":"help","description":"x","options":{{options}}}"""));

    [Fact]
    public void Violations_OptionsAndChoices_UpTo25()
    {
        static string Options(int count) => string.Join(',', Enumerable.Range(0, count).Select(index => $$"""{"type":3,"name":"o{{index}}","description":"x"}"""));
        static string Choices(int count) => string.Join(',', Enumerable.Range(0, count).Select(index => $$"""{"name":"c{{index}}","value":"{{index}}"}"""));
        Holds.Clean(All($$"""{"name":"help","description":"x","options":[{{Options(25)}}]}"""));
        Holds.Refuses("[0].options: 0 to 25", All($$"""{"name":"help","description":"x","options":[{{Options(26)}}]}"""));
        Holds.Clean(All($$"""{"name":"help","description":"x","options":[{"type":3,"name":"a","description":"x","choices":[{{Choices(25)}}]}]}"""));
        Holds.Refuses("[0].options[0].choices: 0 to 25", All($$"""{"name":"help","description":"x","options":[{"type":3,"name":"a","description":"x","choices":[{{Choices(26)}}]}]}"""));
    }

    [Fact]
    public void Violations_ChoiceValue_UpTo100()
    {
        static CheckedRequest Valued(int length) =>
            All($$"""{"name":"help","description":"x","options":[{"type":3,"name":"a","description":"x","choices":[{"name":"x","value":"{{Asked.Repeat('v', length)}}"}]}]}""");
        Holds.Clean(Valued(100));
        Holds.Refuses("[0].options[0].choices[0].value: 1 to 100", Valued(101));
    }

    [Fact]
    public void Violations_CommandsOfAKind_UpToTheirNumber()
    {
        static string[] Slash(int count) => [.. Enumerable.Range(0, count).Select(index => $$"""{"name":"c{{index}}","description":"x"}""")];
        static string[] Menu(int count) => [.. Enumerable.Range(0, count).Select(index => $$"""{"type":3,"name":"c{{index}}"}""")];
        Holds.Clean(All([.. Slash(100), .. Menu(15)]));
        Holds.Refuses("type 1: at most 100 commands, not 101", All(Slash(101)));
        Holds.Refuses("type 3: at most 15 commands, not 16", All(Menu(16)));
    }

    [Fact]
    public void Violations_NameTwice_RefusedWithinAKindOnly()
    {
        Holds.Refuses("name: 'help' is used twice", All("""{"name":"help","description":"x"}""", """{"type":1,"name":"help","description":"y"}"""));
        Holds.Clean(All("""{"name":"help","description":"x"}""", """{"type":3,"name":"help"}"""));
    }

    [Fact]
    public void Violations_LettersOfACommand_UpTo8000()
    {
        // 4 for "help", 1 for its description; ten options of 10 choices of 1 + 78 letters with 1 + 1 of their own make 7,920: 75 are left.
        static CheckedRequest Long(int description) => All($$"""{"name":"help","description":"{{Asked.Repeat('d', description)}}","options":[{{string.Join(',', Enumerable.Range(0, 10).Select(option =>
            $$"""{"type":3,"name":"{{(char)('a' + option)}}","description":"x","choices":[{{string.Join(',', Enumerable.Range(0, 10).Select(choice => $$"""{"name":"{{choice}}","value":"{{Asked.Repeat('v', 78)}}"}"""))}}]}"""))}}]}""");
        Holds.Clean(Long(76));
        Holds.Refuses("[0].name: at most 8000 characters over the whole command, not 8001", Long(77));
    }

    [Fact]
    public void Violations_LongestTranslationCounts_Refused()
    {
        static CheckedRequest Translated(int times) => All($$"""{"name":"help","description":"x","options":[{{string.Join(',', Enumerable.Range(0, times).Select(option =>
            $$"""{"type":1,"name":"o{{option}}","description":"x","options":[{{string.Join(',', Enumerable.Range(0, 20).Select(inner =>
                $$$"""{"type":3,"name":"i{{{inner}}}","description":"x","description_localizations":{"de":"{{{Asked.Repeat('d', 100)}}}","fr":"short"}}"""))}}]}"""))}}]}""");
        Holds.Clean(Translated(3));
        Holds.Refuses("[0].name: at most 8000 characters", Translated(4));
    }

    [Fact]
    public void Violations_WhereItMayBeUsed_StatedForAllClubsAndOnlyThere()
    {
        var bare = Asked.To("PUT", Asked.Commands, """[{"name":"help","description":"x"}]""");
        Holds.Refuses("[0].contexts: must be stated", bare);
        Holds.Clean(bare, Holds.Theirs);
        Holds.Clean(bare with { Route = Asked.GuildCommands });
        Holds.Refuses("[0].contexts: only a command for every club", Asked.To("PUT", Asked.GuildCommands, """[{"name":"help","description":"x","contexts":[0]}]"""));
    }

    [Fact]
    public void Violations_OneCommandAlone_IsCheckedToo() =>
        Holds.Refuses("name: 1 to 32 letters", Asked.To("POST", Asked.GuildCommands, """{"name":"Help","description":"x"}"""));

    private static CheckedRequest All(params string[] commands) =>
        Asked.To("PUT", Asked.Commands, $"[{string.Join(',', commands.Select(command => $"{command[..^1]},{Scope}}}"))}]");
}
