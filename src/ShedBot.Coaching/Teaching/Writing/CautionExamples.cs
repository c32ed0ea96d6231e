using System.Collections.Immutable;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>Cautions of the usual kind, to pick as they are.</summary>
/// <remarks>Common practice, no source. The order of signal word, hazard, consequence and avoidance is that of ANSI Z535.6.</remarks>
internal static class CautionExamples
{
    public static ImmutableArray<(string Id, string Called, CautionRule Caution)> All { get; } =
    [
        ("chain", "chain and gears", new("WARNING", "Open chain and gears", "they crush or cut fingers if the engine or the wheel turns", "engine off and cold, plug cap off, bike steady, fingers away from both sprockets")),
        ("hot", "hot engine or exhaust", new("CAUTION", "Hot engine and exhaust", "they burn the skin at a touch, for half an hour after a ride", "let them cool until you can lay a hand on them")),
        ("petrol", "petrol", new("WARNING", "Petrol and its vapour", "they catch fire from a spark or a hot part", "outdoors, engine cold, tap closed, plug cap off, no smoking, wipe up what was spilt and let it dry")),
        ("running", "running engine", new("WARNING", "A running engine with its chain and wheel", "it takes in fingers, laces and sleeves", "wheel off the ground and the bike held fast, hands and clothes away from all that turns")),
        ("fumes", "exhaust fumes indoors", new("DANGER", "Exhaust fumes in a closed room", "they kill before you notice them", "run the engine outdoors only")),
        ("spring", "part under spring force", new("CAUTION", "A part under spring force", "it flies off and hits the eyes or is lost", "glasses on, a hand or a rag over it while it comes off")),
        ("cleaner", "cleaner or solvent", new("WARNING", "Cleaner and solvent", "they harm the lungs and the eyes and catch fire", "outdoors, gloves and glasses on, no flame, and keep to what stands on the can")),
        ("brakes", "brakes touched", new("WARNING", "A brake that was touched", "it may not hold when you need it", "try it hard at walking pace before the first ride")),
        ("soft", "soft metal", new("NOTICE", "The case is soft metal", "too much force strips the thread", "start each screw by hand, a short tool and a firm hand do")),
    ];

    public static CautionRule? Find(string id) => All.FirstOrDefault(e => e.Id == id).Caution;
}
