using System.Collections.Immutable;
using ShedBot.Coaching.Bikes.Kinds;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Bikes;

/// <summary>All that can be told of a bike and lasts, the most useful first. What was done lately is asked in a case when it matters.</summary>
public static class BikeSheet
{
    public const string Fitted = Fitting.Fact, Engine = "engine-size", Wheel = "wheel", RearSprocket = "rear-sprocket", SmallSprocket = "small-sprocket", Primary = "primary-teeth",
        PadsKind = "pads-kind", PadsDate = "pads-date", BarLength = "bar-length", Key = "key-size", OuterBearing = "outer-bearing", ReturnSpring = "return-spring",
        Carburettor = "carburettor", MainJet = "main-jet", Oil = "oil-ratio", ThrustPart = "thrust-part", Tensioner = "chain-tensioner";

    /// <summary>A bar is greased after so many riding days; by the second time it is worth a measurement.</summary>
    private const int BarRidingDays = 28;

    private const int HalfAYear = 182, Year = 365;

    /// <returns>The fields. What the rules give the values of is left out where the rules do not know it.</returns>
    public static ImmutableArray<SheetField> Of(KnowledgeBase knowledge) =>
    [
        Field(Fitted, SheetPart.EngineAndFuel, "kit fitted", "When was the engine kit fitted?", "The first rides after it need looks of their own. A month is enough: march 2026.",
            new DateKind(), Freshness.ForEver, "", "fitted", "kit"),
        Field(PadsDate, SheetPart.Clutch, "clutch pads fitted on", "When did the clutch pads go in?", "They wear with every start. If they came with the kit, it is the day of the kit.",
            new DateKind(), Freshness.ForEver, "", "pads date", "pads", "pads fitted", "clutch pads"),
        Field(BarLength, SheetPart.Clutch, "bar length", "How long is the bucking bar, the short push rod behind the arm?",
            "It wears shorter, and every tenth of a millimetre is about a millimetre of slack at the arm. Measure it with a caliper when it is out for grease; until then skip this.",
            new LengthKind(10, 60), new Freshness(HalfAYear, BarRidingDays), "measure again", "bar", "bucking bar", "push rod", "bar measures"),
        Field(Wheel, SheetPart.DriveAndWheel, "rear wheel", "What stands on the side of the rear tyre?",
            "For speed and distance. Look for small print like 54-559; big print like 26 x 2.125 will do.", new WheelKind(), new Freshness(2 * Year, null), "look again",
            "wheel size", "tyre", "tire", "wheels", "rear tyre", "tyre size"),
        Count(RearSprocket, "rear sprocket", "How many teeth has the engine's sprocket at the rear wheel?", "Count them once round with chalk at the first; 36, 41, 44 and 48 are usual.", 20, 80,
            "sprocket", "back sprocket", "big sprocket", "rear teeth"),
        Field(Oil, SheetPart.EngineAndFuel, "oil in the fuel", "How much oil goes into the fuel?", "Too little seizes the engine. Fuel to oil, as in 24:1; the bottle or your helper says it.",
            new OilKind(), new Freshness(HalfAYear, null), "still so?", "oil", "mix", "premix", "fuel mix", "oil mix"),
        Field(Engine, SheetPart.EngineAndFuel, "engine size", "How big is the engine?", "Bore x stroke if you know it, as in 47 x 38 mm; else what it was sold as, as in 66 cc.",
            new EngineKind(), Freshness.ForEver, "", "engine", "bore", "bore and stroke", "bore x stroke", "displacement"),
        .. Choice(knowledge, ReturnSpring, SheetPart.Clutch, "return spring", "Without it the arm may rest half in. Look where the cable ends at the engine.", "spring"),
        .. Choice(knowledge, OuterBearing, SheetPart.Clutch, "outer bearing", "Open and shielded ones need grease and a feel now and then. It can be read when the cover is off; until then skip this.", "bearing"),
        .. Choice(knowledge, PadsKind, SheetPart.Clutch, "kind of pads", "Hard ones squeak and slip sooner, and that is then no fault.", "pads kind", "pad kind"),
        Count(SmallSprocket, "small sprocket", "How many teeth has the small sprocket on the engine?", "Under the cover on the chain side; 10 is usual, but count.", 6, 20, "front sprocket", "engine sprocket", "drive sprocket"),
        Field(Primary, SheetPart.DriveAndWheel, "clutch gear and crank gear", "How many teeth have the big clutch gear and the little gear on the crank?",
            "Both 82 and 83 with 20 are reported, so count when the gear cover is off; until then skip this.", new TeethPairKind(40, 140, 10, 40), Freshness.ForEver, "", "primary", "primary gears", "gear teeth"),
        Field(Key, SheetPart.DriveAndWheel, "key of the clutch shaft", "How big is the key of the clutch shaft, width x height?",
            "Slots differ between batches, and a wrong one shears. Measure it with a caliper when the gear is off; until then skip this.", new SizeKind(1.5, 10, "Write width x height, like 3 x 5 mm."), Freshness.ForEver, "",
            "key", "woodruff key"),
        Field(Carburettor, SheetPart.EngineAndFuel, "carburettor", "What kind of carburettor is it?", "Whatever is cast or stamped on it.", new TextKind(40), Freshness.ForEver, "", "carb", "carburetor"),
        Field(MainJet, SheetPart.EngineAndFuel, "main jet", "What number is stamped on the main jet?", "A tiny number on the brass screw in the bowl; until you have it open, skip this.",
            new CountKind(30, 200, ""), new Freshness(Year, null), "still so?", "jet"),
        .. Choice(knowledge, ThrustPart, SheetPart.Clutch, "ball or bearing at the bar", "It decides what to look for when the bar comes out.", "thrust", "ball"),
        .. Choice(knowledge, Tensioner, SheetPart.DriveAndWheel, "chain tensioner", "Its screws belong on the list of what to look at.", "tensioner"),
    ];

    /// <returns>The field of this id, or null.</returns>
    public static SheetField? Find(KnowledgeBase knowledge, string id) => Of(knowledge).FirstOrDefault(f => f.Id == id);

    private static SheetField Count(string id, string called, string ask, string find, int least, int most, params ImmutableArray<string> names) =>
        Field(id, SheetPart.DriveAndWheel, called, ask, find, new CountKind(least, most, "teeth"), new Freshness(2 * Year, null), "count again", names);

    private static SheetField Field(string id, SheetPart part, string called, string ask, string find, FieldKind kind, Freshness fresh, string again, params ImmutableArray<string> names) =>
        new(id, part, called, ask, find, kind, fresh, again, names);

    private static IEnumerable<SheetField> Choice(KnowledgeBase knowledge, string id, SheetPart part, string called, string find, params ImmutableArray<string> names)
    {
        if (knowledge.Facts.TryGetValue(id, out var rule))
            yield return new(id, part, called, rule.Ask, find, new ChoiceKind(rule.Values), new Freshness(rule.KeepsForDays, null), "look again", names);
    }
}
