using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Moves;

namespace ShedBot.Storage.Torture.Learning;

/// <summary>What runs in the process that is killed: one club after the other learns by itself, loses a member, and counts anew.</summary>
internal static class LearningChild
{
    /// <summary>Rounds that are asked for where one would do: a round that is not due must do nothing.</summary>
    private const int Rounds = 2;

    /// <summary>Each step that is done is printed: club, step.</summary>
    /// <param name="from">The club that the process before was at; what is done of it already must not be done again.</param>
    public static async Task<int> RunAsync(string path, int from)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = path, CheckpointBytes = 1 << 20 }, default);
        using var desk = Syllabus.Desk(store);
        // Counting once beforehand: else a process would spend its whole short life on its first count.
        Syllabus.Expected(from);
        for (var club = from; ; club++) await LearnAsync(store, desk, club);
    }

    private static async Task LearnAsync(LiteShedStore store, TeachDesk desk, int club)
    {
        // Once a member has left, their cases must not come back.
        if (await store.NewestEditionAsync(Syllabus.Club(club), default) == 0)
        {
            foreach (var closed in Syllabus.Cases(club))
            {
                if (await store.FindCaseAsync(closed.Case.Id, default) is null) await store.SaveAsync(closed, default);
            }

            await desk.HandleAsync(Syllabus.Keeper(club), Syllabus.Choice, Syllabus.Now, default);
        }

        // One write for a line: the parent must never read half of one as a whole.
        Console.Write($"{club} {nameof(LearningStep.Filled)}\n");
        await RoundsAsync(desk, club);
        Console.Write($"{club} {nameof(LearningStep.Learnt)}\n");
        await store.ForgetMemberAsync(Syllabus.Leaver(club), default);
        Console.Write($"{club} {nameof(LearningStep.Left)}\n");
        await RoundsAsync(desk, club);
        Console.Write($"{club} {nameof(LearningStep.CountedAnew)}\n");
    }

    private static async Task RoundsAsync(TeachDesk desk, int club)
    {
        for (var round = 0; round < Rounds || (await desk.RoundAsync(Syllabus.Club(club), Syllabus.Now, default)).Outcome != RoundOutcome.NotDue; round++)
            await desk.RoundAsync(Syllabus.Club(club), Syllabus.Now, default);
    }
}

/// <summary>How far a club is.</summary>
internal enum LearningStep
{
    None,

    /// <summary>Its cases are closed, and it has chosen to learn by itself.</summary>
    Filled,

    Learnt,

    /// <summary>One member has left.</summary>
    Left,

    CountedAnew,
}
