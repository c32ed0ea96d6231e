using System.Collections.Frozen;

namespace ShedBot.Knowledge.Wording;

/// <summary>How common a fault is among machines that come with a trouble, as a word and as the prior it stands for.</summary>
/// <remarks>
/// Our own scale; common practice, no source. It says how often the fault is present on such a machine before anything else is known. Each word
/// is about half the one before, and all are small: with some seventy faults that may be present at once, larger ones would have every machine
/// arrive with several faults. When still more rules come together the compiler scales all of them down alike, so that what counts is how
/// common a fault is beside the others.
/// </remarks>
public static class FrequencyWords
{
    public static FrozenDictionary<string, double> Priors { get; } = new Dictionary<string, double>(StringComparer.Ordinal)
    {
        ["very common"] = 0.02,
        ["common"] = 0.01,
        ["now and then"] = 0.005,
        ["uncommon"] = 0.0025,
        ["rare"] = 0.001,
    }.ToFrozenDictionary(StringComparer.Ordinal);
}

/// <summary>How far a beginner's answer to a check can be trusted: P(wrong answer) and P('not sure').</summary>
/// <remarks>Our own scale; common practice, no source.</remarks>
public static class ReliabilityWords
{
    public static FrozenDictionary<string, (double Error, double Unsure)> Rates { get; } =
        new Dictionary<string, (double, double)>(StringComparer.Ordinal)
        {
            ["plain to see"] = (0.02, 0.03),
            ["easy to misread"] = (0.08, 0.12),
            ["takes a practised eye"] = (0.15, 0.25),
        }.ToFrozenDictionary(StringComparer.Ordinal);
}
