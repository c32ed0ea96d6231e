using System.Diagnostics;
using System.Globalization;
using System.Text;
using CsCheck;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Tests.Layers;

/// <summary>Files that are made to do harm: refused in words, quickly, or plain text to the last character.</summary>
public class HostileLayerTests
{
    private const string Start = LayerCase.About + "words:\n  - {concept: bulb, riders say: [";

    public static TheoryData<string, string, string> Bad => new()
    {
        { "anchor", "R005", LayerCase.About + "words: &a\n  - {concept: bulb, riders say: [pear]}\n" },
        { "alias", "R005", LayerCase.About + "words: *a\n" },
        { "tag", "R005", LayerCase.About + "words:\n  - {concept: !!binary YQ==, riders say: [pear]}\n" },
        { "merge key", "R010", LayerCase.About + "words:\n  - {<<: {concept: bulb}, riders say: [pear]}\n" },
        { "type of the runtime", "R005", "!System.Diagnostics.Process {about: x}\n" },
        { "second document", "R004", LayerCase.About + "---\nabout: {covers: y}\n" },
        { "deep", "R004 R006", "about: " + new string('[', 200_000) },
        { "deep in a mend", "R006", LayerCase.About + "mends: " + new string('[', 40) + new string(']', 40) + "\n" },
        { "direction mark", "R002", Start + "pe\u202Ear]}\n" },
        { "direction mark as an escape", "R002", Start + "\"pe\\u202Ear\"]}\n" },
        { "zero width", "R002", Start + "pe\u200Bar]}\n" },
        { "word joiner as an escape", "R002", Start + "\"pe\\u2060ar\"]}\n" },
        { "invisible letters of tags", "R002", Start + "pear\U000E0041\U000E0042]}\n" },
        { "blank filler", "R002", Start + "\u3164]}\n" },
        { "nothing", "R002", Start + "pe\0ar]}\n" },
        { "nothing as an escape", "R002", Start + "\"pe\\0ar\"]}\n" },
        { "half a character as an escape", "R002 R004", Start + "\"pe\\uD800ar\"]}\n" },
        { "line separator as an escape", "R002", Start + "\"pe\\u2028ar\"]}\n" },
        { "control character in a key", "R002", LayerCase.About + "\"wor\\u0007ds\": []\n" },
        { "tab", "R003", LayerCase.About + "words:\n\t- {concept: bulb}\n" },
        { "id in letters that look alike", "R015", LayerCase.About + "covers:\n  - {id: lamp-gl\u0430ss, called: x, minutes: 1, how: [Lift it.]}\n" },
        { "id that looks like another", "R099", LayerCase.About + "covers:\n  - {id: 1amp-g1ass, called: x, minutes: 1, how: [Lift it.]}\n" },
        { "two of one name", "R093", LayerCase.About + "words:\n  - {concept: bulb, riders say: [pear]}\n  - {concept: bulb, riders say: [apple]}\n" },
        { "key twice", "R007", LayerCase.About + "words: []\nwords: []\n" },
        { "list for a map", "R012", LayerCase.About + "mends: {of: fault}\n" },
        { "text for a file", "R004", "just words" },
        { "long text", "R017", Start + new string('a', 4001) + "]}\n" },
        { "edition of no number", "R014", "about: {covers: x, edition: newest}\n" },
        { "path of slashes", "R091", LayerCase.About + "mends:\n  - {of: fault, id: bulb-loose, key: / / /, now: x}\n" },
        { "path out of the rule", "R091", LayerCase.About + "mends:\n  - {of: fault, id: bulb-loose, key: ../../about / author, now: x}\n" },
        { "another rule's id", "R091", LayerCase.About + "mends:\n  - {of: fault, id: bulb-loose, key: id, now: wire-off}\n" },
        { "another's credit", "R091", LayerCase.About + "mends:\n  - {of: fault, id: bulb-loose, key: author, was: the made-up club, now: Mod Z}\n" },
        { "state of another name", "R091", LayerCase.About + "mends:\n  - {of: finding, id: wire-run, key: states / hanging / id, was: hanging, now: firm}\n" },
        { "new state of no id", "R015", LayerCase.About + "mends:\n  - {of: finding, id: wire-run, key: states / Nice One / says, now: Nice}\n" },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void Read_FileMadeToHarm_IsToldInWords(string what, string codes, string text)
    {
        var clock = Stopwatch.StartNew();

        var problems = Run(new RuleText("our-rules.yaml", Encoding.UTF8.GetBytes(text)));

        Assert.True(problems.Exists(p => codes.Contains(p.Code, StringComparison.Ordinal)), $"{what}: {string.Join('\n', problems)}");
        Assert.All(problems, p => Assert.True(p.Line >= 1 && p.Column >= 1 && p.What.EndsWith('.') && !p.ToString().Any(char.IsControl), p.ToString()));
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(5), clock.Elapsed.ToString());
    }

    /// <summary>YAML 1.2 takes no overlong or half forms of UTF-8 (RFC 3629, section 3).</summary>
    [Theory]
    [InlineData(new byte[] { 0xC0, 0xAF })]
    [InlineData(new byte[] { 0xE0, 0x80, 0xAF })]
    [InlineData(new byte[] { 0xED, 0xA0, 0x80 })]
    [InlineData(new byte[] { 0xFF, 0xFE, 0x61, 0x00 })]
    [InlineData(new byte[] { 0x80 })]
    public void Read_BytesThatAreNoUtf8_AreRefused(byte[] bytes) =>
        Assert.Equal("R002", Assert.Single(Run(new RuleText("our-rules.yaml", (byte[])[.. Encoding.UTF8.GetBytes(Start), .. bytes]))).Code);

