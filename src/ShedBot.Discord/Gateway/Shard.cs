namespace ShedBot.Discord.Gateway;

/// <summary>Keeps one shard connected: connection after connection, with the session taken up again wherever it lives.</summary>
internal sealed class Shard
{
    /// <summary>A session that could not be taken up so often, although somebody answered, is given up.</summary>
    private const int FruitlessTries = 2;

    private static readonly TimeSpan SaveEvery = TimeSpan.FromSeconds(2);

    private readonly ShardSetting my;
    private readonly IdentifyGate gate;
    private readonly ISessionShelf shelf;
    private readonly Dispatcher dispatcher;
    private readonly Lock saving = new();
    private int failures, fruitless;
    private bool fromHome;
    private (string? Session, long Sequence) kept;

    public Shard(ShardSetting my, IdentifyGate gate, ISessionShelf shelf)
    {
        this.my = my;
        this.gate = gate;
        this.shelf = shelf;
        var saved = shelf.Read(my.Shard);
        kept = (saved?.SessionId, saved?.Sequence ?? 0);
        var usable = saved?.IsWorthTrying(my.Clock.GetUtcNow(), my.Shards) == true && saved.ResumeUrl.Scheme == my.Home.Scheme;
        dispatcher = new Dispatcher(my, usable ? Session.From(saved!) : null);
    }

    /// <returns>When asked to stop.</returns>
    /// <exception cref="GatewayFatalException">The operator has to change something.</exception>
    public async Task RunAsync(CancellationToken ct)
    {
        using var over = new CancellationTokenSource();
        var saver = SaveNowAndThenAsync(over.Token);
        try
        {
            await StayConnectedAsync(ct).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (ct.IsCancellationRequested)
        {
        }
        finally
        {
            await over.CancelAsync().ConfigureAwait(false);
            await saver.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            if (ct.IsCancellationRequested && !my.KeepSession())
                dispatcher.Forget();
            Save();
        }
    }

    private async Task StayConnectedAsync(CancellationToken ct)
    {
        while (!ct.IsCancellationRequested)
        {
            var session = dispatcher.Session;
            var ending = await ConnectAsync(session, ct).ConfigureAwait(false);
            if (ending.Next == Next.Stop)
                return;
            if (ending.Next == Next.Fatal)
                throw Fatal(ending.Code ?? 0);
            var wait = ending.AtOnce && failures == 0 ? TimeSpan.Zero : Backoff.Wait(failures, my.Chance());
            if (wait < ending.Pause)
                wait = ending.Pause;
            failures++;
            GatewayMetrics.Ended(ending.Reason);
            my.Log.ConnectionEnded(my.Shard, ending.Reason, ending.Code, dispatcher.Session is null ? Next.Identify : Next.Resume, wait);
            await Task.Delay(wait, my.Clock, ct).ConfigureAwait(false);
        }
    }

    private async Task<Ending> ConnectAsync(Session? session, CancellationToken ct)
    {
        using var place = session is null ? await gate.EnterAsync(my.Shard, ct).ConfigureAwait(false) : null;
        var connection = new ShardConnection(my, dispatcher, () => place?.Use());
        var ending = await connection.RunAsync(session is null || fromHome ? my.Home : session.ResumeUrl, ct).ConfigureAwait(false);
        Learn(ending, session is not null, connection.Greeted);
        return ending;
    }

    /// <summary>Decides whether the session can be taken up again, and where.</summary>
    private void Learn(Ending ending, bool resuming, bool greeted)
    {
        if (ending.Next is Next.Stop or Next.Fatal)
            return;
        var established = dispatcher.EstablishedAt;
        if (established is { } since && my.Clock.GetElapsedTime(since) >= Backoff.Health)
            failures = 0;
        var failed = resuming && established is null && !ending.AtOnce;
        // A session that cannot be taken up where it should be may still be known at the front door. When nobody answers at all it is the network, and
        // the session may live on.
        fromHome = failed;
        fruitless = !failed || dispatcher.Moved ? 0 : greeted ? fruitless + 1 : fruitless;
        if (ending.Next == Next.Identify || fruitless >= FruitlessTries || (failed && ending.Next == Next.ResumeOnce))
        {
            dispatcher.Forget();
            (fromHome, fruitless) = (false, 0);
            Save();
        }
    }

    private GatewayFatalException Fatal(int code)
    {
        var advice = CloseCodes.Advice(code);
        my.Log.Fatal(my.Shard, code, advice);
        return new GatewayFatalException(code, advice);
    }

    private async Task SaveNowAndThenAsync(CancellationToken ct)
    {
        using var timer = new PeriodicTimer(SaveEvery, my.Clock);
        while (await timer.WaitForNextTickAsync(ct).ConfigureAwait(false))
            Save();
    }

    private void Save()
    {
        lock (saving)
        {
            var saved = dispatcher.Session?.Save(my.Clock.GetUtcNow(), my.Shards);
            var now = (saved?.SessionId, saved?.Sequence ?? 0);
            if (now == kept)
                return;
            try
            {
                shelf.Write(my.Shard, saved);
                kept = now;
            }
            catch (Exception e) // A full disk costs the session at the next start, not the connection now.
            {
                my.Log.ShelfFailed(e, my.Shard);
            }
        }
    }
}
