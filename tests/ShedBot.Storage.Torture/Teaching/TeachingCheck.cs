using System.Text.Json;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Storage.Torture.Teaching;

/// <summary>Opens the store after a kill and holds every club against its lesson, from the first edition to the last.</summary>
internal sealed class TeachingCheck(LiteShedStore store, int club, string when, List<string> problems)
{
    private readonly ShedBot.Coaching.Clubs.ClubId id = Lesson.Club(club);

    /// <param name="acknowledged">Of each club the last edition that was acknowledged, and the last after which somebody was known to be forgotten. Brought up to what is found.</param>
    /// <param name="kills">Kills since the last check: each may have come between one save of a club and its acknowledgement.</param>
    /// <returns>How many editions were found beyond those acknowledged.</returns>
    public static async Task<int> RunAsync(string path, (int Published, int Forgotten)[] acknowledged, int kills, string when, List<string> problems, CancellationToken ct)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = path }, ct);
        var ahead = 0;
        for (var club = 0; club < Lesson.Clubs; club++)
        {
            var (published, forgotten) = acknowledged[club];
            var newest = await store.NewestEditionAsync(Lesson.Club(club), ct);
            if (newest < published || newest > published + kills) problems.Add($"{when}: club {club} acknowledged edition {published}, found {newest}");
            ahead += newest - published;
            acknowledged[club] = (newest, await new TeachingCheck(store, club, when, problems).CheckAsync(newest, forgotten, ct));
        }

        return ahead;
    }

    /// <returns>The last edition after which somebody was forgotten.</returns>
    private async Task<int> CheckAsync(int newest, int forgotten, CancellationToken ct)
    {
        // Forgetting comes after its edition, so the one after the newest may or may not have landed; earlier ones must have.
        var due = newest - (newest % Lesson.ForgetEvery);
        var last = due == newest && due > forgotten && !await IsForgottenAsync(due, ct) ? due - Lesson.ForgetEvery : due;
        for (var number = 1; number <= newest; number++)
        {
            var gone = Enumerable.Range(1, last / Lesson.ForgetEvery).Select(n => n * Lesson.ForgetEvery)
                .Any(after => after >= number && Lesson.ForgottenAfter(after) == Lesson.AuthorOf(number));
            Expect($"edition {number}", gone ? Lesson.Unsigned(club, number) : Lesson.Edition(club, number), await store.FindEditionAsync(id, number, ct));
            var proposal = Lesson.Proposal(club, number);
            Expect($"proposal {number}", gone ? proposal with { By = default, ByName = "", Version = 3 } : proposal, await store.FindProposalAsync(id, Lesson.ProposalId(number), ct));
        }

        if (await store.FindEditionAsync(id, newest + 1, ct) is not null) problems.Add($"{when}: club {club} has an edition beyond its newest");
        await CheckAuditAsync(newest, ct);
        return last;
    }

    private async Task<bool> IsForgottenAsync(int after, CancellationToken ct)
    {
        var author = Lesson.ForgottenAfter(after);
        var theirs = Enumerable.Range(0, after).Select(n => after - n).First(n => Lesson.AuthorOf(n) == author);
        return (await store.FindEditionAsync(id, theirs, ct))?.By is null;
    }

    /// <summary>Two lines an edition, in order and without a gap, and one more while the next is a draft.</summary>
    private async Task CheckAuditAsync(int newest, CancellationToken ct)
    {
        var drafted = await store.FindProposalAsync(id, Lesson.ProposalId(newest + 1), ct) is not null;
        var lines = new List<(long, AuditAct, string)>();
        for (var before = long.MaxValue; await store.AuditAsync(id, before, 100, ct) is { IsEmpty: false } page; before = page[^1].Number)
        {
            lines.AddRange(page.Select(a => (a.Number, a.Act, a.Subject)));
        }

        lines.Reverse();
        var expected = Enumerable.Range(1, newest)
            .SelectMany(n => new[] { ((2L * n) - 1, AuditAct.Began, Lesson.ProposalId(n)), (2L * n, AuditAct.Published, Lesson.ProposalId(n)) })
            .Concat(drafted ? [((2L * newest) + 1, AuditAct.Began, Lesson.ProposalId(newest + 1))] : []);
        if (!lines.SequenceEqual(expected)) problems.Add($"{when}: the audit of club {club} has {lines.Count} lines at edition {newest}, not those of its acts");
    }

    private void Expect<T>(string what, T expected, T? actual)
    {
        if (JsonSerializer.Serialize(expected) != JsonSerializer.Serialize(actual)) problems.Add($"{when}: {what} of club {club} is not as it was published");
    }
}
