using static ShedBot.Knowledge.Shapes.PartShapes;

namespace ShedBot.Knowledge.Shapes;

/// <summary>Service tasks: what keeps a sound bike sound.</summary>
internal static class ServiceShapes
{
    public static ItemShape After { get; } = new("event", "Something after which the task is due, once at each distance.",
    [
        Must("events", new ListShape("fitted (the day the kit was fitted), the ids of repairs, or the ids of other service tasks. The newest of them counts.",
            new IdShape("fitted, the id of a repair, or the id of another service task."), 1)),
        Must("at", Intervals("When it is due after the event: before the next ride, 1 riding day, 10 km.", 1)),
    ]);

    public static ItemShape OnlyIf { get; } = new("bike it is for", "The task is for bikes of which the fact is one of these, or not known.",
    [
        Must("fact", Reference("fact")),
        Must("is", new ListShape("Ids of its values.", new IdShape("The id of one of its values."), 1)),
    ]);

    public static ItemShape Task { get; } = new("service task", "What keeps a sound bike sound: what, why, how, and when it is due.",
    [
        Must("id", Id()),
        Must("called", Text("Completes 'due: ...': grease for bar, ball and cam.")),
        Must("does", Text("Completes 'time to ...': put a smear of fresh grease on bar, ball and cam.")),
        Must("why", Text("What it prevents, in a sentence or two for the rider.")),
        Must("minutes", Minutes),
        May("hazard", HazardLevel),
        May("tools", Tools),
        May("cautions", Cautions),
        Must("steps", new ListShape("What to do, in order.", WorkShapes.Step, 1)),
        May("every", Intervals("Due again at whichever comes first after it was last done.")),
        May("after", new ListShape("Events after which it is due once.", After)),
        May("wet counts", new NumberShape("Riding in the wet counts so many times for this task; 1 to 5.", -1000, 1000)),
        May("dusty counts", new NumberShape("Riding in dust counts so many times for this task; 1 to 5.", -1000, 1000)),
        May("only if", new ListShape("Which bikes it is for. All must hold; a fact that is not known holds nothing back.", OnlyIf)),
        May("done by", new ListShape("Repairs that count as this task done.", Reference("repair"))),
        May("reveals", new ListShape("Complaints that doing it may show.", Reference("complaint"))),
        May("before each ride", YesNo("yes for the look before every ride: it stands in the plan, and nobody is reminded of it.")),
        .. OriginKeys,
    ]);

    private static ListShape Intervals(string doc, int atLeast = 0) => new(doc, new IntervalShape("An amount and what it is counted in: 14 riding days, 10 hours, 50 km, 1 year."), atLeast);
}
