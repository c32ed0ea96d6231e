using System.Collections.Immutable;
using LiteDB;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Nudging;
using ShedBot.Storage.Checking;
using ShedBot.Storage.Copies;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Opening;
using ShedBot.Storage.Reading;
using ShedBot.Storage.Writing;

namespace ShedBot.Storage;

/// <summary>
/// The store in one data file, for one process on one machine and a local disk. Safe for use from many threads. Dispose it last: that puts
/// the log away into the data file. Times are kept to the millisecond, in UTC; ids and places are 1 to 300 bytes without control characters.
/// </summary>
public sealed partial class LiteShedStore : IShedStore, IClubStore, IArrivalStore, IRiderStore, ITeachingStore
{
    private readonly StoreFiles files;
    private readonly StoreOptions options;
    private readonly StoreSchema schema;
    private readonly FileStream held;
    private readonly LiteDatabase db;
    private readonly LogFile log;
    private readonly Writer writer;
    private readonly TurnWriter turns;
    private readonly TeachingWriter teaching;
    private readonly Readers readers;
    private int disposed;

    private LiteShedStore(
        StoreFiles files, StoreOptions options, StoreSchema schema, FileStream held, LiteDatabase db, LogFile log, IntegrityReport report)
    {
        (this.files, this.options, this.schema, this.held, this.db, this.log, Integrity) = (files, options, schema, held, db, log, report);
        var outbox = new OutboxWriter(OutboxWriter.LastNumberIn(db));
        turns = new TurnWriter(outbox);
        teaching = new TeachingWriter(outbox);
        readers = new Readers(db);
        writer = new Writer(db, log, options);
    }

    /// <summary>What was found when the store was opened.</summary>
    public IntegrityReport Integrity { get; }

    /// <summary>Opens the store, or makes it when there is none. Reads it from end to end first, and writes only when all is well.</summary>
    /// <exception cref="StoreRefusedException">It cannot be used; the message says why and what to do. Nothing was changed.</exception>
    public static Task<LiteShedStore> OpenAsync(StoreOptions options, CancellationToken ct) => OpenAsync(options, StoreSchema.Ours, ct);

    internal static Task<LiteShedStore> OpenAsync(StoreOptions options, StoreSchema schema, CancellationToken ct)
    {
        options.ThrowIfOutOfRange();
        return Task.Run(() => Open(options, schema), ct);
    }

    public Task<Case?> FindCaseAsync(CaseId id, CancellationToken ct) => readers.ReadAsync(d => Lookups.Case(d, id), ct);

    public Task<Case?> FindOpenCaseAsync(MemberId member, string place, CancellationToken ct) =>
        readers.ReadAsync(d => Lookups.OpenCase(d, member, place), ct);

    public Task<Case?> FindLastCaseAsync(MemberId member, string place, CancellationToken ct) =>
        readers.ReadAsync(d => Lookups.LastCase(d, member, place), ct);

    public Task<ImmutableArray<Case>> CasesOfAsync(MemberId member, int limit, CancellationToken ct)
    {
        ThrowIfOutside(limit, 100);
        return readers.ReadAsync(d => Lookups.CasesOf(d, member, limit), ct);
    }

    public Task<BikeProfile?> FindBikeAsync(BikeId id, CancellationToken ct) => readers.ReadAsync(d => Lookups.Bike(d, id), ct);

    public Task<ImmutableArray<BikeProfile>> BikesOfAsync(MemberId member, CancellationToken ct) =>
        readers.ReadAsync(d => Lookups.BikesOf(d, member), ct);

    /// <inheritdoc/>
    /// <remarks>The very same turn may be saved again, for when it is not known whether the first try landed. When <paramref name="ct"/> is cancelled
    /// before the writing begins, nothing was written.</remarks>
    /// <exception cref="StoreStoppedException">The disk failed; whether this turn landed shows when the store is opened again.</exception>
    public Task SaveAsync(TurnSaved turn, CancellationToken ct)
    {
        var documents = TurnDocuments.Of(turn);
        return writer.DoAsync(d => turns.Write(d, documents), alone: false, ct);
    }

