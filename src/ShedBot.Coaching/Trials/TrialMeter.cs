namespace ShedBot.Coaching.Trials;

/// <summary>How far a trial is. Told only of each new hundredth, and never backwards, whichever thread is quicker.</summary>
internal sealed class TrialMeter(IProgress<double>? progress)
{
    private readonly Lock gate = new();
    private int told = -1;

    public void Tell(double share)
    {
        if (progress is null) return;
        var hundredths = (int)(Math.Clamp(share, 0, 1) * 100);
        lock (gate)
        {
            if (hundredths <= told) return;
            told = hundredths;
            progress.Report(hundredths / 100.0);
        }
    }

    /// <summary>Takes the share of one part of the work.</summary>
    public Action<double> Between(double from, double to) => share => Tell(from + (share * (to - from)));

    /// <summary>Counts the steps of one part of the work.</summary>
    public Action Steps(double from, double to, int steps)
    {
        var done = 0;
        return () => Tell(from + ((to - from) * Interlocked.Increment(ref done) / Math.Max(1, steps)));
    }
}