    [Fact]
    public void Read_AliasesOfAliases_DoNotGrow()
    {
        var text = new StringBuilder(LayerCase.About + "a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
        for (var i = 1; i < 30; i++) text.Append(CultureInfo.InvariantCulture, $"a{i}: &a{i} [*a{i - 1}, *a{i - 1}, *a{i - 1}, *a{i - 1}, *a{i - 1}, *a{i - 1}, *a{i - 1}]\n");

        Assert.Contains(Run(RuleText.FromText("our-rules.yaml", text.ToString())), p => p.Code == "R005");
    }

    [Fact]
    public void Read_HugeFile_IsRefusedUnread()
    {
        var problem = Assert.Single(Run(new RuleText("our-rules.yaml", new byte[Layer.MaxBytes + 1])));

        Assert.Equal(("R001", "the file has 262,145 bytes; at most 262,144 are read."), (problem.Code, problem.What));
    }

    /// <summary>As many as fit are refused by number; the most that are taken are laid over the base in seconds, even when none of them fits.</summary>
    [Fact]
    public void LoadKept_ThousandsOfItems_AreBoundedInTime()
    {
        string Words(int count) => LayerCase.About + "words:\n" + string.Concat(Enumerable.Range(0, count).Select(i => FormattableString.Invariant($"- {{concept: w{i}, riders say: [x]}}\n")));
        string Mends(int count) => LayerCase.About + "mends:\n" + string.Concat(Enumerable.Range(0, count).Select(i => FormattableString.Invariant($"- {{of: fault, id: f{i}, key: is, now: x}}\n")));
        string Chain(int count) => LayerCase.About + "service:\n" + string.Concat(Enumerable.Range(0, count).Select(i => FormattableString.Invariant($"- {{id: s{i}, called: c{i}, does: x, why: x, minutes: 1, steps: [{{do: x}}], after: [{{events: [s{i + 1}], at: [1 hour]}}]}}\n")));
        var clock = Stopwatch.StartNew();

        Assert.Equal("R001", Assert.Single(Run(RuleText.FromText("our-rules.yaml", Words(10_000)))).Code);
        Assert.Equal("R094", Assert.Single(Run(RuleText.FromText("our-rules.yaml", Words(5_000)))).Code);
        Assert.Equal(Layer.MaxParts, LayeredRules.LoadKept(LampClub.Base, LampClub.Of(Mends(Layer.MaxParts))).SetAside.Length);
        Assert.NotNull(LayeredRules.LoadKept(LampClub.Base, LampClub.Of(Chain(1_500))).Knowledge);
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(30), clock.Elapsed.ToString());
    }

    /// <summary>What would call a whole room in a chat is text like any other here: kept to the letter, for whoever shows it to make harmless.</summary>
    [Theory]
    [InlineData("@everyone come and see")]
    [InlineData("<@123> said so, and <@&456> too")]
    [InlineData("`code` **loud** [here](http://example.invalid)")]
    [InlineData("{{7*7}} ${x} %s \\u0041")]
    [InlineData("'; drop table rules; --")]
    public void Apply_TextThatMeansSomethingElsewhere_StaysText(string text)
    {
        var key = new RuleKey(RuleKind.Fault, "bulb-loose");
        var layer = Layer.Empty.Apply([new MendValue(key, new("because"), "It touches its contact only now and then.", text, new Credit(text, text, text, new DateOnly(2026, 5, 1)))]).Layer!;

        var again = Layer.Read(RuleText.FromText("our-rules.yaml", layer.Write())).Layer!;

        Assert.Equal((text, text, text), (again.Mends[0].Now, again.Mends[0].Credit.Author, again.Mends[0].Credit.SaidBy));
        Assert.Equal(text, LayeredRules.Load(LampClub.Base, again).Knowledge!.Faults["bulb-loose"].Because);
    }

    [Fact]
    public void Read_TextsCutAndMixedAtRandom_NeverThrowAndPlaceEveryProblem()
    {
        var good = LampClub.Text.ReplaceLineEndings("\n");
        var scrap = Gen.OneOf<string>("", "\n", "  ", ": ", "- ", "[", "]", "{", "}", ",", "\"", "'", "|", "#", "&a ", "*a", "!x ", "---", "~", "of: check", "now: x", "drop: x", "key: id", "id: bulb-loose", "\0", "\u202E", "1e999", "was: common");
        Gen.Select(Gen.Int[0, good.Length], Gen.Int[0, 40], scrap).Array[1, 4].Sample(
            cuts =>
            {
                var text = cuts.Aggregate(good, (t, cut) => Math.Min(cut.Item1, t.Length) is var at ? t[..at] + cut.Item3 + t[Math.Min(t.Length, at + cut.Item2)..] : t);
                var read = Layer.Read(RuleText.FromText("our-rules.yaml", text));
                return (read.Layer is null) == read.Problems.Any(p => p.Severity == Severity.Error)
                    && read.Problems.All(p => p.Line >= 1 && p.Line <= text.Split('\n', '\r').Length + 1)
                    && (read.Layer is null || LayeredRules.LoadKept(LampClub.Base, read.Layer).Knowledge is not null);
            }, iter: 300);
    }

    private static List<Problem> Run(RuleText file)
    {
        var read = Layer.Read(file);
        return read.Layer is null ? [.. read.Problems] : [.. LayeredRules.Load(LampClub.Base, read.Layer).Problems];
    }
}
