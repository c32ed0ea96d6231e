using System.Collections.Concurrent;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Thinking;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Reasoning.Inference;

namespace ShedBot.Coaching.Simulating.Rides;

/// <summary>A coach as a simulated rider meets it.</summary>
public interface IRideCoach
{
    KnowledgeBase Knowledge { get; }

    Turn Take(Case before, BikeProfile bike, Incoming said, DateTimeOffset now);

    Belief Believe(Case @case, BikeProfile bike, DateTimeOffset now);
}

internal sealed class PlainCoach(Coach coach) : IRideCoach
{
    public KnowledgeBase Knowledge => coach.Knowledge;

    public Turn Take(Case before, BikeProfile bike, Incoming said, DateTimeOffset now) => coach.Take(before, bike, said, now);

    public Belief Believe(Case @case, BikeProfile bike, DateTimeOffset now) => CaseBelief.Of(@case, bike, coach.Knowledge, now);
}

/// <summary>
/// A coach that works out the same talk only once. A turn is a function of what was said so far, and simulated riders all begin alike: whoever says the
/// same is told the same. Safe to share between threads: two that come to the same talk at once work out the same.
/// </summary>
public sealed class RememberingCoach(Coach coach) : IRideCoach
{
    private readonly ConcurrentDictionary<string, Lazy<Turn>> turns = new(StringComparer.Ordinal);

    public KnowledgeBase Knowledge => coach.Knowledge;

    /// <summary>Turns that were worked out so far.</summary>
    public int WorkedOut => turns.Count;

    public Turn Take(Case before, BikeProfile bike, Incoming said, DateTimeOffset now) =>
        turns.GetOrAdd($"{TalkKey.Of(before, bike)}>{TalkKey.Of(said)}", _ => new Lazy<Turn>(() => coach.Take(before, bike, said, now))).Value;

    /// <summary>Not remembered: a belief is large, and soon worked out beside a turn.</summary>
    public Belief Believe(Case @case, BikeProfile bike, DateTimeOffset now) => CaseBelief.Of(@case, bike, coach.Knowledge, now);
}
