using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Storage.Tests;

/// <summary>Acts of invented moderators on the rules of an invented club.</summary>
public static class SampleTeaching
{
    public static readonly ClubId Twelve = new("12");

    public static readonly ImmutableSortedDictionary<string, ImmutableArray<string>> NoAnswers =
        ImmutableSortedDictionary.Create<string, ImmutableArray<string>>(StringComparer.Ordinal);

    public static Teacher TeacherOf(string club, string person, string name = "Heron") =>
        new(new ClubId(club), new ClubId(club).Member(person), name, TeachingRights.All);

    /// <summary>Something in every part, at its first version.</summary>
    /// <param name="minute">When it was changed, in minutes from noon.</param>
    public static Proposal ProposalOf(string id, string club = "12", string person = "1", int minute = 0) => Proposal.New(id, TeacherOf(club, person), "new-fault", Sample.Noon) with
    {
        Answers = NoAnswers.Add("Which", ["one", "two"]).Add("which", []),
        Title = "A ball that is lost",
        Changes = "put: lost-ball",
        Learnt = "prior lost-ball 3",
        Tip = "t1",
        Trial = new ProposalTrial("abc", 3, "2026.5", "no difference", true, Sample.Noon),
        ChangedAt = Sample.Noon.AddMinutes(minute),
        Version = 1,
    };

    /// <param name="minute">When it came, in minutes from noon.</param>
    public static Tip TipOf(string id, string club = "12", string person = "7", int minute = 0) => new(
        id, new ClubId(club), new ClubId(club).Member(person), "Wren", new ClubId(club).Member("1"), "grease on the pad, wipe it", "channel-1/m-9", TipState.Waiting, null, "",
        Sample.Noon.AddMinutes(minute), 1);

    public static TeachingSettings SettingsOf(string club, int version = 1) => TeachingSettings.New(new ClubId(club)) with
    {
        ProposeRoles = ImmutableSortedSet.Create(StringComparer.Ordinal, "role-2", "role-1"),
        PublishRoles = ImmutableSortedSet.Create(StringComparer.Ordinal, "role-3"),
        TwoPeople = true,
        Learning = LearningMode.Automatic,
        MostFactor = 2.5,
        MemberShare = 0.125,
        Version = version,
    };

    public static RulesEdition EditionOf(int number, string club = "12", string person = "1", string layer = "about:\n  covers: a club's own rules\n") => new(
        new ClubId(club), number, layer, "prior lost-ball 3", $"what {number} changed", "p1", new ClubId(club).Member(person), "Heron", "2026.5", Sample.Noon.AddMinutes(number));

    public static AuditEntry Line(string club = "12", string person = "1", AuditAct act = AuditAct.Changed, string subject = "p1", string name = "Heron") =>
        new(new ClubId(club), 0, new ClubId(club).Member(person), name, act, subject, "what was done", Sample.Noon);

    public static TeachingSaved Act(AuditEntry line) => new(line.Club, null, null, null, null, [line], []);

    public static TeachingSaved Act(Proposal p) => Act(Line(p.Club.Value, subject: p.Id)) with { Proposal = p };

    public static TeachingSaved Act(Tip t) => Act(Line(t.Club.Value, act: AuditAct.TipCame, subject: t.Id)) with { Tip = t };

    public static TeachingSaved Act(TeachingSettings s) => Act(Line(s.Club.Value, act: AuditAct.ChoseSettings, subject: "")) with { Settings = s };

    public static TeachingSaved Act(RulesEdition e) => Act(Line(e.Club.Value, act: AuditAct.Published, subject: e.Number.ToString(System.Globalization.CultureInfo.InvariantCulture))) with { Edition = e };

    public static OutboxMessage Thanks(string id, MemberId to) =>
        new(id, new CaseId(id), TeachingPlace.Of(to), Sample.CardOf("Thank you: " + id), Sample.Noon);

    public static UnheardWords Unheard(string words, string member = "12/1", string expected = UnheardWords.Trouble) => new(new MemberId(member), words, expected, Sample.Noon);
}
