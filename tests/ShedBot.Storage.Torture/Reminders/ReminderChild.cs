using System.Text;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Nudging;

namespace ShedBot.Storage.Torture.Reminders;

/// <summary>What runs in the process that is killed: finds who is due, decides, saves, sends, and has the task done, as fast as the store lets it.</summary>
internal sealed class ReminderChild(LiteShedStore store, FileStream chat)
{
    /// <param name="chat">Stands for the chat: each line is a message as it was offered, name and due keys.</param>
    public static async Task<int> RunAsync(string path, string chat)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = path, CheckpointBytes = 1 << 20 }, default);
        await using var file = new FileStream(chat, FileMode.Append, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
        var child = new ReminderChild(store, file);
        foreach (var member in Enumerable.Range(0, Routine.Members)) await child.BeginAsync(member);
        while (true)
        {
            // The members' own clocks: each is looked at when their next look has come, whenever that is.
            var due = await store.DueRidersAsync(DateTimeOffset.MaxValue, Routine.Members, default);
            await Task.WhenAll(due.Select(r => Task.Run(() => child.RemindAsync(r))));
        }
    }

    /// <summary>What a death left undone is done first: what waits is sent, and what was sent is answered.</summary>
    private async Task BeginAsync(int member)
    {
        if (await store.FindBikeAsync(Routine.Bike(member).Id, default) is null) await store.SaveBikeAsync(Routine.Bike(member), default);
        if (await store.FindRiderAsync(Routine.Member(member), default) is not { } rider)
        {
            await store.SaveRiderAsync(Routine.Fresh(member), [], [], default);
            return;
        }

        await SendAsync(rider.Member);
        await AnswerAsync(rider);
    }

    private async Task RemindAsync(Rider rider)
    {
        var bikes = await store.BikesOfAsync(rider.Member, default);
        var decided = Nudger.Decide(rider, bikes, Routine.Knowledge, Routine.Zone, rider.NextLook!.Value);
        var outbox = decided.Outbox();
        await store.SaveRiderAsync(decided.After, [], outbox, default);
        foreach (var message in outbox) Console.Write(message.Id + "\n");
        await SendAsync(rider.Member);
        await AnswerAsync(decided.After);
    }

    private async Task SendAsync(MemberId member)
    {
        foreach (var message in await store.UnsaidAsync(Decision.PlaceOf(member), 100, default))
        {
            // One write for the line, straight to the system: it outlives the process, and half of it is never met.
            lock (chat) chat.Write(Encoding.UTF8.GetBytes($"{message.Id} {message.Card.Title}\n"));
            await store.MarkSaidAsync(message.Id, default);
        }
    }

    /// <summary>An hour later all of it is done. The bike is saved before the member: killed in between, the same answer finds it done.</summary>
    private async Task AnswerAsync(Rider rider)
    {
        if (rider is not { LastDay: { } day, LastAt: { } at, Unanswered: > 0 }) return;
        var bikes = await store.BikesOfAsync(rider.Member, default);
        var taken = Taking.Take(rider, bikes, new NudgeAnswer(NudgeVerb.AllDone, day), Routine.Knowledge, Routine.Zone, at.AddHours(1));
        await store.SaveRiderAsync(taken.Rider, taken.Bikes, [], default);
    }
}
