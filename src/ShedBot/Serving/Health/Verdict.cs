using System.Globalization;

namespace ShedBot.Serving.Health;

/// <summary>Whether the service is well, and one line why.</summary>
internal sealed record Verdict(bool Well, string Line)
{
    /// <summary>Six reports may be late before we say that nobody writes them any more.</summary>
    public static readonly TimeSpan Oldest = TimeSpan.FromSeconds(60);

    /// <summary>So long after the start a chat that has not let us in is a trouble.</summary>
    public static readonly TimeSpan LongestStart = TimeSpan.FromMinutes(5);

    /// <param name="report">Null when it is not there or cannot be read.</param>
    public static Verdict Of(HealthReport? report, string file, DateTimeOffset now)
    {
        if (report is null) return Ill($"There is no report in {file}: ShedBot is not running, or writes another file.");
        var age = now - report.When;
        if (age.Duration() > Oldest) return Ill(string.Create(CultureInfo.InvariantCulture, $"The report in {file} is {age.TotalSeconds:F0} s old: ShedBot has ended, or hangs."));
        if (report.TokenRefused) return Ill("The chat no longer takes the bot's token: make a new one, and start again.");
        if (report.Store.Stopped) return Ill("The data file takes no more saves: look at the disk, and start again.");
        if (report.Store.LogTooLong) return Ill("The log of the data file is no longer put away: start again, and look at the disk.");
        if (!report.Ready && report.When - report.Started > LongestStart) return Ill("The chat has not let us in since the start: look at the log.");
        var state = report.Ready ? "Well" : "Starting";
        var rules = report.RulesBroken ? ", though rule files have changed and are broken: the last good ones serve" : "";
        return new Verdict(true, string.Create(CultureInfo.InvariantCulture, $"{state}: {report.Busy} at work, rules {report.Rules}, {report.MemoryBytes >> 20} MiB{rules}."));
    }

    private static Verdict Ill(string line) => new(false, line);
}
