using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Simulating.Rides;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Reasoning.Inference;

namespace ShedBot.Simulation.Learning;

/// <summary>A coach that remembers how its last talk ended; for one talk at a time.</summary>
internal sealed class RecordingCoach(IRideCoach coach) : IRideCoach
{
    private Turn? last;
    private Outcome? outcome;

    public KnowledgeBase Knowledge => coach.Knowledge;

    /// <summary>Null when the talk never came to an end.</summary>
    public ClosedCase? Closed => last is { } turn && outcome is { } end ? new ClosedCase(turn.Case, turn.Bike, end) : null;

    public Turn Take(Case before, BikeProfile bike, Incoming said, DateTimeOffset now)
    {
        last = coach.Take(before, bike, said, now);
        outcome = last.Outcome ?? outcome;
        return last;
    }

    public Belief Believe(Case @case, BikeProfile bike, DateTimeOffset now) => coach.Believe(@case, bike, now);
}
