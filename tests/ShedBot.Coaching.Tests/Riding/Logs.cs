using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Tests.Riding;

/// <summary>Compares logs by what is in them: a record that holds a list is equal only to itself.</summary>
internal static class Logs
{
    public static string Text(RidingLog log) => string.Join('\n',
    [
        .. log.Days.Select(d => d.ToString()), log.Folded is { } f ? $"{f.First} {f.Last} {string.Join(' ', f.Totals)}" : "", .. log.Breaks.Select(b => b.ToString()),
        log.Pace?.ToString() ?? "",
    ]);

    /// <summary>All but the last entry, which an undo forgets.</summary>
    public static void AssertSame(RidingLog expected, RidingLog actual) => Assert.Equal(Text(expected), Text(actual));
}