    public Task SaveBikeAsync(BikeProfile bike, CancellationToken ct)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(bike.Version, 1, "bike version");
        var document = BikeDocument.ToBson(bike);
        return writer.DoAsync(d => BikeWriter.Write(d, document), alone: false, ct);
    }

    /// <inheritdoc/>
    /// <remarks>The log that still holds the bike is put away right after, or, while a reader is inside, a little later; then it stands in neither file.</remarks>
    public Task RemoveBikeAsync(Rider owner, BikeProfile bike, CancellationToken ct)
    {
        if (bike.Owner != owner.Member)
        {
            throw new ArgumentException("The bike is not the owner's.", nameof(bike));
        }

        var documents = RiderDocuments.Of(owner, [], []);
        return writer.RemoveAsync(
            d =>
            {
                BikeWriter.Remove(d, bike);
                turns.WriteRider(d, documents);
            },
            ct);
    }

    public Task<ImmutableArray<OutboxMessage>> UnsaidAsync(string place, int limit, CancellationToken ct)
    {
        ThrowIfOutside(limit, 100);
        return readers.ReadAsync(d => Lookups.Unsaid(d, place, limit), ct);
    }

    /// <inheritdoc/>
    /// <remarks>A message that is not there was said before: marking it again does nothing.</remarks>
    public Task MarkSaidAsync(string outboxId, CancellationToken ct) =>
        writer.DoAsync(d => d.GetCollection(OutboxDocument.Collection).Delete(outboxId), alone: false, ct);

    public Task<ImmutableArray<Outcome>> OutcomesAsync(int limit, CancellationToken ct)
    {
        ThrowIfOutside(limit, 10_000);
        return readers.ReadAsync(d => Lookups.Outcomes(d, limit), ct);
    }

    /// <summary>
    /// Copies the store while it is in use: saves wait until the copy is on the disk, then it is read back from end to end.
    /// To restore: stop ShedBot, move the data file and its log away together, copy the backup to where the data file was, start again.
    /// </summary>
    /// <param name="path">A file that is not there yet, in a directory that is.</param>
    /// <returns>What was found in the copy.</returns>
    /// <exception cref="StoreRefusedException">No backup was made.</exception>
    public async Task<IntegrityReport> BackupAsync(string path, CancellationToken ct)
    {
        var target = Path.GetFullPath(path);
        Backup.RefuseIfThere(target);
        await writer.DoAsync(_ => Backup.Take(files, target), alone: true, ct);
        return await Task.Run(() => Backup.Finish(target, schema), ct);
    }

    /// <summary>Writes everything as JSON lines, <c>{"in":"cases","document":{…}}</c>, while the store is in use.</summary>
    /// <returns>How many documents were written.</returns>
    public Task<int> ExportAsync(Stream to, CancellationToken ct) => Export.WriteAsync(readers, to, ct);

    /// <summary>How the store is doing now. Costs next to nothing.</summary>
    public StoreHealth Health() => new(
        StoreFiles.LengthOf(files.Data), log.Length, log.Length > options.LogAlarmBytes, writer.Stopped?.Message);

    public async ValueTask DisposeAsync()
    {
        if (Interlocked.Exchange(ref disposed, 1) != 0)
        {
            return;
        }

        await readers.CloseAsync();
        await writer.EndAsync();
        db.Dispose();
        log.Dispose();
        readers.Dispose();
        await held.DisposeAsync();
    }

    private static LiteShedStore Open(StoreOptions options, StoreSchema schema)
    {
        var files = StoreFiles.At(options.Path);
        var held = StoreLock.Take(files);
        LiteDatabase? db = null;
        LogFile? log = null;
        try
        {
            (db, var report) = StoreOpening.Open(files, schema);
            log = new LogFile(files);
            // Saves of a process that died before its flush are in the log: from now on they are read, so they must last.
            log.Flush();
            return new LiteShedStore(files, options, schema, held, db, log, report);
        }
        catch
        {
            log?.Dispose();
            db?.Dispose();
            held.Dispose();
            throw;
        }
    }

    private static void ThrowIfOutside(int limit, int most)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(limit, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(limit, most);
    }
}
