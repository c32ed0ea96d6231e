using ShedBot.Coaching;
using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Understanding;
using ShedBot.Simulation;

namespace ShedBot.Tests.Simulation;

/// <summary>The invented garden pump of the coaching tests: small enough to reckon by hand.</summary>
internal static class PumpRules
{
    public static KnowledgeBase Knowledge { get; } = Load();

    public static CoachOptions Options { get; } = new();

    public static Coach Coach { get; } = new(Knowledge, Listener.For(Knowledge), Options);

    public static RunPlan Plan(int riders = 12, int seed = 7, Habits? habits = null, RidersWanted? wanted = null) =>
        new(riders, seed, habits ?? new Habits(), wanted ?? new RidersWanted());

    public static Rider Rider(string fault, int number, int seed = 7) => new RiderDraw(Knowledge, new RidersWanted(Fault: fault)).Draw(seed, number);

    private static KnowledgeBase Load()
    {
        var text = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Simulation", "pump.yaml"));
        var result = KnowledgeLoader.Load([new RuleText("pump.yaml", text)]);
        return result.Knowledge ?? throw new InvalidOperationException(string.Join('\n', result.Problems));
    }
}
