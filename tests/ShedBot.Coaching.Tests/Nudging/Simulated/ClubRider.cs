namespace ShedBot.Coaching.Tests.Nudging.Simulated;

/// <summary>An invented kind of member.</summary>
/// <param name="Kind">As in the table.</param>
/// <param name="Count">So many of the forty.</param>
/// <param name="Chance">The true chance of a ride on a weekday (0 is Monday), in a dry or a wet week.</param>
/// <param name="Logs">The share of rides that are logged, on the same day at five or at ten in the evening.</param>
/// <param name="Does">The chance that a message is answered with "done" within a day.</param>
/// <param name="PutsOff">The chance that it is put off.</param>
internal sealed record ClubRider(string Kind, int Count, Func<int, bool, double> Chance, double Logs = 1, double Does = 0.85, double PutsOff = 0.05)
{
    public bool Winter { get; init; }

    public bool WinterTold { get; init; }

    public int Bikes { get; init; } = 1;

    public bool Agrees { get; init; } = true;

    /// <summary>From this day of the year direct messages are refused; after the note they ask for another try once.</summary>
    public int? ClosedFrom { get; init; }

    /// <summary>IANA zones they move to, on every hundredth day.</summary>
    public string[] Moves { get; init; } = [];

    /// <summary>True for those who put off, stop a task, and once say that they do not ride for three weeks.</summary>
    public bool Fussy { get; init; }

    public static ClubRider[] All { get; } =
    [
        new("steady, does what is due", 8, (_, wet) => wet ? 0.4 : 0.6),
        new("weekends", 5, (weekday, wet) => weekday < 5 ? 0.03 : wet ? 0.3 : 0.8),
        new("to work and back", 5, (weekday, _) => weekday < 5 ? 0.9 : 0.1),
        new("rests in winter and says so", 4, (_, _) => 0.5) { Winter = true, WinterTold = true },
        new("rests in winter, never says", 3, (_, _) => 0.5) { Winter = true },
        new("two bikes", 4, (_, _) => 0.4) { Bikes = 2 },
        new("logs half of the rides", 2, (_, _) => 0.6, Logs: 0.5),
        new("puts off, stops, rests", 3, (_, _) => 0.5, Does: 0.3, PutsOff: 0.6) { Fussy = true },
        new("ignores messages, logs nothing after stating a pace", 2, (_, _) => 0.5, Logs: 0, Does: 0, PutsOff: 0),
        new("closed to direct messages", 2, (_, _) => 0.5) { ClosedFrom = 60 },
        new("moves from zone to zone", 1, (_, _) => 0.6) { Moves = ["Asia/Tokyo", "America/Los_Angeles", "Pacific/Auckland"] },
        new("never agreed", 1, (_, _) => 0.5) { Agrees = false },
    ];
}
