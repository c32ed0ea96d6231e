using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace ShedBot.Tests.Serving;

/// <summary>Keeps what is logged.</summary>
internal sealed class KeptLog : ILogger
{
    public ConcurrentQueue<(LogLevel Level, string Line)> Lines { get; } = new();

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
        Lines.Enqueue((logLevel, formatter(state, exception) + exception));
}
