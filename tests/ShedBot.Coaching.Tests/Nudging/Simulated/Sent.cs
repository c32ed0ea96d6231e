using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Nudging;

namespace ShedBot.Coaching.Tests.Nudging.Simulated;

/// <summary>One message as it went out, with the member's clock at that moment.</summary>
internal sealed record Sent(DateTimeOffset At, LocalDateTime Local, ImmutableArray<string> Keys, bool Evening, bool Agreed, bool Mention, QuietHours Quiet)
{
    public bool Asks => Keys.IsEmpty && !Mention;
}
