using ShedBot.Coaching.Nudging;

namespace ShedBot.Storage.Torture.Reminders;

/// <summary>What a campaign of reminders found.</summary>
/// <param name="Acknowledged">Reminders whose saving the killed processes had acknowledged.</param>
/// <param name="Sent">Different messages that reached the chat.</param>
/// <param name="Offered">Times that a message was offered to the chat again, after a death between sending and noting it: the chat knows its name.</param>
/// <param name="Problems">What was lost or doubled.</param>
public sealed record ReminderResult(int Kills, int Acknowledged, int Sent, int Offered, IReadOnlyList<string> Problems);

/// <summary>Starts a process that reminds, kills it with a signal that it cannot catch, again and again, and counts what reached the chat.</summary>
public static class ReminderCampaign
{
    private const int LongestLifeMs = 400;

    public static async Task<ReminderResult> RunAsync(string directory, int kills, Random chance, CancellationToken ct)
    {
        var (path, chat) = (Path.Combine(directory, "shed.db"), Path.Combine(directory, "chat.txt"));
        var acknowledged = new HashSet<string>(StringComparer.Ordinal);
        for (var kill = 0; kill < kills; kill++) await LiveAndDieAsync(path, chat, chance.Next(1, LongestLifeMs), acknowledged, ct);
        var offered = (await File.ReadAllLinesAsync(chat, ct)).Concat(await WaitingAsync(path, ct)).Select(l => l[..l.IndexOf(' ', StringComparison.Ordinal)]).ToList();
        var sent = offered.ToHashSet(StringComparer.Ordinal);
        var problems = acknowledged.Except(sent).Select(m => $"{m} was acknowledged and never sent").ToList();
        problems.AddRange(await GapsAsync(path, sent, ct));
        // A death can leave one message of each member sent and not noted, no more.
        if (offered.Count - sent.Count > kills * Routine.Members) problems.Add($"{offered.Count - sent.Count} messages were offered again in {kills} kills");
        return new ReminderResult(kills, acknowledged.Count, sent.Count, offered.Count - sent.Count, problems);
    }

    /// <summary>What the next process would send.</summary>
    private static async Task<List<string>> WaitingAsync(string path, CancellationToken ct)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = path }, ct);
        var waiting = new List<string>();
        for (var member = 0; member < Routine.Members; member++)
        {
            var place = Decision.PlaceOf(Routine.Member(member));
            waiting.AddRange((await store.UnsaidAsync(place, 100, ct)).Select(m => $"{m.Id} {m.Card.Title}"));
        }

        return waiting;
    }

    /// <summary>One message for each day of each member: every day up to the last that the store knows of, and nothing else.</summary>
    private static async Task<List<string>> GapsAsync(string path, HashSet<string> sent, CancellationToken ct)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = path }, ct);
        var (problems, expected) = (new List<string>(), new HashSet<string>(StringComparer.Ordinal));
        for (var member = 0; member < Routine.Members; member++)
        {
            var last = (await store.FindRiderAsync(Routine.Member(member), ct))?.LastDay;
            for (var day = 0; Routine.First.PlusDays(day) <= last; day++) expected.Add(Routine.Message(member, day));
        }

        problems.AddRange(expected.Except(sent).Select(m => $"{m} is missing"));
        problems.AddRange(sent.Except(expected).Select(m => $"{m} should not be"));
        return problems;
    }

    private static async Task LiveAndDieAsync(string path, string chat, int lifeMs, HashSet<string> acknowledged, CancellationToken ct)
    {
        using var child = Campaign.Start("remind", path, chat);
        try
        {
            // Life is counted from the first acknowledgement, else a slow start would be all that is ever killed.
            acknowledged.Add(await child.StandardOutput.ReadLineAsync(ct)
                ?? throw new InvalidOperationException($"The reminding process ended by itself: {await child.StandardError.ReadToEndAsync(ct)}"));
            var rest = child.StandardOutput.ReadToEndAsync(ct);
            await Task.Delay(lifeMs, ct);
            child.Kill();
            // What comes after the last line feed was cut off by the kill.
            acknowledged.UnionWith((await rest).Split('\n')[..^1]);
        }
        finally
        {
            child.Kill();
            await child.WaitForExitAsync(CancellationToken.None);
        }
    }
}
