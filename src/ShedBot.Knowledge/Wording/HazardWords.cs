using System.Collections.Frozen;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Knowledge.Wording;

/// <summary>How dangerous a step is for the person who does it.</summary>
public static class HazardWords
{
    public static FrozenDictionary<string, Hazard> Levels { get; } = new Dictionary<string, Hazard>(StringComparer.Ordinal)
    {
        ["none"] = Hazard.None,
        ["low"] = Hazard.Low,
        ["medium"] = Hazard.Medium,
        ["high"] = Hazard.High,
    }.ToFrozenDictionary(StringComparer.Ordinal);
}

/// <summary>The signal words of ANSI Z535.6 for cautions in writing.</summary>
/// <remarks>DANGER: will kill or maim; WARNING: could; CAUTION: could hurt lightly; NOTICE: harm to things, not to people. From memory.</remarks>
public static class SignalWords
{
    /// <summary>Strongest first.</summary>
    public static IReadOnlyList<string> All { get; } = ["DANGER", "WARNING", "CAUTION", "NOTICE"];
}
