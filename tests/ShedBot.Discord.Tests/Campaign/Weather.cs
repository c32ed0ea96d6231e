using ShedBot.DiscordStandIn.Faults;

namespace ShedBot.Discord.Tests.Campaign;

/// <summary>How often each thing goes wrong, of all opportunities it has. Far worse than any platform; our own choice.</summary>
internal static class Weather
{
    public static IReadOnlyDictionary<FaultKind, double> Foul { get; } = Enum.GetValues<FaultKind>().ToDictionary(k => k, RateOf);

    private static double RateOf(FaultKind kind) => kind switch
    {
        FaultKind.DroppedSocket or FaultKind.HalfFrame or FaultKind.Reconnect or FaultKind.InvalidSessionKept or FaultKind.InvalidSessionLost => 0.003,
        FaultKind.ReconnectBeforeHello or FaultKind.SwallowedAck => 0.05,
        FaultKind.IdentifyRefused or FaultKind.ResumeRefused => 0.1,
        FaultKind.DuplicatedEvent or FaultKind.UnknownEvent or FaultKind.UnknownFields or FaultKind.NullFields => 0.2,
        FaultKind.ReorderedEvents or FaultKind.DelayedEvent => 0.1,
        FaultKind.SlowAnswer => 0.06,
        FaultKind.RateLimitedUser or FaultKind.RateLimitedShared or FaultKind.RateLimitedGlobal => 0.04,
        FaultKind.RateLimitedWithoutBody => 0.015,
        _ => 0.025,
    };
}
