using System.Collections.Immutable;
using System.Globalization;

namespace ShedBot.Serving.Copies;

/// <summary>Which backups are to be made and removed: one a day, each under the time at which it was made.</summary>
/// <param name="keepDays">Older ones are removed.</param>
internal sealed class DailyBackup(string folder, int keepDays)
{
    public static readonly TimeSpan Between = TimeSpan.FromDays(1);

    private const string Prefix = "club-", Ending = ".shed", Stamp = "yyyyMMdd'T'HHmmss'Z'";

    public int KeepDays => keepDays;

    /// <returns>Null when none is there.</returns>
    public DateTimeOffset? Newest() => All().Select(b => (DateTimeOffset?)b.At).Max();

    /// <returns>The file to copy to, or null while the newest is young enough.</returns>
    public string? Due(DateTimeOffset now) => Newest() is { } newest && now - newest < Between && newest <= now
        ? null
        : Path.Combine(folder, Prefix + now.UtcDateTime.ToString(Stamp, CultureInfo.InvariantCulture) + Ending);

    /// <summary>The backups that are too old. The newest is never among them: better an old backup than none.</summary>
    public ImmutableArray<string> TooOld(DateTimeOffset now)
    {
        var newest = Newest();
        return [.. All().Where(b => b.At != newest && now - b.At > TimeSpan.FromDays(keepDays)).OrderBy(b => b.At).Select(b => b.File)];
    }

    /// <summary>Files of other names are not ours, and are left alone.</summary>
    private IEnumerable<(string File, DateTimeOffset At)> All()
    {
        foreach (var file in Directory.EnumerateFiles(folder, Prefix + "*" + Ending))
        {
            var name = Path.GetFileName(file);
            if (DateTimeOffset.TryParseExact(
                name.AsSpan(Prefix.Length, name.Length - Prefix.Length - Ending.Length), Stamp, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at))
            {
                yield return (file, at);
            }
        }
    }
}
