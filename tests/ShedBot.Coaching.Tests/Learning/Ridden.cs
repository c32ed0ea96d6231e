using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Coaching.Simulating.Rides;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Understanding;
using ShedBot.Reasoning.Inference;

namespace ShedBot.Coaching.Tests.Learning;

/// <summary>Closed cases of simulated owners of the invented pump: coached by one set of rules, on pumps that follow another.</summary>
internal static class Ridden
{
    public static ImmutableArray<ClosedCase> Cases(KnowledgeBase coached, KnowledgeBase truth, int count, int seed, int members = 60)
    {
        var coach = new RememberingCoach(new Coach(coached, Listener.For(coached), new CoachOptions { FactsWithin = 0 }));
        var draw = new RiderDraw(truth, new RidersWanted());
        var cases = ImmutableArray.CreateBuilder<ClosedCase>();
        for (var number = 0; number < count; number++)
        {
            var recorder = new Recorder(coach);
            CoachedRide.Across(recorder, truth, draw.Draw(seed, number), new Habits());
            if (recorder.Last is not { } turn || recorder.Outcome is not { } outcome) continue;
            var (id, who) = (new CaseId($"r{number:00000}"), new MemberId($"m{number % members}"));
            cases.Add(new ClosedCase(turn.Case with { Id = id, Member = who }, turn.Bike, outcome with { Case = id }));
        }

        return cases.ToImmutable();
    }

    private sealed class Recorder(IRideCoach coach) : IRideCoach
    {
        public KnowledgeBase Knowledge => coach.Knowledge;

        public Turn? Last { get; private set; }

        public Outcome? Outcome { get; private set; }

        public Turn Take(Case before, BikeProfile bike, Incoming said, DateTimeOffset now)
        {
            Last = coach.Take(before, bike, said, now);
            Outcome = Last.Outcome ?? Outcome;
            return Last;
        }

        public Belief Believe(Case @case, BikeProfile bike, DateTimeOffset now) => coach.Believe(@case, bike, now);
    }
}
