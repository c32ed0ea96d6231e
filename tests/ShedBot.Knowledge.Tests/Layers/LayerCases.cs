namespace ShedBot.Knowledge.Tests.Layers;

/// <summary>R090 to R109: a club's own layer, and what it must not weaken.</summary>
internal static class LayerCases
{
    private const string Wire = """
        faults:
          - id: wire-frayed
            is: the wire is frayed
            because: Its strands are broken.
            how common: rare
            shows as: {dark: {yes: likely}, wire-run: {hanging: unlikely}}
        repairs:
          - {id: new-wire, does: fit a new wire, mends: {wire-frayed: likely}, minutes: 9, steps: [{do: Fit it.}], prove: [Tug at it.]}

        """;

    private const string Look = "checks:\n  - id: feel-wire\n    tells: wire-run\n    ask: Does it hang?\n    why: It gets into the spokes.\n    hands on: yes\n    reliability: plain to see\n";

    private static readonly string[] Sharp =
        ["    minutes: 2\n", "    minutes: 2\n    hazard: medium\n    cautions: [{word: CAUTION, hazard: Sharp glass, consequence: cuts, avoid: wear gloves}]\n"];

    public static LayerCase[] All { get; } =
    [
        new("R059", Rim("lamp-glass"), "feel-rim", Rim("lamp-glass") + "    cautions: [{word: CAUTION, hazard: Sharp rim, consequence: cuts, avoid: wear gloves}]\n", Sharp),
        new("R059", Rim("lamp-glass"), "feel-rim", Rim("mud-flap") + "covers:\n  - {id: mud-flap, called: the flap, minutes: 1, how: [Lift it.]}\n", Sharp),
        new("R090", Mend("fault", "bulb-gone", "is, was: x, now: y"), "bulb-gone", Mend("fault", "bulb-loose", "is, was: x, now: y")),
        new("R090", Retire("fault", "bulb-gone"), "bulb-gone", Retire("fault", "bulb-loose")),
        new("R091", Mend("fault", "bulb-loose", "id, was: bulb-loose, now: bulb-slack"), "bulb-slack", Mend("fault", "bulb-loose", "is, was: x, now: y")),
        new("R091", Mend("check", "look-at-bulb", "minutes, add: \"3\""), "minutes", Mend("check", "look-at-bulb", "how, add: Use a torch.")),
        new("R091", Mend("repair", "fit-bulb", "steps / 1 / do, was: x, now: y"), "steps", Mend("repair", "fit-bulb", "does, was: x, now: y")),
        new("R092", Mend("fault", "bulb-loose", "is, was: x"), "bulb-loose", Mend("fault", "bulb-loose", "is, was: x, now: y")),
        new("R092", Mend("check", "look-at-bulb", "how, add: Use a torch., drop: x"), "add", Mend("check", "look-at-bulb", "how, add: Use a torch.")),
        new("R092", Mend("check", "look-at-bulb", "how, was: x, add: Use a torch."), "was", Mend("check", "look-at-bulb", "how, add: Use a torch.")),
        new("R093", Mend("fault", "bulb-loose", "is, was: x, now: y") + "  - {of: fault, id: bulb-loose, key: is, now: z}\n", "now: z",
            Mend("fault", "bulb-loose", "is, was: x, now: y") + "  - {of: fault, id: bulb-loose, key: because, now: z}\n"),
        new("R093", Wire + Mend("fault", "wire-frayed", "is, now: y"), "now: y", Wire + Mend("fault", "wire-off", "is, now: y")),
        new("R093", Retire("fault", "bulb-loose") + Mend("fault", "bulb-loose", "is, now: y"), "now: y", Retire("fault", "bulb-loose") + Mend("fault", "wire-off", "is, now: y")),
        new("R094", Many(2001), "about", Many(2000)),
        new("R095", "before hands on: {ask: Ready?}\n", "Ready?", "words: []\n"),
        new("R095", "could be either: [{id: which-lamp}]\n", "which-lamp", "words: []\n"),
        new("R096", Mend("fault", "bulb-loose", "how common, was: common, now: common"), "bulb-loose", Mend("fault", "bulb-loose", "how common, was: common, now: very common")),
        new("R096", Mend("complaint", "dark", "riders say, add: lamp is dead"), "lamp is dead", Mend("complaint", "dark", "riders say, add: lamp died")),
        new("R098", Mend("fault", "wire-off", "shows as / flickers / yes, was: unlikely, now: likely"), "now: likely", Mend("fault", "wire-off", "shows as / flickers / yes, was: unlikely, now: roughly even chance"),
            "because: There is no way for the current.", "because: There is no way for the current.\n    source: a printed manual, page 3"),
        new("R098", Mend("fault", "wire-off", "shows as / flickers / yes, was: unlikely, now: likely"), "now: likely", Mend("fault", "wire-off", "shows as / flickers / yes, was: unlikely, now: likely, source: another manual"),
            "because: There is no way for the current.", "because: There is no way for the current.\n    source: a printed manual, page 3"),
        new("R098", Mend("repair", "join-wire", "mends / wire-off, was: very likely, now: unlikely"), "now: unlikely", Mend("repair", "join-wire", "mends / wire-off, was: very likely, now: likely"),
            "does: put the wire back", "does: put the wire back\n    source: a printed manual, page 4"),
        new("R099", Wire.Replace("wire-frayed", "wires-off", StringComparison.Ordinal), "wires-off", Wire),
        new("R100", Retire("emergency", "lamp-smokes"), "lamp-smokes", "words: []\n"),
        new("R100", Mend("emergency", "lamp-smokes", "riders say, drop: smoke from the lamp"), "drop", Mend("emergency", "lamp-smokes", "riders say, add: the lamp is smoking"), "riders say: [smoke from the lamp]", "riders say: [smoke from the lamp, lamp on fire]"),
        new("R100", Mend("emergency", "lamp-smokes", "do now, drop: Stand clear"), "drop", Mend("emergency", "lamp-smokes", "do now, add: Call the club.")),
        new("R100", Mend("emergency", "lamp-smokes", "caution / word, was: WARNING, now: CAUTION"), "CAUTION", Mend("emergency", "lamp-smokes", "caution / word, was: WARNING, now: DANGER")),
        new("R100", Mend("emergency", "lamp-smokes", "ends coaching, was: yes, now: no"), "now: no", Mend("emergency", "lamp-smokes", "called, was: the lamp is smoking, now: smoke")),
        new("R102", Mend("finding", "wire-run", "states / hanging / stop riding, was: x, now: Look out."), "Look out", Mend("finding", "wire-run", "means, was: x, now: y")),
        new("R102", Mend("finding", "wire-run", "states / hanging / says, was: It hangs down, now: It is fine"), "It is fine", Mend("finding", "wire-run", "states / firm / says, was: Firm, now: All right")),
        new("R102", Mend("check", "follow-wire", "answers / hanging, was: x, now: It is fine"), "It is fine", Mend("check", "follow-wire", "answers / firm, now: It is fine")),
        new("R102", Retire("finding", "wire-run"), "wire-run", Retire("finding", "bulb-look")),
        new("R103", Retire("check", "follow-wire") + Look + "    minutes: 8\n", "follow-wire", Retire("check", "follow-wire") + Look + "    minutes: 7\n"),
        new("R103", Retire("check", "follow-wire") + Look + "    minutes: 1\n    hazard: low\n", "follow-wire", Retire("check", "follow-wire") + Look + "    minutes: 1\n    hazard: none\n"),
        new("R103", Retire("fault", "wire-off"), "wire-off", Retire("fault", "wire-off") + Wire),
        new("R103", Mend("fault", "wire-off", "shows as / wire-run / hanging, was: very likely, now: very unlikely"), "now", Mend("fault", "wire-off", "shows as / wire-run / hanging, was: very likely, now: unlikely")),
        new("R104", Mend("repair", "fit-bulb", "hazard, was: medium, now: low"), "now: low", Mend("repair", "fit-bulb", "hazard, was: medium, now: high")),
        new("R105", Put("fit-bulb", "CAUTION", "cuts fingers"), "fit-bulb", Put("fit-bulb", "WARNING", "cuts fingers"), "word: CAUTION", "word: WARNING"),
        new("R105", Put("fit-bulb", "CAUTION", "may be felt"), "fit-bulb", Put("fit-bulb", "CAUTION", "cuts fingers")),
        new("R106", Mend("check", "look-at-bulb", "hands on, was: yes, now: no"), "now: no", Mend("check", "follow-wire", "hands on, was: no, now: yes")),
        new("R107", Mend("word", "lamp", "riders say, add: smoke from the lamp"), "smoke from the lamp", Mend("word", "lamp", "riders say, add: bright thing")),
        new("R108", Mend("cover", "lamp-glass", "how, drop: Never open it wet"), "drop", Mend("cover", "lamp-glass", "how, drop: Lift the glass off"), "how: [Undo the screw, Lift the glass off]", "how: [Never open it wet, Undo the screw, Lift the glass off]"),
    ];

    private static string Rim(string cover) =>
        $"checks:\n  - id: feel-rim\n    tells: wire-run\n    ask: Is the rim whole?\n    why: It cuts.\n    minutes: 1\n    cover: {cover}\n    hands on: yes\n    reliability: plain to see\n";

    private static string Mend(string kind, string id, string rest) => $"mends:\n  - {{of: {kind}, id: {id}, key: {rest}}}\n";

    private static string Retire(string kind, string id) => $"retires:\n  - {{of: {kind}, id: {id}, because: not in our club}}\n";

    private static string Put(string id, string word, string consequence) =>
        $"repairs:\n  - id: {id}\n    does: fit a new bulb\n    mends: {{bulb-burnt: likely}}\n    minutes: 5\n    hazard: medium\n    steps: [{{do: Fit it.}}]\n    prove: [Spin the wheel.]\n"
        + $"    cautions: [{{word: {word}, hazard: Broken glass, consequence: {consequence}, avoid: hold the bulb in a cloth}}]\n";

    private static string Many(int count) =>
        "words:\n" + string.Concat(Enumerable.Range(0, count).Select(i => FormattableString.Invariant($"  - {{concept: thing {i}, riders say: [stuff {i}]}}\n")));
}
