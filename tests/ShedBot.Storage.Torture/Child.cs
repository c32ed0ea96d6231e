using System.Collections.Immutable;

namespace ShedBot.Storage.Torture;

/// <summary>What runs in the process that is killed.</summary>
internal static class Child
{
    /// <summary>Every member takes turns as fast as the store lets them; each acknowledged step is printed: member, step.</summary>
    public static async Task<int> SaveAsync(string path, bool durable)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = path, Durable = durable, CheckpointBytes = 1 << 20 }, default);
        await Task.WhenAll(Enumerable.Range(0, Script.Members).Select(m => Task.Run(() => TakeTurnsAsync(store, m))));
        return 0;
    }

    /// <summary>Keeps a store open until somebody closes the input.</summary>
    public static async Task<int> HoldAsync(string path)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = path }, default);
        Console.WriteLine("open");
        await Console.In.ReadToEndAsync();
        return 0;
    }

    private static async Task TakeTurnsAsync(LiteShedStore store, int member)
    {
        var last = await store.CasesOfAsync(Script.Member(member), 1, default) is [var c] ? Script.StepOf(c) : -1;
        if (last >= 0)
        {
            await SayAllBeforeAsync(store, member, last);
        }

        while (true)
        {
            var turn = Script.Turn(member, ++last);
            await store.SaveAsync(turn, default);
            // One write for the line: the parent must never read half of one as a whole.
            Console.Write($"{member} {last}\n");
            await SayAllBeforeAsync(store, member, last);
        }
    }

    private static async Task SayAllBeforeAsync(LiteShedStore store, int member, int step)
    {
        var turn = Script.Turn(member, step);
        ImmutableArray<string> said =
            [.. (await store.UnsaidAsync(turn.Case.Place, 100, default)).Select(m => m.Id).Where(id => turn.Say.All(m => m.Id != id))];
        if (!Script.HasRoom(member))
        {
            foreach (var id in said)
            {
                await store.MarkSaidAsync(id, default);
            }

            return;
        }

        var room = Script.RoomAt(member, step);
        // After a kill the room may have landed already.
        if ((await store.FindRoomAsync(room.Place, default))?.Version != room.Version)
        {
            await store.SaveRoomAsync(room, said, default);
        }
    }
}
