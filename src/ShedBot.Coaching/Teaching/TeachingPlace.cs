using ShedBot.Coaching.Cases;

namespace ShedBot.Coaching.Teaching;

/// <summary>Where a member is told what became of their tips and proposals: a place of their own in the outbox, in which nobody's case is talked through.</summary>
public static class TeachingPlace
{
    private const string Begin = "word/";

    public static string Of(MemberId member) => Begin + member.Value;

    /// <returns>The member whose place it is, or null when it is none of these.</returns>
    public static MemberId? MemberIn(string place) => place.StartsWith(Begin, StringComparison.Ordinal) ? new MemberId(place[Begin.Length..]) : null;
}
