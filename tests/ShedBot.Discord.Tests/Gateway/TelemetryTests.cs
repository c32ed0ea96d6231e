using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using Microsoft.Extensions.Logging;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Tests.Gateway.Rig;

namespace ShedBot.Discord.Tests.Gateway;

/// <summary>Source: house rule: no token, no session's id and nobody's words in logs and counters.</summary>
public sealed class TelemetryTests
{
    [Fact]
    public async Task RunAsync_AllThatHappens_IsCountedAndLoggedWithoutASecret()
    {
        var counted = new ConcurrentBag<string>();
        using var listener = new MeterListener
        {
            InstrumentPublished = (instrument, l) =>
            {
                if (instrument.Meter.Name == GatewayMetrics.MeterName)
                    l.EnableMeasurementEvents(instrument);
            },
        };
        listener.SetMeasurementEventCallback<long>((i, _, tags, _) => counted.Add($"{i.Name} {string.Join(',', tags.ToArray().Select(t => $"{t.Key}={t.Value}"))}"));
        listener.SetMeasurementEventCallback<double>((i, _, _, _) => counted.Add(i.Name));
        listener.Start();

        var log = new Lines();
        await using (var rig = new GatewayRig(log: log))
        {
            var socket = await rig.BeginAsync("session-secret");
            await rig.Clock.PassAsync(20);
            await socket.HearAsync(1);
            socket.Event("MESSAGE_CREATE", 2, """{"id":"1","channel_id":"2","content":"private words","type":"private words"}""");
            socket.Say("""{"op":0,"d":"private words" """);
            await rig.Clock.PassAsync(1.25);
            var second = await rig.NextAsync();
            second.Hello();
            await second.HearAsync(6);
            second.CloseWith(4014);
            await Assert.ThrowsAsync<GatewayFatalException>(() => rig.Run.WaitAsync(Wait.Guard));
        }

        foreach (var name in (string[])[
            "shedbot.gateway.events type=MESSAGE_CREATE", "shedbot.gateway.reconnects reason=broken-frame", "shedbot.gateway.starts how=identify",
            "shedbot.gateway.starts how=resume", "shedbot.gateway.sends kind=heartbeat", "shedbot.gateway.heartbeat"])
            Assert.Contains(name, counted);
        Assert.NotEmpty(log.All);
        foreach (var secret in (string[])[GatewayRig.Token, "session-secret", "private words"])
            Assert.DoesNotContain(log.All, line => line.Contains(secret, StringComparison.Ordinal));
    }

    private sealed class Lines : ILogger<Discord.Gateway.Gateway>
    {
        public ConcurrentBag<string> All { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            All.Add(formatter(state, exception) + exception);
    }
}
