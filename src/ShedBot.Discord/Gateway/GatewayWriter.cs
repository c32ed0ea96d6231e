using System.Net.WebSockets;
using System.Threading.Channels;
using Microsoft.Extensions.Logging;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Gateway;

/// <summary>The only one that sends on a connection. What the platform would close for, too long or too much, is not sent.</summary>
internal sealed class GatewayWriter(TimeProvider clock, ILogger log)
{
    private readonly Channel<byte[]> queue =
        System.Threading.Channels.Channel.CreateUnbounded<byte[]>(new UnboundedChannelOptions { SingleReader = true });
    private readonly SendBudget budget = new(clock);
    private readonly Lock gate = new();

    /// <param name="needed">False: it may be left out when much has been sent.</param>
    /// <returns>False when it will not be sent.</returns>
    public bool Send(int op, byte[] payload, bool needed)
    {
        if (payload.Length > Limits.GatewayPayloadBytes)
        {
            log.TooLong(op, payload.Length);
            return false;
        }
        lock (gate)
            if (!budget.Take(needed))
            {
                log.TooMuch(op);
                return false;
            }
        GatewayMetrics.Sent(op);
        return queue.Writer.TryWrite(payload);
    }

    /// <summary>Sends until the link breaks or the connection has ended.</summary>
    public async Task RunAsync(WebSocket socket, CancellationToken ct)
    {
        await foreach (var payload in queue.Reader.ReadAllAsync(ct).ConfigureAwait(false))
            await socket.SendAsync(payload.AsMemory(), WebSocketMessageType.Text, endOfMessage: true, ct).ConfigureAwait(false);
    }
}
