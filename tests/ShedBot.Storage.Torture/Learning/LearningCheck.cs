using System.Collections.Immutable;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Moves;

namespace ShedBot.Storage.Torture.Learning;

/// <summary>Opens the store after a kill and holds every club against its syllabus: editions, lines of the log, and the notes of what was looked over.</summary>
internal sealed class LearningCheck(LiteShedStore store, int club, string when, List<string> problems)
{
    private readonly Coaching.Clubs.ClubId id = Syllabus.Club(club);

    /// <param name="steps">How far each club had told that it is; the one after the last may have begun.</param>
    /// <param name="finish">What is begun is first done to its end, as the next process would.</param>
    public static async Task RunAsync(string path, Dictionary<int, LearningStep> steps, string when, bool finish, List<string> problems, CancellationToken ct)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = path }, ct);
        using var desk = Syllabus.Desk(store);
        foreach (var club in steps.Keys)
        {
            if (finish) while ((await desk.RoundAsync(Syllabus.Club(club), Syllabus.Now, ct)).Outcome != RoundOutcome.NotDue) { }
            await new LearningCheck(store, club, when, problems).CheckAsync(finish && steps[club] < LearningStep.Learnt ? LearningStep.Learnt : steps[club], ct);
        }

        if (await store.UnsaidPlacesAsync(10, ct) is { IsEmpty: false }) problems.Add($"{when}: something waits to be said, and learning says nothing to members");
    }

    private async Task CheckAsync(LearningStep told, CancellationToken ct)
    {
        var (newest, book) = (await store.NewestEditionAsync(id, ct), await store.LearningBookAsync(id, ct));
        var left = (await store.CasesOfAsync(Syllabus.Leaver(club), 1, ct)).IsEmpty;
        Expect(newest >= (told >= LearningStep.CountedAnew ? 2 : told >= LearningStep.Learnt ? 1 : 0), $"edition {newest} though it had told {told}");
        Expect(newest <= (left ? 2 : 1), $"edition {newest}, more than it has to learn");
        Expect(left || told < LearningStep.Left, "the member who left is back");
        await CheckEditionsAsync(newest, ct);
        await CheckLogAsync(newest, ct);
        // What was looked over is noted with the edition that came of it, and what is to be counted anew with the member's going.
        Expect(newest > 0 || book.Looked.Length == 0, "looked over is noted, and no edition came of it");
        Expect(newest != 1 || (left ? book.Anew.Length > 0 : book.Looked.Length > 0), "edition 1 stands without its note");
        Expect(newest != 2 || book.Anew.Length == 0, "edition 2 is out and still to be counted");
        foreach (var state in Enum.GetValues<ProposalState>()) Expect((await store.ProposalsAsync(id, state, 10, ct)).IsEmpty, $"a proposal that is {state}");
    }

    private async Task CheckEditionsAsync(int newest, CancellationToken ct)
    {
        var (first, second) = Syllabus.Expected(club);
        for (var number = 1; number <= newest; number++)
        {
            var edition = await store.FindEditionAsync(id, number, ct);
            Expect(edition is { By: null, ByName: "ShedBot", Layer: "" }, $"edition {number} is missing or has another author");
            Expect(edition?.Learnt == (number == 1 ? first : second), $"edition {number} has other numbers than its cases say");
        }

        Expect(await store.FindEditionAsync(id, newest + 1, ct) is null, "an edition beyond the newest");
    }

    /// <summary>One line for each edition, and none besides.</summary>
    private async Task CheckLogAsync(int newest, CancellationToken ct)
    {
        ImmutableArray<string> lines = [.. (await store.AuditAsync(id, long.MaxValue, 100, ct)).Reverse().Where(a => a.Act == AuditAct.Learnt).Select(a => $"{a.Subject} {a.What}")];
        Expect(lines.Length == newest, $"{lines.Length} lines of what was learnt for {newest} editions");
        if (newest > 0) Expect(lines is [var learnt, ..] && learnt.StartsWith("1 learnt by itself", StringComparison.Ordinal), "the line of edition 1 tells something else");
        if (newest > 1) Expect(lines is [_, var anew, ..] && anew.StartsWith("2 counted anew", StringComparison.Ordinal), "the line of edition 2 tells something else");
    }

    private void Expect(bool holds, string otherwise)
    {
        if (!holds) problems.Add($"{when}: {id}: {otherwise}");
    }
}
