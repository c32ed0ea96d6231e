using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Text.Json;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>
/// What members did and were told to wait for: written down before they are told, struck out once it is dealt with. What a process that died has left is
/// dealt with by the next one; what counted already counts once.
/// </summary>
internal sealed class Arrivals(Parts parts)
{
    private readonly ConcurrentQueue<InteractionCame> left = new();

    /// <summary>Those that go on after they were answered: whoever holds one strikes it out.</summary>
    private readonly ConcurrentDictionary<Snowflake, bool> held = new();

    /// <summary>To be awaited before the first event comes in: finds what the process before has left.</summary>
    public async Task LoadAsync(CancellationToken ct)
    {
        foreach (var arrival in await parts.Arrived.ArrivalsAsync(ct))
        {
            if (Read(arrival) is { } came) left.Enqueue(came);
            else await parts.Arrived.DropArrivalAsync(arrival.Id, ct);
        }
    }

    /// <returns>What is left over by now; none of it can be answered as an interaction any more.</returns>
    public ImmutableArray<InteractionCame> TakeLeft()
    {
        var taken = ImmutableArray.CreateBuilder<InteractionCame>();
        for (var count = left.Count; count > 0 && left.TryDequeue(out var came); count--) taken.Add(came);
        return taken.ToImmutable();
    }

    /// <summary>The platform did not let it be dealt with; it waits for another round.</summary>
    public void PutBack(InteractionCame came) => left.Enqueue(came);

    /// <returns>False when it could not be written down: then nobody should be told to wait.</returns>
    public async Task<bool> KeepAsync(InteractionCame came, CancellationToken ct)
    {
        try
        {
            await parts.Arrived.KeepArrivalAsync(Write(came), ct);
            return true;
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            parts.Log.Failed(e);
            return false;
        }
    }

    /// <summary>Writes down something that goes on after it was answered, so that a process that dies leaves it to the next one.</summary>
    /// <returns>False when it could not be written down.</returns>
    public Task<bool> HoldAsync(InteractionCame came, CancellationToken ct)
    {
        held[came.Interaction.Id] = true;
        return KeepAsync(came, ct);
    }

    /// <summary>What was held is done.</summary>
    public Task ReleaseAsync(InteractionCame came, CancellationToken ct)
    {
        held.TryRemove(came.Interaction.Id, out _);
        return DropAsync(came, ct);
    }

    public Task DropAsync(InteractionCame came, CancellationToken ct) => held.ContainsKey(came.Interaction.Id) ? Task.CompletedTask : parts.Arrived.DropArrivalAsync(came.Interaction.Id.ToString(), ct);

    /// <summary>Without its token, which is a secret and too old by the time it is read.</summary>
    private static Arrival Write(InteractionCame came)
    {
        var used = came.Interaction with { Token = "" };
        var who = used.Who?.Id.ToString() ?? used.Id.ToString();
        var member = used.GuildId.IsNone ? new MemberId(who) : Names.Club(used.GuildId).Member(who);
        return new Arrival(used.Id.ToString(), member, JsonSerializer.Serialize(used, WireJson.Default.Interaction), came.At);
    }

    private static InteractionCame? Read(Arrival arrival)
    {
        try
        {
            return JsonSerializer.Deserialize(arrival.Content, WireJson.Default.Interaction) is { } used ? new InteractionCame(used) { At = arrival.At } : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
