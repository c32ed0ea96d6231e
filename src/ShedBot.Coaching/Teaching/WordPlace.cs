using ShedBot.Coaching.Cases;

namespace ShedBot.Coaching.Teaching;

/// <summary>The place in the outbox of words to a member alone that are about no case: what became of a tip or a proposal.</summary>
public static class WordPlace
{
    private const string Prefix = "word/";

    public static string Of(MemberId member) => Prefix + member.Value;

    /// <returns>Whose place it is; null when it is another kind of place.</returns>
    public static MemberId? MemberOf(string place) => place.StartsWith(Prefix, StringComparison.Ordinal) ? new MemberId(place[Prefix.Length..]) : null;
}
