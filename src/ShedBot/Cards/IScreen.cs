using ShedBot.Coaching.Cards;
using ShedBot.Practice;

namespace ShedBot.Cards;

/// <summary>Where cards are shown: as plain text, or drawn in a terminal.</summary>
internal interface IScreen
{
    void Show(Card card, AnswerKeys keys);

    /// <summary>A line of the program itself, not of the coach.</summary>
    void Say(string line);

    /// <summary>What the member typed, where it is not seen anyway.</summary>
    void Repeat(string typed);

    /// <summary>Invites the next line.</summary>
    void Invite(MemberName member);

    /// <summary>Returns once everything shown has left the program.</summary>
    Task FlushAsync(CancellationToken ct);
}
