using static ShedBot.Knowledge.Tests.Linting.LintCase;
using static ShedBot.Knowledge.Tests.Samples.LampRules;

namespace ShedBot.Knowledge.Tests.Linting;

/// <summary>R020 to R049: names, chances and reach.</summary>
internal static class MeaningCases
{
    private const string Leak = "seen anyway: {loose: almost no chance}", Burnt = "bulb-look: {black: likely}", Loose = "bulb-look: {loose: very likely}";

    private const string WireShows = "dark: {yes: very likely}\n      flickers: {yes: unlikely}\n      wire-run: {hanging: very likely}";

    private const string NewFinding = "  - id: wire-run\n";

    private static string Either(string means) => "\ncould be either:\n" + EitherItem(means);

    private static string EitherItem(string means) =>
        "  - id: which-lamp\n    called: which lamp it is\n    riders name: [the light]\n    and tell: [does nothing]\n    ask: Which lamp is that?\n"
        + "    why: They look alike.\n    other words: Is it the one in front?\n"
        + "    caution: {word: WARNING, hazard: Hot wire, consequence: burns skin, avoid: keep off}\n    until known: [Stop the wheel]\n    if unsure: Leave it.\n"
        + "    answers:\n      - {says: The one in front, means: dark}\n      - {says: The one behind, means: " + means + "}\n";

    private const string Triage =
        "before hands on:\n  ask: Is all of this so?\n  points: [The wheel stands still]\n  ready: Yes, all of it\n  not yet: Not yet\n  dangers:\n    - {says: It smokes, emergency: lamp-smokes}\n";

