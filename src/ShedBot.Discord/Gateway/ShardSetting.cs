using System.Net.WebSockets;
using Microsoft.Extensions.Logging;

namespace ShedBot.Discord.Gateway;

/// <summary>What one shard works with.</summary>
/// <param name="Home">Where sessions are begun.</param>
/// <param name="Dial">Opens a connection, or throws.</param>
/// <param name="Chance">Gives a number from 0 up to 1; called from several threads.</param>
/// <param name="KeepSession">Whether a stop that is under way should leave the session alive.</param>
internal sealed record ShardSetting(
    int Shard,
    int Shards,
    GatewayOptions Options,
    Uri Home,
    Func<Uri, CancellationToken, Task<WebSocket>> Dial,
    IEventSink Sink,
    IMessageInterest Interest,
    TimeProvider Clock,
    Func<double> Chance,
    Func<bool> KeepSession,
    ILogger Log);
