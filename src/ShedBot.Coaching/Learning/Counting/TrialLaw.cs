namespace ShedBot.Coaching.Learning.Counting;

/// <summary>What riders tell of a trial after a repair, given how it truly went. Our own figures; common practice, no source.</summary>
/// <remarks>One telling in twenty to ten is taken to be wrong, so that one wrong 'it held' never makes a cause certain.</remarks>
internal static class TrialLaw
{
    private const int Held = 0, Better = 1, NoChange = 2, CameBack = 3;

    /// <summary>By truth (gone, better, as before), then by what is told.</summary>
    private static readonly double[][] Chances =
    [
        [0.90, 0.05, 0.03, 0.02],
        [0.08, 0.60, 0.20, 0.12],
        [0.08, 0.05, 0.80, 0.07],
    ];

    /// <param name="gone">Nothing of what the rider came with is left.</param>
    /// <param name="eased">Some cause of it was mended.</param>
    public static double Told(TrialSaid said, bool gone, bool eased) => Chances[gone ? 0 : eased ? 1 : 2][said switch
    {
        TrialSaid.Held => Held,
        TrialSaid.Better => Better,
        TrialSaid.NoChange => NoChange,
        _ => CameBack,
    }];
}
