namespace ShedBot.Discord.Rest;

/// <summary>All limits that are known so far, each with its line. Which routes share a limit is learnt from the answers.</summary>
/// <remarks>Source: the platform's description, topics/rate-limits: a limit is the bucket's name together with the channel, club or webhook; until the name is known, the route stands for it.</remarks>
internal sealed class Buckets(Ticker ticker)
{
    private const int SweepFrom = 512;

    private readonly Lock gate = new();
    private readonly Dictionary<(string Route, string Resource), Bucket> byRoute = [];
    private readonly Dictionary<(string Id, string Resource), Bucket> byId = [];

    /// <summary>The last name heard for a route, so that a channel we have not spoken to yet shares the right limit from the start. As many as there are routes.</summary>
    private readonly Dictionary<string, string> names = [];
    private int sweepAt = SweepFrom;

    public int Count
    {
        get
        {
            lock (gate)
                return byRoute.Count;
        }
    }

    private TimeSpan Now => ticker.Now;

    /// <summary>Waits in line. The turn is ours until it is disposed of.</summary>
    public async Task<Turn> EnterAsync(Route route, CancellationToken ct)
    {
        TaskCompletionSource<Bucket> place;
        lock (gate)
            place = Of(route).Join();
        return new Turn(this, route, await Await(place, ct));
    }

    /// <summary>When the next request of a route may go, if nobody else waits.</summary>
    public TimeSpan FreeAt(Route route)
    {
        lock (gate)
            return Of(route).Window.FreeAt;
    }

    private static async Task<Bucket> Await(TaskCompletionSource<Bucket> place, CancellationToken ct)
    {
        await using var giveUp = ct.Register(() => place.TrySetCanceled(ct));
        return await place.Task;
    }

    private Bucket Of(Route route)
    {
        var key = (route.Name, route.Resource);
        if (byRoute.TryGetValue(key, out var bucket))
            return bucket;
        Sweep();
        bucket = names.TryGetValue(route.Name, out var id) ? Named(id, route.Resource) : new Bucket();
        byRoute.Add(key, bucket);
        return bucket;
    }

    private Bucket Named(string id, string resource)
    {
        if (!byId.TryGetValue((id, resource), out var bucket))
            byId.Add((id, resource), bucket = new Bucket { Id = id });
        return bucket;
    }

    /// <summary>Takes in what an answer said, and where its route belongs after all.</summary>
    private Bucket Learn(Route route, Bucket bucket, in Reading reading)
    {
        var home = bucket;
        if (reading.Bucket is { } id && id != bucket.Id)
        {
            names[route.Name] = id;
            if (bucket.Id is null && byId.TryAdd((id, route.Resource), bucket))
            {
                bucket.Id = id;
            }
            else
            {
                byRoute[(route.Name, route.Resource)] = home = Named(id, route.Resource);
                if (bucket.Id is null)
                    bucket.MoveLineTo(home);
            }
        }

        home.Window.Heard(reading, Now, sole: home == bucket);
        return home;
    }

    // Every interaction has limits of its own that nobody asks for again.
    private void Sweep()
    {
        if (byRoute.Count < sweepAt)
            return;
        var now = Now;
        foreach (var (key, _) in byRoute.Where(b => b.Value.IsIdle(now)).ToList())
            byRoute.Remove(key);
        foreach (var (key, _) in byId.Where(b => b.Value.IsIdle(now)).ToList())
            byId.Remove(key);
        sweepAt = Math.Max(SweepFrom, 2 * byRoute.Count);
    }

    /// <summary>The right to send under one limit: nobody else does so meanwhile.</summary>
    internal sealed class Turn(Buckets all, Route route, Bucket bucket) : IDisposable
    {
        private bool holds = true;

        /// <summary>When our next request may go.</summary>
        public TimeSpan FreeAt
        {
            get
            {
                lock (all.gate)
                    return bucket.Window.FreeAt;
            }
        }

        /// <summary>Joins the right line, in front, when an answer has shown that we stood in the wrong one.</summary>
        public async Task SettleAsync(CancellationToken ct)
        {
            if (holds)
                return;
            TaskCompletionSource<Bucket> place;
            lock (all.gate)
                place = bucket.Join(first: true);
            bucket = await Await(place, ct);
            holds = true;
        }

        public void Sent()
        {
            lock (all.gate)
                bucket.Window.Sent(all.Now);
        }

        public void Heard(in Reading reading)
        {
            lock (all.gate)
            {
                var home = all.Learn(route, bucket, reading);
                if (home == bucket)
                    return;
                bucket.Leave();
                bucket = home;
                holds = false;
            }
        }

        public void Pause(TimeSpan wait)
        {
            lock (all.gate)
                bucket.Window.Pause(all.Now + wait);
        }

        public void Dispose()
        {
            lock (all.gate)
            {
                if (holds)
                    bucket.Leave();
                holds = false;
            }
        }
    }
}
