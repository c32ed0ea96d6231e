using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Coaching.Tests.Teaching.Moves;

/// <summary>Closed cases of an invented club whose levers are heavy because cables are kinked, far more often than the shipped rules expect.</summary>
internal static class MendedBikes
{
    public const string Fault = "cable-kinked", Repair = "reroute-cable", Odds = "odds cable-kinked";

    /// <summary>Long enough before <see cref="School.Noon"/> to count by then.</summary>
    public static readonly DateTimeOffset Then = School.Noon.AddDays(-30);

    /// <param name="from">The number of the first; no two cases of one test share one.</param>
    /// <param name="members">By so many members, one after the other.</param>
    public static ImmutableArray<ClosedCase> Kinked(int count, int members = 12, int from = 0, ClubId? club = null, DateTimeOffset? at = null) =>
        [.. Enumerable.Range(from, count).Select(n => One(n, (club ?? School.Club).Member($"m{n % members}"), at ?? Then))];

    /// <summary>Heavy levers whose cable was dry, none of them of m0, m1 or m2: without these three what is left of the kinked ones is less.</summary>
    public static ImmutableArray<ClosedCase> Dry(int count) =>
        [.. Enumerable.Range(7000, count).Select(n => One(n, School.Club.Member($"m{3 + (n % 9)}"), Then, "slide-wire", "stiff", "free-cable"))];

    private static ClosedCase One(int number, MemberId member, DateTimeOffset at, string check = "follow-cable", string seen = "tight", string repair = Repair)
    {
        var (id, bike) = (new CaseId($"{member.Value}-{number:0000}"), BikeId.Of(member));
        CaseEntry Line(EntryKind kind, string subject, string? value = null) => new(1, kind, subject, value, 1, at);
        var @case = Case.New(id, member, bike, "here", at) with
        {
            Phase = CasePhase.Solved,
            Entries = [Line(EntryKind.Complaint, "lever-heavy"), Line(EntryKind.Answer, check, seen), Line(EntryKind.RepairHeld, repair)],
            ClosedAt = at,
        };
        return new ClosedCase(@case, BikeProfile.New(bike, member), new Outcome(id, CasePhase.Solved, repair, [], 1, "old rules", at));
    }
}
