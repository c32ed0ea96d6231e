using System.Text;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Tests.Samples;
using static ShedBot.Knowledge.Tests.Linting.LintCase;

namespace ShedBot.Knowledge.Tests.Linting;

/// <summary>R001 to R019: the text of a file, and the values of a rule each by itself.</summary>
internal static class TextCases
{
    private const string Called = "called: the lamp flickers", Phrase = "- light comes and goes", Wire = "how: [Follow the wire with your eyes from the hub to the lamp]";

    public static LintCase[] All { get; } =
    [
        new("R001", OfSize(TextGate.MaxBytes + 1), "", OfSize(TextGate.MaxBytes)),
        Of("R002", Called, "called: the lamp\u0001 flickers", "called: the lamp\u0001", "called: the lamp \u00e9 flickers"),
        Of("R002", Called, "called: the \u202Elamp flickers", "\u202E", "called: the lamp \u05d0 flickers"),
        Of("R003", "    " + Called, "\t" + Called, Called, "    called: \"the lamp\\tflickers\""),
        Of("R004", Called, "called: \"the lamp flickers", "", "called: \"the lamp flickers\""),
        Of("R004", Called, "called: the lamp: it flickers", "it flickers", "called: \"the lamp: it flickers\""),
        Of("R004", "words:", "---\nwords:", "", "words:"),
        new("R004", "- a list\n- of things", "a list", LampRules.Text),
        new("R004", "", "", LampRules.Text),
        new("R004", "# only a comment\n", "", LampRules.Text),
        Of("R005", Called, "called: &lamp the lamp flickers", "&lamp", "called: \"&lamp the lamp flickers\""),
        Of("R005", Called, "called: *lamp", "*lamp", "called: \"*lamp\""),
        Of("R005", Called, "called: !lamp flickers", "!lamp", "called: lamp! flickers"),
        Of("R006", Wire, "how: " + Brackets(10), "[[[", "how: " + Brackets(9)),
        Of("R007", Called, $"{Called}\n    called: the lamp blinks", "the lamp blinks", Called),
        Of("R010", "in short: Light", "in shrot: Light", "in shrot", "in short: Light"),
        Of("R010", "says: It hangs down,", "says: It hangs, and swings,", "and swings", "says: \"It hangs, and swings\","),
        Of("R011", "    ask: How does the bulb look?\n", "", "look-at-bulb", "    ask: How?\n"),
        Of("R011", "avoid: hold the bulb in a cloth", "", "Broken glass", "avoid: use a cloth"),
        Of("R012", "riders say:\n      " + Phrase, "riders say: light comes and goes", "light comes", "riders say: [light comes and goes]"),
        Of("R012", Called, "called: [the lamp flickers]", "[the lamp", Called),
        Of("R012", "dark: {yes: almost certain}", "dark: almost certain", "dark: almost", "dark: {yes: almost certain}"),
        Of("R013", "dark: {yes: almost certain}", "dark: {yes: almost sure}", "almost sure", "dark: {yes: very likely}"),
        Of("R013", "dark: {yes: almost certain}", "dark: {yes: 97 %}", "97 %", "dark: {yes: very likely}"),
        Of("R013", "word: CAUTION", "word: Caution", "Caution", "word: NOTICE"),
        Of("R013", "hands on: no", "hands on: maybe", "maybe", "hands on: yes"),
        Of("R013", "hazard: medium", "hazard: middling", "middling", "hazard: high"),
        Of("R014", "minutes: 5\n", "minutes: 601\n", "601", "minutes: 600\n"),
        Of("R014", "minutes: 5\n", "minutes: -1\n", "-1", "minutes: 0\n"),
        Of("R014", "minutes: 5\n", "minutes: a while\n", "a while", "minutes: 4.5\n"),
        Of("R014", "minutes: 5\n", "minutes: NaN\n", "NaN", "minutes: 5.0\n"),
        Of("R014", "keeps for days: 90", "keeps for days: 1.5", "1.5", "keeps for days: 1"),
        Of("R015", "id: follow-wire", "id: Follow wire", "Follow wire", "id: follow-wire-2"),
        Of("R015", "id: follow-wire", "id: " + new string('a', 61), "aaa", "id: " + new string('a', 60)),
        Of("R016", Phrase, "- \"\"", "- \"\"", "- light"),
        Of("R016", Called, "called:", "called:", Called),
        Of("R017", "Light comes and goes while riding.", new string('x', 4001), "xxx", new string('x', 4000)),
        Of("R018", "date: 2026-03-31", "date: 2026-02-29", "2026-02-29", "date: 2028-02-29"),
        Of("R018", "date: 2026-03-31", "date: 31.3.2026", "31.3.2026", "date: 2026-01-31"),
        Of("R019", "riders say:\n      " + Phrase, "riders say: [ ]", "riders say: [ ]", "riders say: [flickers]"),
        Of("R019", "{yes: almost certain}", "{ }", "{ }", "{yes: likely}"),
    ];

    private static string Brackets(int depth) => new string('[', depth) + "x" + new string(']', depth);

    private static string OfSize(int bytes)
    {
        var text = new StringBuilder(LampRules.Text.ReplaceLineEndings("\n")).Append('\n');
        while (text.Length + 100 < bytes) text.Append('#', 99).Append('\n');
        return text.Append('#', bytes - text.Length).ToString();
    }
}
