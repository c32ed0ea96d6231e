using static ShedBot.Knowledge.Tests.Linting.LintCase;
using static ShedBot.Knowledge.Tests.Samples.LampRules;

namespace ShedBot.Knowledge.Tests.Linting;

/// <summary>R070 to R089, and the older rules where they reach service tasks.</summary>
internal static class ServiceCases
{
    private const string Every = "[14 riding days, 300 km]", Events = "events: [fitted, fit-bulb]", Times = "at: [before the next ride, 10 km]",
        OnlyIf = "{fact: glass-kind, is: [real-glass]}", EachRide = "    before each ride: yes", Follows = "      - {events: [look-at-clip], at: [1 riding day]}\n",
        Why = "    why: A loose wire gets into the spokes.\n", Steps = "    steps:\n      - do: Look at the clip.\n",
        Cloth = "    cautions:\n      - {word: NOTICE, hazard: A hot lamp, consequence: burns fingers, avoid: let it cool}\n";

    public static LintCase[] All { get; } = [.. Dates, .. Others];

    private static LintCase[] Dates =>
    [
        Of("R070", Every, "[14 ridingdays]", "every:", "[1 riding day]"),
        Of("R070", Every, "[riding days]", "every:", "[1 year]"),
        Of("R070", Every, "[14]", "every:", "[14 days]"),
        Of("R070", "at: [1 riding day]", "at: [after the next ride]", "at:", "at: [before the next ride]"),
        new("R071", Bent(EachRide, "", Follows, ""), "id: look-at-clip", Bent(EachRide, "")),
        new("R071", Bent(EachRide, "    before each ride: no", Follows, ""), "id: look-at-clip", Bent(EachRide, "    every: [1 year]", Follows, "")),
        Of("R072", Every, "[0 km]", "every:", "[1 km]"),
        Of("R072", Every, "[-1 hours]", "every:", "[1 hour]"),
        Of("R072", Every, "[before the next ride]", "every:", "[1 riding day]"),
        Of("R072", Every, "[11 years]", "every:", "[10 years]"),
        Of("R072", Every, "[1001 riding days]", "every:", "[1000 riding days]"),
        Of("R072", Every, "[1001 hours]", "every:", "[1000 hours]"),
        Of("R072", Every, "[20001 km]", "every:", "[20000 km]"),
        Of("R072", Times, "at: [-1 km]", "at:", "at: [0 km]"),
        Of("R073", Times, "at: [300 km]", "at:", "at: [299 km]"),
        Of("R073", Times, "at: [3 km, 14 riding days]", "14 riding days]", "at: [3 km, 14 days]"),
        Of("R077", EachRide, EachRide + "\n    every: [10 hours]", "before each ride", "    every: [10 hours]"),
        Of("R077", EachRide, EachRide + "\n    after: [{events: [fitted], at: [10 km]}]", "before each ride", "    before each ride: no\n    after: [{events: [fitted], at: [10 km]}]"),
        Of("R078", Every, "[14 riding days, 20 riding days]", "20 riding days", "[14 riding days, 20 days]"),
        Of("R078", Every, "[20 riding days, 14 riding days]", "14 riding days", "[14 riding days]"),
        Of("R078", Times, "at: [10 km, 1 km]", "1 km", "at: [1 km, 10 km]"),
        Of("R078", Times, "at: [10 km, 10 km]", "10 km", "at: [10 km, 10 hours]"),
    ];

    private static LintCase[] Others =>
    [
        Of("R010", "dusty counts: 3", "dusti counts: 3", "dusti", "dusty counts: 2"),
        Of("R011", Why, "", "id: look-at-clip", Why),
        Of("R011", Steps, "", "id: look-at-clip", Steps),
        Of("R019", Steps, "    steps: []\n", "steps:", Steps),
        Of("R020", "id: look-at-clip", "id: wipe-glass", "id: wipe-glass", "id: look-at-clips"),
        Of("R020", "id: wipe-glass", "id: join-wire", "id: join-wire", "id: wipe-wire"),
        Of("R021", Events, "events: [fited]", "fited", "events: [fitted]"),
        Of("R021", Events, "events: [tighten-bolb]", "tighten-bolb", "events: [tighten-bulb]"),
        Of("R021", OnlyIf, "{fact: glas-kind, is: [real-glass]}", "glas-kind", OnlyIf),
        Of("R021", "done by: [fit-bulb]", "done by: [fit-bolb]", "fit-bolb", "done by: [join-wire]"),
        Of("R021", "reveals: [dark]", "reveals: [bulb-look]", "reveals", "reveals: [flickers]"),
        Of("R022", OnlyIf, "{fact: glass-kind, is: [real-glas]}", "real-glas]", OnlyIf),
        Of("R025", "id: wipe-glass", "id: fitted", "id: fitted", "id: fitted-glass"),
        new("R052", Bent(Cloth, "", "hazard: low", "hazard: medium"), "hazard: medium", Bent("hazard: low", "hazard: medium")),
        Of("R053", Cloth, "", "hazard: low", Cloth),
        new("R057", Bent("  author: the made-up club\n", ""), "id: dark", Bent("  author: the made-up club\n", "  author: us\n")),
        Of("R074", "called: a firm wire", "called: A clean  lamp glass!", "A clean", "called: a clean lamp wire"),
        Of("R075", "dusty counts: 3", "dusty counts: 0.9", "0.9", "dusty counts: 1"),
        Of("R075", "dusty counts: 3", "wet counts: 5.1", "5.1", "wet counts: 5"),
        new("R076", Bent(Every, "[2 weeks]", Times, "at: [before the next ride]", "at: [1 riding day]", "at: [1 day]"), "dusty counts", Bent(Every, "[2 weeks]", Times, "at: [before the next ride]")),
        Of("R079", Events, "events: [wipe-glass]", "wipe-glass]", "events: [look-at-clip]"),
        Of("R080", OnlyIf, "{fact: glass-kind, is: [clear-plastic, real-glass]}", "glass-kind", "{fact: bulb-age, is: [this-year, years-ago]}"),
    ];
}
