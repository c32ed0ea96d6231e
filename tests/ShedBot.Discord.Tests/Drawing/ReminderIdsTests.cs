using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Nudging;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Tests.EndToEnd;

namespace ShedBot.Discord.Tests.Drawing;

/// <summary>A control's id has 1 to 100 characters, and so has a list's value. Source: the platform's description, components/reference.</summary>
public sealed class ReminderIdsTests
{
    private const int Most = 100;

    private static readonly ClubId Club = new("18446744073709551615");
    private static readonly MemberId Member = Club.Member("18446744073709551614");

    [Theory]
    [InlineData("/bike", true)]
    [InlineData("/bike-with-a-name-that-somebody-thought-funny-and-that-goes-on", false)]
    public void Of_EveryTaskAndComplaint_FitsAndIsReadBack(string bike, bool whole)
    {
        var bikes = (System.Collections.Immutable.ImmutableArray<BikeProfile>)[BikeProfile.New(new BikeId(Member.Value + "/other"), Member), BikeProfile.New(new BikeId(Member.Value + bike), Member)];
        var knowledge = ClubHouse.Knowledge;
        var answers = Enum.GetValues<NudgeVerb>().SelectMany(v => knowledge.Service.Keys.Concat(knowledge.Complaints.Keys)
            .Select(s => new NudgeAnswer(v, new LocalDate(2026, 11, 25), NudgeAnswer.ShortOf(bikes[1]), s))).ToList();
        var ids = answers.Select(a => ReminderIds.Of(ReminderIds.Answer, Club, a)).ToList();
        Assert.All(ids, id => Assert.True(id.ToString().Length <= Most && id.Rest.Length <= Most));
        Assert.Equal(answers.Count, ids.Distinct().Count());
        if (whole) Assert.Equal(answers.Select(a => a.ToString()), ids.Select(i => i.Rest));
        foreach (var (answer, id) in answers.Zip(ids))
        {
            var read = CustomId.Read(id.ToString())!.Value;
            Assert.Equal((ReminderIds.Answer, Club.Value), (read.Verb, read.Case.Value));
            Assert.Equal(answer, ReminderIds.InFull(NudgeAnswer.Read(read.Rest)!, bikes, knowledge));
        }
    }

    [Fact]
    public void InFull_OfABikeThatIsGone_IsNothing()
    {
        var bike = BikeProfile.New(new BikeId(Member.Value + "/bike-with-a-name-that-somebody-thought-funny-and-that-goes-on"), Member);
        var id = ReminderIds.Of(ReminderIds.Answer, Club, new NudgeAnswer(NudgeVerb.Done, new LocalDate(2026, 11, 25), NudgeAnswer.ShortOf(bike), "oil-brake-and-throttle-cables"));
        Assert.Null(ReminderIds.InFull(NudgeAnswer.Read(id.Rest)!, [], ClubHouse.Knowledge));
        Assert.NotNull(ReminderIds.InFull(NudgeAnswer.Read(id.Rest)!, [bike], ClubHouse.Knowledge));
    }
}
