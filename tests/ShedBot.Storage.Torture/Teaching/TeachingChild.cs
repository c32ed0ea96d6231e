using ShedBot.Coaching.Keeping;

namespace ShedBot.Storage.Torture.Teaching;

/// <summary>What runs in the process that is killed: every club proposes, publishes and forgets as fast as the store lets it.</summary>
internal static class TeachingChild
{
    /// <summary>Each acknowledged act is printed: club, edition, what.</summary>
    public static async Task<int> RunAsync(string path)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = path, CheckpointBytes = 1 << 20 }, default);
        await Task.WhenAll(Enumerable.Range(0, Lesson.Clubs).Select(c => Task.Run(() => TeachAsync(store, c))));
        return 0;
    }

    private static async Task TeachAsync(LiteShedStore store, int club)
    {
        var number = await store.NewestEditionAsync(Lesson.Club(club), default);
        if (number > 0) await AgainAsync(store, club, number);
        while (true)
        {
            number++;
            if (await store.FindProposalAsync(Lesson.Club(club), Lesson.ProposalId(number), default) is null)
            {
                await store.SaveTeachingAsync(Lesson.Draft(club, number), default);
                // One write for the line: the parent must never read half of one as a whole.
                Console.Write($"{club} {number} draft\n");
            }

            await store.SaveTeachingAsync(Lesson.Publish(club, number), default);
            Console.Write($"{club} {number} publish\n");
            await ForgetAsync(store, club, number);
        }
    }

    /// <summary>Nobody knows whether the last acts were acknowledged, so they are done again: that must change nothing.</summary>
    private static async Task AgainAsync(LiteShedStore store, int club, int number)
    {
        try
        {
            await store.SaveTeachingAsync(Lesson.Publish(club, number), default);
        }
        catch (StaleSaveException) when (Lesson.ForgottenAfter(number) == Lesson.AuthorOf(number))
        {
            // Whoever published it was forgotten before the death.
        }

        // The next draft comes after it, and may be of the same moderator: then it is done, and doing it again would take that one too.
        if (await store.FindProposalAsync(Lesson.Club(club), Lesson.ProposalId(number + 1), default) is null) await ForgetAsync(store, club, number);
    }

    private static async Task ForgetAsync(LiteShedStore store, int club, int number)
    {
        if (Lesson.ForgottenAfter(number) is not { } author) return;
        await store.ForgetMemberAsync(Lesson.Member(club, author), default);
        Console.Write($"{club} {number} forget\n");
    }
}
