using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>All that is logged, in the test's output and to be looked through.</summary>
internal sealed class TestLog(ITestOutputHelper? output) : ILoggerFactory, ILogger
{
    private readonly ConcurrentQueue<string> lines = new();

    public IReadOnlyCollection<string> Lines => lines;

    public ILogger CreateLogger(string categoryName) => this;

    public void AddProvider(ILoggerProvider provider)
    {
    }

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
    {
        var line = $"{logLevel}: {formatter(state, exception)} {exception}";
        lines.Enqueue(line);
        try
        {
            output?.WriteLine(line);
        }
        catch (InvalidOperationException)
        {
            // The test has ended; what is said after it is still kept.
        }
    }

    public void Dispose()
    {
    }
}
