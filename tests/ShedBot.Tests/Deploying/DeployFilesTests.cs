using System.Text.RegularExpressions;
using ShedBot.Practice;
using ShedBot.Serving;
using ShedBot.Starting;

namespace ShedBot.Tests.Deploying;

/// <summary>
/// What a machine without a container engine and without systemd can check of the files that operators use: a name that the program does not
/// know would be passed over without a word.
/// </summary>
public sealed partial class DeployFilesTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "deploy");

    /// <summary>By 'section:name'. The token and its file are read by name, see <see cref="TokenSource"/>.</summary>
    private static readonly HashSet<string> Known = new(
        [
            "Discord:Token", "Discord:TokenFile",
            .. Of(ChatSettings.Section, typeof(ChatSettings)), .. Of(ServeSettings.Section, typeof(ServeSettings)),
            .. Of(CoachSettings.Section, typeof(CoachSettings)), .. Of(PracticeSettings.Section, typeof(PracticeSettings)),
            "Logging:LogLevel:Default", "Logging:Console:FormatterName",
        ],
        StringComparer.OrdinalIgnoreCase);

    [Theory]
    [InlineData("Containerfile", 4)]
    [InlineData("compose.yaml", 1)]
    [InlineData("shedbot.service", 6)]
    [InlineData("shedbot.env.example", 5)]
    [InlineData("README.md", 2)]
    public void Settings_NamedInADeployFile_AreOnesTheProgramKnows(string file, int atLeast)
    {
        var named = Setting().Matches(Text(file)).Select(m => m.Groups["name"].Value.Replace("__", ":", StringComparison.Ordinal))
            .Where(name => name != "SECTION:NAME").ToList();
        Assert.True(named.Count >= atLeast, $"Only {named.Count} settings were found in {file}.");
        Assert.DoesNotContain(named, name => !Known.Contains(name));
    }

    [Fact]
    public void Settings_OfTheService_AreAllInTheOperatorsTable()
    {
        var table = Row().Matches(Text("README.md")).SelectMany(m => m.Groups["names"].Value.Split(", ")).ToHashSet(StringComparer.Ordinal);
        var service = Of(ChatSettings.Section, typeof(ChatSettings)).Concat(Of(ServeSettings.Section, typeof(ServeSettings)));
        Assert.Equal(["Coach:..."], table.Where(name => !Known.Contains(name)));
        Assert.DoesNotContain(service, name => !table.Contains(name));
    }

    /// <summary>What the build copies must be there, and must not be held back from the builder.</summary>
    [Fact]
    public void Containerfile_WhatItCopies_IsThereAndGoesToTheBuilder()
    {
        var copied = Copy().Matches(Text("Containerfile"))
            .SelectMany(m => m.Groups["all"].Value.Split(' ', StringSplitOptions.RemoveEmptyEntries)[..^1]).Select(s => s.TrimEnd('/')).ToList();
        var let = File.ReadLines(Path.Combine(Folder, "Containerfile.dockerignore")).Where(l => l.StartsWith('!')).Select(l => l[1..]).ToList();
        Assert.Contains("src", copied);
        Assert.DoesNotContain(copied, c => !Path.Exists(Path.Combine(Repository.Root, c)));
        Assert.Equal(let.Order(StringComparer.Ordinal), copied.Order(StringComparer.Ordinal));
    }

    /// <summary>Another start is worth it after a failed disk and a fault of ours; the rest waits for the operator.</summary>
    [Fact]
    public void Unit_CodesThatNeedTheOperator_AreNotStartedAgain()
    {
        var codes = Assert.Single(Prevented().Matches(Text("shedbot.service"))).Groups["codes"].Value;
        int[] expected = [ExitCodes.RulesRefused, ExitCodes.DataRefused, ExitCodes.SettingRefused, ExitCodes.ChatRefused];
        Assert.Equal(expected, codes.Split(' ').Select(int.Parse));
    }

    private static IEnumerable<string> Of(string section, Type settings) =>
        settings.GetProperties().Where(p => p.SetMethod is not null).Select(p => $"{section}:{p.Name}");

    private static string Text(string file) => File.ReadAllText(Path.Combine(Folder, file));

    [GeneratedRegex("SHEDBOT_(?<name>[A-Z]+(__[A-Z]+)+)")]
    private static partial Regex Setting();

    [GeneratedRegex(@"^\| (?<names>[A-Z][a-z]+:[A-Za-z:.]+(, [A-Z][a-z]+:[A-Za-z:.]+)*) \|", RegexOptions.Multiline)]
    private static partial Regex Row();

    [GeneratedRegex(@"^COPY (?!--)(?<all>.+?)\r?$", RegexOptions.Multiline)]
    private static partial Regex Copy();

    [GeneratedRegex(@"^RestartPreventExitStatus=(?<codes>[0-9 ]+?)\r?$", RegexOptions.Multiline)]
    private static partial Regex Prevented();
}
