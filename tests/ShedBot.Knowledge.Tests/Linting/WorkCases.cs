using static ShedBot.Knowledge.Tests.Linting.LintCase;
using static ShedBot.Knowledge.Tests.Samples.LampRules;

namespace ShedBot.Knowledge.Tests.Linting;

/// <summary>R050 to R069: work, origins and phrases.</summary>
internal static class WorkCases
{
    private const string Cautions = "    cautions:\n      - {word: CAUTION, hazard: Broken glass, consequence: cuts fingers, avoid: hold the bulb in a cloth}\n";

    private const string Wire = "Follow the wire with your eyes from the hub to the lamp", Hanging = "{id: hanging, says: It hangs down,";

    public static LintCase[] All { get; } =
    [
        Of("R050", "mends: {wire-off: very likely}", "mends: {bulb-loose: very likely}", "id: wire-off", "mends: {wire-off: very unlikely}"),
        Of("R051", "    prove: [Tug at it; it stays]\n", "", "id: join-wire", "    prove: [Tug at it]\n"),
        Of("R051", "    prove: [Tug at it; it stays]\n", "    prove:\n", "prove:", "    prove: [Tug at it]\n"),
        new("R052", Bent(Cautions, ""), "hazard: medium", Bent("hazard: medium", "hazard: high")),
        new("R052", Bent(Cautions, ""), "hazard: medium", Bent(Cautions, "", "hazard: medium", "hazard: low")),
        Of("R052", "minutes: 2\n", "minutes: 2\n    hazard: medium\n", "hazard: medium", "minutes: 2\n    hazard: low\n"),
        new("R053", Bent(Cautions, "", "hazard: medium", "hazard: low"), "hazard: low", Bent("hazard: medium", "hazard: low")),
        new("R053", Bent(Cautions, "", "hazard: medium", "hazard: low"), "hazard: low", Bent(Cautions, "", "hazard: medium", "hazard: none")),
        new("R054", Bent("hands on: yes", "hands on: no "), "hands on: no ", Bent("hands on: yes", "hands on: no ", "minutes: 2\n    cover: lamp-glass", "minutes: 2")),
        Of("R054", Wire, "Touch the wire with a screwdriver", "hands on: no", "Look for the screwdrivers on the wall"),
        Of("R054", "effort: 1\n", "tools: [tongs]\n", "hands on: no", "tools: []\n"),
        new("R055", Bent("tells: wire-run", "tells: bulb-look"), "id: hanging", Bent("tells: wire-run", "tells: bulb-look", Hanging, Hanging + " riders say: [wire hangs down],")),
        Of("R056", "size: match the figures stamped on the old one", "size: 6 mm", "6 mm", "size: 6 mm is usual; measure your own"),
        Of("R056", "size: match the figures stamped on the old one", "size: 8 by 20", "8 by 20", "size: 8 by 20 (DIN 625)"),
        Of("R056", "size: match the figures stamped on the old one", "size: 8 in a benchmark", "benchmark", "size: the same kind"),
        Of("R057", "  author: the made-up club\n", "", "id: dark", "  author: us\n"),
        Of("R057", "  source: common practice\n", "", "id: dark", "  source: a manual\n"),
        Of("R057", "  date: 2026-03-31\n", "", "id: dark", "  date: 2026-04-01\n"),
        Of("R058", "watch: [Look again after a week]", "watch: [Look again, after a week]", "watch:", "watch: [\"Look again, after a week\"]"),
        Of("R058", "how: [Undo the screw, Lift the glass off]", "how: [Undo the screw, lift the glass off]", "how:", "how: [Undo the screw., lift the glass off]"),
        Of("R060", "- light comes and goes", "- Lamp is dead!", "Lamp is dead!", "- lamp is nearly dead"),
        Of("R060", "riders say: [smoke from the lamp]", "riders say: [lamp  is dead]", "lamp  is dead", "riders say: [lamp is deadly hot]"),
        Of("R060", "{id: loose, says: It wobbles in its socket}", "{id: loose, says: It wobbles, riders say: [Bulb is black]}", "It wobbles", "{id: loose, says: It wobbles, riders say: [bulb is black and loose]}"),
        Of("R061", "- light comes and goes", "- \"?!\"", "?!", "- \"dark?!\""),
        Of("R062", "- lamp is dead", "- No light, at all", "No light,", "- no light at all today"),
        Of("R063", "    riders ask: [what bulb do I need]\n", "", "id: which-bulb", "    riders ask: [which bulb]\n"),
    ];
}