    public static LintCase[] All { get; } =
    [
        Of("R020", "- id: flickers", "- id: dark", "id: dark", "- id: bulb-burnt"),
        Of("R020", "- id: wire-run", "- id: dark", "id: dark", "- id: look-at-bulb"),
        Of("R020", "{id: black,", "{id: clear,", "Black inside", "{id: hanging,"),
        Of("R020", "is: no-bulb, times: 0", "is: years-ago, times: 2", "times: 2", "is: this-year, times: 2"),
        Of("R021", "tells: bulb-look", "tells: bulb-lok", "bulb-lok", "tells: dark"),
        Of("R021", Burnt, "bulb-lok: {black: likely}", "bulb-lok", "flickers: {yes: likely}"),
        Of("R021", "mends: {wire-off:", "mends: {wire-of:", "wire-of:", "mends: {bulb-loose:"),
        Of("R021", "minutes: 2\n    cover: lamp-glass", "minutes: 2\n    cover: lamp-gloss", "lamp-gloss", "minutes: 2"),
        Of("R021", "fact: bulb-age, is: years-ago", "fact: bulb-aeg, is: years-ago", "bulb-aeg", "fact: bulb-age, is: this-year"),
        Of("R021", "emergency: lamp-smokes", "emergency: lamp-smoke", "lamp-smoke}", "emergency: lamp-smokes"),
        new("R021", Text + Either("lamp-smoke"), "lamp-smoke}", Text + Either("lamp-smokes")),
        new("R021", Text + Either("dork"), "dork", Text + Either("dark")),
        new("R020", Text + Either("dark") + EitherItem("dark"), "id: which-lamp", Text + Either("dark") + EitherItem("dark").Replace("which-lamp", "which-bulb", StringComparison.Ordinal)),
        Of("R022", Burnt, "bulb-look: {blck: likely}", "blck", "bulb-look: {loose: likely}"),
        Of("R022", "dark: {yes: almost certain}", "dark: {always: almost certain}", "always", "dark: {yes: likely}"),
        Of("R022", "is: years-ago", "is: decades-ago", "decades-ago", "is: this-year"),
        Of("R022", "answers: {hanging:", "answers: {dangling:", "dangling", "answers: {firm:"),
        Of("R022", Leak, "seen anyway: {slack: almost no chance}", "slack", "seen anyway: {black: almost no chance}"),
        Of("R023", Burnt, "bulb-look: {clear: likely}", "clear: likely", Burnt),
        Of("R023", "dark: {yes: almost certain}", "dark: {no: almost certain}", "no: almost", "dark: {yes: likely}"),
        Of("R023", Leak, "seen anyway: {clear: likely}", "clear: likely", Leak),
        Of("R024", Triage, "", "", Triage),
        Of("R025", "- id: wire-off", "- id: something-else", "something-else", "- id: something-other"),
        new("R026", "about: {covers: nothing}\ncomplaints: []", "about", Text),
        new("R030", Bent(Leak, "seen anyway: {loose: unlikely}", Loose, "bulb-look: {loose: very unlikely}"), "loose: very unlikely",
            Bent(Leak, "seen anyway: {loose: very unlikely}", Loose, "bulb-look: {loose: unlikely}")),
        Of("R031", Burnt, "bulb-look: {black: very likely, loose: unlikely}", "black: very likely", "bulb-look: {black: likely, loose: unlikely}"),
        Of("R032", Leak, "seen anyway: {loose: likely, black: unlikely}", "loose: likely", "seen anyway: {loose: likely, black: very unlikely}"),
        new("R033", Bent(Leak, "seen anyway: {loose: unlikely}", Loose, "bulb-look: {loose: unlikely}"), "    bulb-look: {loose: unlikely}",
            Bent(Leak, "seen anyway: {loose: unlikely}", Loose, "bulb-look: {loose: roughly even chance}")),
        new("R034", Bent(Leak, "seen anyway: {loose: roughly even chance}", Burnt, "bulb-look: {black: very likely}"), "black: very likely",
            Bent(Leak, "seen anyway: {loose: unlikely}", Burnt, "bulb-look: {black: very likely}")),
        Of("R035", WireShows, WireShows.Replace("hanging: very likely", "hanging: very unlikely", StringComparison.Ordinal), "hanging: very unlikely", WireShows.Replace("hanging: very likely", "hanging: unlikely", StringComparison.Ordinal)),
        Of("R040", "tells: wire-run", "tells: bulb-look", "dark: {yes: very likely}", "tells: flickers"),
        Of("R041", WireShows, "dark: {yes: unlikely}\n      flickers: {yes: almost certain}\n      bulb-look: {loose: very likely}", "dark: {yes: unlikely}",
            "dark: {yes: unlikely}\n      flickers: {yes: likely}\n      bulb-look: {loose: very likely}"),
        new("R041", Bent(WireShows, "dark: {yes: unlikely}\n      flickers: {yes: very likely}\n      bulb-look: {loose: very likely}"), "dark: {yes: unlikely}",
            Bent(WireShows, "dark: {yes: unlikely}\n      flickers: {yes: very likely}\n      bulb-look: {loose: very likely}", "mends: {bulb-loose: almost certain}", "mends: {bulb-loose: almost certain, wire-off: likely}")),
        new("R042", Bent(NewFinding, Rust("") + NewFinding), "id: rust", Bent(NewFinding, Rust(", stop riding: It may snap.") + NewFinding)),
        new("R043", Bent(NewFinding, Rust("") + NewFinding, "tells: bulb-look", "tells: rust"), "tells: rust",
            Bent(NewFinding, Rust("") + NewFinding, "tells: bulb-look", "tells: rust", Burnt, "rust: {red: likely}")),
        new("R044", Bent("\nfindings:", Buzzes), "id: buzzes", Bent("\nfindings:", Buzzes, Burnt, "buzzes: {yes: likely}")),
        Of("R045", "    only if:\n      - {fact: glass-kind, is: [real-glass]}\n", "", "id: glass-kind", "    only if: [{fact: glass-kind, is: [clear-plastic]}]\n"),
        Of("R045", "    moved by:\n      - {fact: bulb-age, is: years-ago, times: 6}\n      - {fact: bulb-age, is: no-bulb, times: 0}\n", "", "id: bulb-age",
            "    moved by: [{fact: bulb-age, is: years-ago, times: 6}]\n"),
        new("R046", Bent(NewFinding, Rust("", phrases: "") + NewFinding, Burnt, "rust: {red: likely}"), "id: rust", Bent(NewFinding, Rust("") + NewFinding, Burnt, "rust: {red: likely}")),
        Of("R047", "times: 6", "times: 1", "times: 1", "times: 1.1"),
        new("R048", Bent("\nrepairs:", Hood), "id: hood", Bent("\nrepairs:", Hood, "minutes: 4\n", "minutes: 4\n    cover: hood\n")),
    ];

    private const string Buzzes = "  - id: buzzes\n    called: the lamp buzzes\n    in short: It hums.\n    riders say: [it buzzes]\n\nfindings:";

    private const string Hood = "  - id: hood\n    called: the hood\n    minutes: 1\n    how: [Lift it]\n\nrepairs:";

    private static string Rust(string more, string phrases = ", riders say: [it is rusty]") =>
        $"  - id: rust\n    means: how the bracket looks\n    states:\n      - {{id: bright, says: Bright}}\n      - {{id: red, says: Red with rust{phrases}{more}}}\n";
}
