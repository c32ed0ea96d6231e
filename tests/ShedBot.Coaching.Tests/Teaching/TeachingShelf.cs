using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Moves;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>A shelf for clubs' rules in memory, as strict about versions as the port asks for.</summary>
internal sealed class TeachingShelf : ITeachingStore
{
    private readonly object gate = new();
    private readonly Dictionary<(ClubId, string), Proposal> proposals = [];
    private readonly Dictionary<(ClubId, string), Tip> tips = [];
    private readonly Dictionary<ClubId, TeachingSettings> settings = [];
    private readonly Dictionary<(ClubId, int), RulesEdition> editions = [];
    private readonly List<AuditEntry> audit = [];
    private readonly Dictionary<ClubId, LearningBook> books = [];

    /// <summary>What was decided to be said, in order.</summary>
    public List<OutboxMessage> Said { get; } = [];

    public List<ClosedCase> Closed { get; } = [];

    /// <summary>Oldest first.</summary>
    public List<UnheardWords> Unheard { get; } = [];

    /// <summary>Done once, just before the next save: what somebody else does in between.</summary>
    public Func<Task>? BeforeSave { get; set; }

    public Task<int> NewestEditionAsync(ClubId club, CancellationToken ct) => Task.FromResult(Newest(club));

    public Task<RulesEdition?> FindEditionAsync(ClubId club, int number, CancellationToken ct) => Task.FromResult(editions.GetValueOrDefault((club, number)));

    public Task<ImmutableArray<EditionHead>> EditionsAsync(ClubId club, int limit, CancellationToken ct) =>
        Task.FromResult<ImmutableArray<EditionHead>>([.. editions.Values.Where(e => e.Club == club).OrderByDescending(e => e.Number).Take(limit).Select(e => e.Head)]);

    public Task<TeachingSettings> TeachingSettingsAsync(ClubId club, CancellationToken ct) => Task.FromResult(settings.GetValueOrDefault(club) ?? TeachingSettings.New(club));

    public Task<Proposal?> FindProposalAsync(ClubId club, string id, CancellationToken ct) => Task.FromResult(proposals.GetValueOrDefault((club, id)));

    public Task<ImmutableArray<Proposal>> ProposalsAsync(ClubId club, ProposalState state, int limit, CancellationToken ct) =>
        Task.FromResult<ImmutableArray<Proposal>>([.. proposals.Values.Where(p => p.Club == club && p.State == state).OrderByDescending(p => p.ChangedAt).Take(limit)]);

    public Task<Tip?> FindTipAsync(ClubId club, string id, CancellationToken ct) => Task.FromResult(tips.GetValueOrDefault((club, id)));

    public Task<ImmutableArray<Tip>> TipsAsync(ClubId club, TipState state, int limit, CancellationToken ct) =>
        Task.FromResult<ImmutableArray<Tip>>([.. tips.Values.Where(t => t.Club == club && t.State == state).OrderBy(t => t.At).Take(limit)]);

    public Task<ImmutableArray<AuditEntry>> AuditAsync(ClubId club, long before, int limit, CancellationToken ct) =>
        Task.FromResult<ImmutableArray<AuditEntry>>([.. audit.Where(a => a.Club == club && a.Number < before).OrderByDescending(a => a.Number).Take(limit)]);

    public async Task SaveTeachingAsync(TeachingSaved saved, CancellationToken ct)
    {
        if (BeforeSave is { } between)
        {
            BeforeSave = null;
            await between();
        }

        lock (gate)
        {
            var club = saved.Club;
            Assert.True(!saved.Audit.IsEmpty || saved is { Book: not null, Proposal: null, Tip: null, Settings: null, Edition: null });
            Check(saved.Proposal is null || (proposals.GetValueOrDefault((club, saved.Proposal.Id))?.Version ?? 0) == saved.Proposal.Version - 1, "The proposal");
            Check(saved.Tip is null || (tips.GetValueOrDefault((club, saved.Tip.Id))?.Version ?? 0) == saved.Tip.Version - 1, "The tip");
            Check(saved.Settings is null || (settings.GetValueOrDefault(club)?.Version ?? 0) == saved.Settings.Version - 1, "The settings");
            Check(saved.Edition is null || Newest(club) == saved.Edition.Number - 1, "The edition");
            Check(saved.Book is null || (books.GetValueOrDefault(club)?.Version ?? 0) == saved.Book.Version - 1, "The notes of learning");
            if (saved.Book is { } book) books[club] = book;
            if (saved.Proposal is { } proposal) proposals[(club, proposal.Id)] = proposal;
            if (saved.Tip is { } tip) tips[(club, tip.Id)] = tip;
            if (saved.Settings is { } chosen) settings[club] = chosen;
            if (saved.Edition is { } edition) editions[(club, edition.Number)] = edition;
            foreach (var entry in saved.Audit) audit.Add(entry with { Number = audit.Count(a => a.Club == club) + 1 });
            Said.AddRange(saved.Say);
        }
    }

    public Task<ImmutableArray<ClosedCase>> ClosedCasesAsync(ClubId club, int limit, CancellationToken ct) => Task.FromResult<ImmutableArray<ClosedCase>>([.. Of(club).Take(limit)]);

    public Task<LearningBook> LearningBookAsync(ClubId club, CancellationToken ct) => Task.FromResult(books.GetValueOrDefault(club) ?? LearningBook.New(club));

    public Task<ClosedMark> ClosedMarkAsync(ClubId club, DateTimeOffset until, CancellationToken ct)
    {
        var closed = Of(club).Where(c => c.Outcome.At <= until).Select(c => $"{c.Case.Id} {c.Outcome.At:O}").Order(StringComparer.Ordinal).ToList();
        return Task.FromResult(new ClosedMark(closed.Count, string.Join('|', closed)));
    }

    /// <summary>As a store does when a member with closed cases goes.</summary>
    public void Forget(MemberId member)
    {
        var club = ClubId.Serving(member);
        Closed.RemoveAll(c => c.Case.Member == member);
        var (newest, book) = (Newest(club), books.GetValueOrDefault(club) ?? LearningBook.New(club));
        books[club] = book.Next() with { LookedAt = null, Looked = "", Anew = newest == 0 || book.Anew.Length > 0 ? book.Anew : editions[(club, newest)].Learnt, Forgotten = newest };
    }

    public Task<ImmutableArray<UnheardWords>> UnheardAsync(ClubId club, int limit, CancellationToken ct) =>
        Task.FromResult<ImmutableArray<UnheardWords>>([.. Unheard.Where(u => ClubId.Serving(u.Member) == club).Reverse().Take(limit)]);

    public Task AddUnheardAsync(UnheardWords words, CancellationToken ct)
    {
        Unheard.Add(words);
        return Task.CompletedTask;
    }

    public Task DropUnheardAsync(ClubId club, string words, CancellationToken ct)
    {
        Unheard.RemoveAll(u => ClubId.Serving(u.Member) == club && u.Words.Trim().Equals(words.Trim(), StringComparison.OrdinalIgnoreCase));
        return Task.CompletedTask;
    }

    private IEnumerable<ClosedCase> Of(ClubId club) => Closed.Where(c => ClubId.Serving(c.Case.Member) == club);

    private int Newest(ClubId club) => editions.Keys.Where(k => k.Item1 == club).Select(k => k.Item2).DefaultIfEmpty(0).Max();

    private static void Check(bool fresh, string what)
    {
        if (!fresh) throw new StaleSaveException(what);
    }
}
