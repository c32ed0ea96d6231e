using ShedBot.Discord.Running;

namespace ShedBot.Serving;

/// <summary>The chat as the service sees it: it runs, it can be asked to stop, it tells how it is. Another one plays it in tests.</summary>
internal interface IChat
{
    /// <summary>Runs until stopped; to be called once.</summary>
    /// <exception cref="ChatRefusedException">The chat will not have us until the operator has changed something; the message says what.</exception>
    Task RunAsync(CancellationToken ct);

    /// <summary>Deals with what came in, then closes.</summary>
    /// <param name="comingBack">True for a restart: what is missed meanwhile will be told.</param>
    Task StopAsync(bool comingBack);

    ChatHealth Health();
}

/// <inheritdoc/>
internal sealed class ClubsChat(DiscordClubs clubs) : IChat, IAsyncDisposable
{
    /// <summary>What could not be stopped in time must not keep the process from ending either.</summary>
    private static readonly TimeSpan DisposeWithin = TimeSpan.FromSeconds(1);

    public Task RunAsync(CancellationToken ct) => clubs.RunAsync(ct);

    public Task StopAsync(bool comingBack) => clubs.StopAsync(comingBack);

    public ChatHealth Health() => clubs.Health();

    public async ValueTask DisposeAsync() => await Task.WhenAny(clubs.DisposeAsync().AsTask(), Task.Delay(DisposeWithin));
}
