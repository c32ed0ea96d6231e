using System.Diagnostics;
using Microsoft.Extensions.Logging;
using ShedBot.Discord.Running;
using ShedBot.Serving.Copies;
using ShedBot.Serving.Health;
using ShedBot.Storage;
using ShedBot.Storage.Checking;

namespace ShedBot.Serving;

/// <summary>Makes a backup of the open store.</summary>
internal delegate Task<IntegrityReport> MakeBackup(string path, CancellationToken ct);

/// <summary>All that is looked after beside the chat: the rules, the store, the backups, and the report of how it all is.</summary>
/// <param name="backups">Null: none are made.</param>
internal sealed class Watch(
    RulesWatch rules,
    Func<ChatHealth> chat,
    Func<StoreHealth> store,
    DailyBackup? backups,
    MakeBackup makeBackup,
    HealthFile file,
    MeterTotals meters,
    TimeProvider clock,
    ILogger log)
{
    public static readonly TimeSpan ReportEvery = TimeSpan.FromSeconds(10), StoreEvery = TimeSpan.FromSeconds(2), BackupEvery = TimeSpan.FromHours(1), SettledAfter = TimeSpan.FromSeconds(3);

    private readonly DateTimeOffset started = clock.GetUtcNow();
    private bool logTooLong;

    /// <summary>Runs until called off.</summary>
    public Task RunAsync(CancellationToken ct) => Task.WhenAll(
        Rounds.KeepAsync("looking at the rules", RulesWatch.Every, _ => Done(rules.Look), clock, log, ct),
        Rounds.KeepAsync("backups", BackupEvery, BackUpAsync, clock, log, ct),
        Rounds.KeepAsync("reporting", ReportEvery, _ => Done(() => file.Write(Report())), clock, log, ct),
        SettleAsync(ct));

    /// <summary>Waits until the store takes no more saves.</summary>
    /// <returns>Why.</returns>
    public async Task<string> StoreStoppedAsync(CancellationToken ct)
    {
        using var timer = new PeriodicTimer(StoreEvery, clock);
        while (true)
        {
            var health = store();
            if (health.Stopped is { } why) return why;
            if (health.LogTooLong && !logTooLong) log.LogTooLong(health.LogBytes);
            logTooLong = health.LogTooLong;
            await timer.WaitForNextTickAsync(ct);
        }
    }

    public async Task BackUpAsync(CancellationToken ct)
    {
        if (backups is null) return;
        if (backups.Due(clock.GetUtcNow()) is { } target)
        {
            var made = await makeBackup(target, ct);
            var name = Path.GetFileName(target);
            log.BackedUp(name, made.DataBytes);
        }

        foreach (var old in backups.TooOld(clock.GetUtcNow()))
        {
            File.Delete(old);
            var name = Path.GetFileName(old);
            log.BackupRemoved(backups.KeepDays, name);
        }
    }

    public HealthReport Report()
    {
        var (talk, kept) = (chat(), store());
        using var process = Process.GetCurrentProcess();
        return new HealthReport(
            clock.GetUtcNow(),
            started,
            talk.Ready,
            talk.LastHeard,
            talk.Busy,
            talk.TokenRefused,
            new StoreReport(kept.DataBytes, kept.LogBytes, kept.LogTooLong, kept.Stopped is not null),
            rules.Version,
            rules.Broken,
            process.WorkingSet64,
            GC.GetTotalMemory(forceFullCollection: false),
            backups?.Newest(),
            meters.Totals(),
            meters.Times());
    }

    /// <summary>Reading rules and data takes far more memory than serving does: it is given back to the machine, once.</summary>
    private async Task SettleAsync(CancellationToken ct)
    {
        await Task.Delay(SettledAfter, clock, ct).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        if (!ct.IsCancellationRequested) GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
    }

    private static Task Done(Action round)
    {
        round();
        return Task.CompletedTask;
    }
}
