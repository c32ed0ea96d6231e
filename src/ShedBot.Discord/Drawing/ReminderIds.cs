using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Nudging;
using ShedBot.Knowledge;

namespace ShedBot.Discord.Drawing;

/// <summary>
/// What the controls of a reminder say when they are used. A direct conversation belongs to no club, so the club stands in each; who answers is told by the
/// press itself. Where a bike and its task are too long for a control, a short name of both stands for them.
/// </summary>
internal static class ReminderIds
{
    /// <summary>An answer, on a button or picked from a list; the case is the club.</summary>
    public const string Answer = "remind";

    /// <summary>Shows the reminder as it stands; the rest is an answer of its day.</summary>
    public const string Back = "back";

    /// <summary>The form that was filled in; the rest is the answer that opened it.</summary>
    public const string Rest = "rest";

    /// <summary>Stands for the bike where the subject is the short name of both. No bike is named so.</summary>
    private const string Shortened = "~";

    public static bool Is(string verb) => verb is Answer or Back or Rest;

    /// <summary>Whether the answer to this press is a form: that one cannot be announced.</summary>
    public static bool OpensForm(CustomId id) => id.Verb == Answer && NudgeAnswer.Read(id.Rest) is { Verb: NudgeVerb.NotRiding };

    public static CustomId Of(string verb, ClubId club, NudgeAnswer answer)
    {
        var id = new CustomId(verb, new CaseId(club.Value), answer.ToString());
        return id.Fits ? id : id with { Rest = Short(answer).ToString() };
    }

    /// <returns>The answer with its bike and subject in full; null when it is about nothing that is there.</returns>
    /// <param name="bikes">All of the member's bikes.</param>
    public static NudgeAnswer? InFull(NudgeAnswer answer, ImmutableArray<BikeProfile> bikes, KnowledgeBase knowledge) => answer.Bike != Shortened
        ? answer
        : bikes.SelectMany(b => knowledge.Service.Keys.Concat(knowledge.Complaints.Keys).Select(s => answer with { Bike = NudgeAnswer.ShortOf(b), Subject = s }))
            .FirstOrDefault(a => Short(a) == answer);

    private static NudgeAnswer Short(NudgeAnswer answer) => answer with { Bike = Shortened, Subject = ShortName.Of($"{answer.Bike}|{answer.Subject}") };
}
