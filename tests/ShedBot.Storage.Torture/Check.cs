using System.Text.Json;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Storage.Torture;

/// <summary>Opens the store after a kill and holds it against the script.</summary>
internal static class Check
{
    /// <param name="kills">Kills since the last check: each may have come between one save of a member and its acknowledgement.</param>
    /// <returns>How many steps were found beyond those acknowledged. They count as acknowledged from now on.</returns>
    public static async Task<int> RunAsync(string path, int[] acknowledged, int kills, string when, List<string> losses, CancellationToken ct)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = path }, ct);
        var ahead = 0;
        for (var member = 0; member < Script.Members; member++)
        {
            var step = await StepOfAsync(store, member, ct);
            if (step < acknowledged[member] || step > acknowledged[member] + kills)
            {
                losses.Add($"{when}: member {member} acknowledged up to {acknowledged[member]}, found {step}");
                continue;
            }

            ahead += step - acknowledged[member];
            acknowledged[member] = step;
            if (step >= 0)
            {
                await CheckStepAsync(store, member, step, when, losses, ct);
            }
        }

        return ahead;
    }

    private static async Task<int> StepOfAsync(LiteShedStore store, int member, CancellationToken ct) =>
        await store.CasesOfAsync(Script.Member(member), 1, ct) is [var c] ? Script.StepOf(c) : -1;

    private static async Task CheckStepAsync(LiteShedStore store, int member, int step, string when, List<string> losses, CancellationToken ct)
    {
        void Expect<T>(string what, T expected, T actual)
        {
            if (JsonSerializer.Serialize(expected) != JsonSerializer.Serialize(actual))
            {
                losses.Add($"{when}: member {member} at step {step}: the {what} is not the one of that step");
            }
        }

        var turn = Script.Turn(member, step);
        Expect("case", turn.Case, await store.FindCaseAsync(turn.Case.Id, ct));
        Expect("bike", Script.BikeAt(member, step), await store.FindBikeAsync(turn.Case.Bike, ct));
        for (var closed = Script.TurnsOfACase - 1; closed <= step; closed += Script.TurnsOfACase)
        {
            Expect("closed case", Script.Turn(member, closed).Case, await store.FindCaseAsync(Script.CaseAt(member, closed), ct));
        }

        Expect("last case", turn.Case, await store.FindLastCaseAsync(Script.Member(member), turn.Case.Place, ct));
        // Said are those of the steps before, from the oldest on; at most one step's worth may still wait with this one's.
        var unsaid = await store.UnsaidAsync(turn.Case.Place, 100, ct);
        OutboxMessage[] mayWait = [.. step == 0 ? [] : Script.Turn(member, step - 1).Say, .. turn.Say];
        Expect("outbox", mayWait.TakeLast(Math.Max(unsaid.Length, turn.Say.Length)), unsaid);
        if (!Script.HasRoom(member))
        {
            return;
        }

        // The room is one save behind as long as the step before it waits to be said, and only then.
        var behind = step > 0 && unsaid.Length > turn.Say.Length;
        var room = await store.FindRoomAsync(turn.Case.Place, ct);
        if (step > 0 || room is not null)
        {
            Expect("room", Script.RoomAt(member, behind ? step - 1 : step), room);
        }
    }
}
