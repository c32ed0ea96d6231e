using ShedBot.Coaching.Cases;

namespace ShedBot.Coaching.Learning;

/// <summary>Words of a member that the coach could make nothing of.</summary>
/// <param name="Words">As they were written, cleaned, at most <see cref="Longest"/> characters.</param>
/// <param name="Expected">What was asked: the id of the check or fact, or "trouble" for the opening words.</param>
public sealed record UnheardWords(MemberId Member, string Words, string Expected, DateTimeOffset At)
{
    public const int Longest = 300;

    public const string Trouble = "trouble";
}
