using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Turns;

namespace ShedBot.Benchmarks.Deciding;

/// <summary>One turn as it came to the coach.</summary>
internal sealed record RecordedTurn(Case Before, BikeProfile Bike, Incoming Incoming);

/// <summary>Turns of talks in which somebody picks a complaint and then answers at random, so that every kind of turn is met as often as in a talk.</summary>
internal static class RecordedTurns
{
    public static readonly DateTimeOffset Noon = new(2026, 5, 2, 12, 0, 0, TimeSpan.Zero);

    private const int LongestTalk = 40;

    /// <param name="seed">Of the answers: the same rules and seed give the same turns.</param>
    public static ImmutableArray<RecordedTurn> Of(Coach coach, int turns, int seed)
    {
        var random = new Random(seed);
        var recorded = ImmutableArray.CreateBuilder<RecordedTurn>();
        // Complaints of the plain rules only, so that the talks are alike however many rules there are.
        string[] complaints = [.. Rules.ClubRules.Load(1).Complaints.Keys];
        for (var talk = 0; recorded.Count < turns; talk++) Talk(coach, complaints[talk % complaints.Length], random, recorded, turns);
        return recorded.ToImmutable();
    }

    private static void Talk(Coach coach, string complaint, Random random, ImmutableArray<RecordedTurn>.Builder recorded, int most)
    {
        var bike = BikeProfile.New(new BikeId("bike"), new MemberId("rider"));
        var @case = Case.New(new CaseId("case"), bike.Owner, bike.Id, "bench", Noon) with { Open = new Ask(AskKind.WhichComplaint, complaint, 0, 1) };
        var option = OptionId.For(@case.Open, OptionId.Complaint(complaint));
        for (var turn = 0; turn < LongestTalk && !@case.IsClosed && recorded.Count < most; turn++)
        {
            var incoming = new MemberChose(turn.ToString(CultureInfo.InvariantCulture), option);
            recorded.Add(new RecordedTurn(@case, bike, incoming));
            var taken = coach.Take(@case, bike, incoming, Noon);
            (@case, bike) = (taken.Case, taken.Bike);
            string[] answers = [.. taken.Say[^1].Options.Select(o => o.Id).Where(MovesOn)];
            if (answers.Length == 0) return;
            option = answers[random.Next(answers.Length)];
        }
    }

    private static bool MovesOn(string option) => OptionId.Read(option) is { } id
        && (id.AsState is not null || id.Token is OptionId.NotSure or OptionId.Ready or OptionId.Done or OptionId.NoChange or OptionId.Safe);
}
