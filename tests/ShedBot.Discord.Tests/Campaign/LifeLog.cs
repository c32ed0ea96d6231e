using System.Collections.Concurrent;
using System.Globalization;
using Microsoft.Extensions.Logging;
using ShedBot.Discord.Rest;

namespace ShedBot.Discord.Tests.Campaign;

/// <summary>What one life of the program has logged. A killed program logs nothing more.</summary>
internal sealed class LifeLog : ILoggerFactory, ILogger
{
    private const int MostKept = 4000;
    private readonly ConcurrentQueue<string> recent = new();
    private volatile bool dead;
    private int toldToRepeat;

    /// <summary>Mistakes of ours. A member's deed that met a platform out of order for every try, and who was told to repeat it, is none: that is counted apart.</summary>
    public ConcurrentQueue<string> Errors { get; } = new();

    public int ToldToRepeat => toldToRepeat;

    /// <summary>The last lines, of all levels.</summary>
    public IReadOnlyCollection<string> Recent => recent;

    public void Die() => dead = true;

    public ILogger CreateLogger(string categoryName) => this;

    public void AddProvider(ILoggerProvider provider)
    {
    }

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
    {
        if (dead) return;
        var line = string.Create(CultureInfo.InvariantCulture, $"{DateTime.UtcNow:HH:mm:ss.fff} {logLevel}: {formatter(state, exception)} {exception}");
        recent.Enqueue(line);
        if (recent.Count > MostKept) recent.TryDequeue(out _);
        if (logLevel < LogLevel.Error) return;
        if (exception is DiscordException { Trouble: Trouble.Busy }) Interlocked.Increment(ref toldToRepeat);
        else Errors.Enqueue(line);
    }

    public void Dispose()
    {
    }
}
