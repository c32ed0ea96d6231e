using System.Collections.Immutable;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Teaching;

/// <summary>The project's rules, and the coach of a club that has no word of its own.</summary>
/// <param name="Base">Its knowledge is not null.</param>
public sealed record Ground(RuleBase Base, Coach Coach);

/// <summary>The rules that serve a club's next turn.</summary>
/// <param name="Edition">The number of the club's edition; 0 for none.</param>
/// <param name="Layer">The club's own word.</param>
/// <param name="Learnt">What was learnt from its cases.</param>
/// <param name="Conflicts">Where the project's rules have changed under the club's word, which counts.</param>
/// <param name="SetAside">What of the club's word no longer fits the project's rules, and is not used.</param>
public sealed record ServedRules(int Edition, Coach Coach, Layer Layer, Learnt Learnt, ImmutableArray<Conflict> Conflicts, ImmutableArray<SetAside> SetAside)
{
    public static ServedRules Plain(Ground ground) => new(0, ground.Coach, Layer.Empty, Learnt.Nothing, [], []);
}

/// <summary>
/// The coach of each club. The number of a club's newest edition is looked up for each turn, so that what was published, by whichever process, serves the
/// next one; coaches of the clubs that were asked for last are kept ready.
/// </summary>
/// <param name="ground">Asked each time, so that rule files changed while running serve the next turn.</param>
/// <param name="most">How many clubs' coaches are kept ready; 1 or more. Clubs without a word of their own share one and count for none.</param>
public sealed class ClubCoaches(ITeachingStore store, Func<Ground> ground, int most = ClubCoaches.UsualMost) : ICoaches
{
    /// <summary>A coach of its own takes a few megabytes beside the shared rules.</summary>
    public const int UsualMost = 64;

    private readonly Lock gate = new();
    private readonly Dictionary<ClubId, Kept> ready = [];
    private long asked;

    public async ValueTask<Coach> OfAsync(ClubId club, CancellationToken ct) => (await RulesAsync(club, ct)).Coach;

    public async ValueTask<ServedRules> RulesAsync(ClubId club, CancellationToken ct)
    {
        var under = ground();
        var newest = await store.NewestEditionAsync(club, ct);
        if (newest == 0) return ServedRules.Plain(under);
        var kept = Keep(club, newest, under);
        try
        {
            return await kept.Loading.WaitAsync(ct);
        }
        catch (Exception) when (kept.Loading.IsFaulted)
        {
            lock (gate)
            {
                if (ready.GetValueOrDefault(club) == kept) ready.Remove(club);
            }

            throw;
        }
    }

    private Kept Keep(ClubId club, int newest, Ground under)
    {
        lock (gate)
        {
            if (ready.TryGetValue(club, out var kept) && kept.Number == newest && ReferenceEquals(kept.Under, under))
            {
                kept.LastAsked = ++asked;
                return kept;
            }

            if (!ready.ContainsKey(club) && ready.Count >= most) ready.Remove(ready.MinBy(r => r.Value.LastAsked).Key);
            // Not with the asker's token: others wait for the same.
            return ready[club] = new Kept(newest, under, Task.Run(() => LoadAsync(club, newest, under))) { LastAsked = ++asked };
        }
    }

    private async Task<ServedRules> LoadAsync(ClubId club, int number, Ground under)
    {
        var edition = await store.FindEditionAsync(club, number, CancellationToken.None)
            ?? throw new InvalidOperationException($"Edition {number} of the rules of club {club} is told of, and is not there.");
        var layer = edition.ReadLayer();
        var learnt = edition.ReadLearnt();
        var loaded = LayeredRules.LoadKept(under.Base, layer, CompileOptions.Default with { Learnt = learnt.IsNothing ? null : learnt });
        var knowledge = loaded.Knowledge ?? under.Coach.Knowledge;
        return new ServedRules(number, new Coach(knowledge, Listener.For(knowledge, under.Coach.Listener), under.Coach.Options), layer, learnt, loaded.Conflicts, loaded.SetAside);
    }

    private sealed class Kept(int number, Ground under, Task<ServedRules> loading)
    {
        public int Number => number;

        public Ground Under => under;

        public Task<ServedRules> Loading => loading;

        public long LastAsked { get; set; }
    }
}
