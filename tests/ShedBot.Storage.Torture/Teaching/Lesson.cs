using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Storage.Torture.Teaching;

/// <summary>
/// Invented clubs that are taught one edition after the other, by three moderators in turn. Each edition is a draft and then its publishing; after every
/// <see cref="ForgetEvery"/>th one of the moderators is forgotten. All follows from the number of the edition, so that a check can work it out anew.
/// </summary>
internal static class Lesson
{
    public const int Clubs = 4;

    public const int ForgetEvery = 5;

    private static readonly DateTimeOffset Start = new(2026, 5, 2, 12, 0, 0, TimeSpan.Zero);
    private static readonly string[] Names = ["Heron", "Teal", "Snipe"];

    public static ClubId Club(int club) => new($"club-{club}");

    public static int AuthorOf(int number) => number % Names.Length;

    public static MemberId Member(int club, int author) => Club(club).Member($"moderator-{author}");

    /// <returns>Who is forgotten after an edition, or null.</returns>
    public static int? ForgottenAfter(int number) => number > 0 && number % ForgetEvery == 0 ? number / ForgetEvery % Names.Length : null;

    public static string ProposalId(int number) => FormattableString.Invariant($"p{number}");

    public static TeachingSaved Draft(int club, int number) => new(
        Club(club), Proposal(club, number) with { State = ProposalState.Draft, Edition = 0, Version = 1 }, null, null, null, [Line(club, number, AuditAct.Began)], []);

    public static TeachingSaved Publish(int club, int number) => new(
        Club(club), Proposal(club, number), null, null, Edition(club, number), [Line(club, number, AuditAct.Published)], []);

    /// <summary>The edition as it stands when its moderator is still known.</summary>
    public static RulesEdition Edition(int club, int number) => new(
        Club(club), number, Layer(number, Names[AuthorOf(number)]), "", $"edition {number}", ProposalId(number), Member(club, AuthorOf(number)), Names[AuthorOf(number)], "torture",
        Start.AddMinutes(number));

    /// <summary>The same once they are forgotten.</summary>
    public static RulesEdition Unsigned(int club, int number) =>
        Edition(club, number) with { Layer = Layer(number, "somebody who has left"), By = null, ByName = "" };

    public static Proposal Proposal(int club, int number) => new(
        ProposalId(number), Club(club), Member(club, AuthorOf(number)), Names[AuthorOf(number)], ProposalState.Published, "", ImmutableSortedDictionary<string, ImmutableArray<string>>.Empty,
        $"edition {number}", "", "", null, null, "", number, Start, Start.AddMinutes(number), 2);

    // From a line to some pages of the file, and now and then many.
    private static string Layer(int number, string author) => string.Concat(Enumerable.Range(0, number % 11 == 0 ? 2_000 : 1 + (number % 5 * 20))
        .Select(n => string.Create(CultureInfo.InvariantCulture, $"- id: rule-{n}-of-{number}\n  author: {author}\n")));

    private static AuditEntry Line(int club, int number, AuditAct act) => new(
        Club(club), 0, Member(club, AuthorOf(number)), Names[AuthorOf(number)], act, ProposalId(number), "", Start.AddMinutes(number));
}
