using System.Collections.Immutable;
using ShedBot.Knowledge.Wording;
using static ShedBot.Knowledge.Shapes.PartShapes;

namespace ShedBot.Knowledge.Shapes;

/// <summary>Checks, covers and repairs: what a rider does.</summary>
internal static class WorkShapes
{
    public static ItemShape Check { get; } = new("check", "A way to learn a finding: a question from memory, or something to do at the bike.",
    [
        Must("id", Id()),
        Must("tells", new IdShape("The id of the finding or complaint it tells.")),
        Must("ask", Text("The question, one sentence.")),
        Must("why", Text("Why it is asked: what the answers would point to.")),
        May("how", Texts("What to do, in order. Leave it out for a question from memory.")),
        May("answers", new MapShape("State to what the rider sees, where the finding's own words do not serve.", Text("What the rider sees."))),
        May("show me", Text("Fuller help for someone who does not know the parts; may hold a text drawing.")),
        May("other words", Text("The same question put differently, for a second try.")),
        Must("minutes", Minutes),
        May("effort", Effort),
        May("tools", Tools),
        May("cover", Reference("cover")),
        May("hazard", HazardLevel),
        Must("hands on", YesNo("yes when hands go near the machine.")),
        Must("reliability", new WordShape("How far a beginner's answer can be trusted.",
            [.. ReliabilityWords.Rates.OrderBy(r => r.Value.Error).Select(r => r.Key)])),
        May("cautions", Cautions),
        .. OriginKeys,
    ]);

    public static ItemShape Cover { get; } = new("cover", "A shared piece of dismantling: paid once, then everything behind it is open.",
    [
        Must("id", Id()),
        Must("called", Text("What it is: the gear-side cover (five cross-head screws).")),
        Must("minutes", Minutes),
        May("effort", Effort),
        May("tools", Tools),
        Must("how", Texts("How to open it, in order.", 1)),
        .. OriginKeys,
    ])
    {
        // So none can ever lie behind itself, round whatever corners.
        Instead = ImmutableDictionary<string, string>.Empty.Add("cover", "A cover lies behind no other: say in its 'how' what comes off before it."),
    };

    public static ItemShape Part { get; } = new("part", "Something to buy or have ready.",
    [
        Must("name", Text("What it is called in the trade.")),
        Must("size", Text("A published size with its source, or how to measure the rider's own.")),
    ]);

    public static ItemShape Step { get; } = new("step", "One thing to do.",
    [
        Must("do", Text("What to do, one thing.")),
        May("note", Text("What it should look or feel like, or the usual mistake.")),
    ]);

    public static ItemShape Repair { get; } = new("repair", "A repair, told so that a beginner can do it in the right order.",
    [
        Must("id", Id()),
        Must("does", Text("Completes 'the repair: ...': fit a new thrust ball and adjust from the start.")),
        Must("mends", new MapShape("Fault to chance word: how often it mends it in the rider's own hands.", Chance("How often it mends it."), 1)),
        Must("minutes", Minutes),
        May("money", new NumberShape("Parts, in the club's currency.", 0, 10_000)),
        May("effort", Effort),
        May("cover", Reference("cover")),
        May("hazard", HazardLevel),
        May("tools", Tools),
        May("parts", new ListShape("What to buy or have ready.", Part)),
        May("cautions", Cautions),
        Must("steps", new ListShape("What to do, in order.", Step, 1)),
        May("prove", Texts("How to prove that it held, in order. Every repair needs at least one.")),
        May("watch", Texts("What to watch after, and when.")),
        May("prevent", Texts("What keeps it from coming back.")),
        May("for helper", Text("Only when a practised hand or licensed shop should do it: why.")),
        .. OriginKeys,
    ]);
}
