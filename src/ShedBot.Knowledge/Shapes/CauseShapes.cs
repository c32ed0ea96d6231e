using ShedBot.Knowledge.Wording;
using static ShedBot.Knowledge.Shapes.PartShapes;

namespace ShedBot.Knowledge.Shapes;

/// <summary>Complaints, findings, facts and faults: what a rider sees, and what causes it.</summary>
internal static class CauseShapes
{
    public static ItemShape Complaint { get; } = new("complaint", "A trouble as a rider would name it.",
    [
        Must("id", Id()),
        Must("called", Text("Completes 'the trouble is that ...': the clutch drags.")),
        Must("in short", Text("One sentence that tells it from its neighbours.")),
        Must("riders say", Texts("Example phrases in riders' own words.", 1)),
        .. OriginKeys,
    ]);

    public static ItemShape State { get; } = new("state", "One way it can be.",
    [
        Must("id", Id()),
        Must("says", Text("The answer as a rider would give it.")),
        May("riders say", Texts("Phrases with which riders volunteer it.")),
        May("stop riding", Text("Only when the bike must not be ridden: why, and what to do now.")),
    ]);

    public static ItemShape Finding { get; } = new("finding", "Something that can be seen, felt or told.",
    [
        Must("id", Id()),
        Must("means", Text("What it is about: how the arm moves when the lever is pulled.")),
        Must("states", new ListShape("The normal state first, then the others.", State, 2)),
        May("seen anyway", new MapShape("State to chance word: how often it is seen with nothing in the rules to cause it. Default: 1 % a state.", Chance("How often."))),
        .. OriginKeys,
    ]);

    public static ItemShape FactValue { get; } = new("value", "One answer.",
    [
        Must("id", Id()),
        Must("says", Text("The answer as a rider would give it.")),
        Must("how often", Chance("The share of bikes that come with it.")),
        May("riders say", Texts("Phrases with which riders volunteer it.")),
    ]);

    public static ItemShape Fact { get; } = new("fact", "A fact of the bike that moves the chances of faults.",
    [
        Must("id", Id()),
        Must("called", Text("What it is: when the clutch was last worked on.")),
        Must("ask", Text("The question that fills it.")),
        Must("values", new ListShape("The usual one first.", FactValue, 2)),
        Must("keeps for days", new NumberShape("After so many days it is asked again.", 1, 3650, Whole: true)),
        .. OriginKeys,
    ]);

    public static ItemShape Condition { get; } = new("condition", "When a fact has this value, the odds of the fault are multiplied.",
    [
        Must("fact", Reference("fact")),
        Must("is", new IdShape("The id of one of its values.")),
        Must("times", new NumberShape("Odds times; above 1 makes the fault likelier, below 1 less likely, 0 takes it out.", 0, 1000)),
    ]);

    public static ItemShape Fault { get; } = new("fault", "A cause.",
    [
        Must("id", Id()),
        Must("is", Text("Completes 'most likely ...': the small thrust ball is missing from the push chain.")),
        Must("because", Text("Why it gives the trouble, in two or three sentences for the rider.")),
        Must("how common", new WordShape("How common it is among machines that come with a trouble.",
            [.. FrequencyWords.Priors.OrderByDescending(p => p.Value).Select(p => p.Key)])),
        Must("shows as", new MapShape("Finding or complaint, then state, then a chance word: if only this is wrong, how often do you see it? Never the normal state.",
            new MapShape("State to chance word.", Chance("If only this is wrong, how often do you see it?"), 1), 1)),
        May("moved by", new ListShape("Facts of the bike that make it likelier or less likely.", Condition)),
        .. OriginKeys,
    ]);
}
