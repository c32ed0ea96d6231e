using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Turns;
using ShedBot.Discord.Clubs;
using ShedBot.Discord.Tests.Drawing;

namespace ShedBot.Discord.Tests.Clubs;

public sealed class RoomNameTests
{
    private static readonly DateTimeOffset Noon = new(2026, 5, 2, 12, 0, 0, TimeSpan.Zero);

    private static readonly BikeProfile Bike = BikeProfile.New(new BikeId("b1"), new MemberId("club/rider"));

    private static readonly Case New = Case.New(new CaseId("k7f3q9"), Bike.Owner, Bike.Id, "room", Noon);

    /// <summary>A lever that goes to the bar may be a brake's: a thread is not named for what is only guessed.</summary>
    [Fact]
    public void Of_WordsThatCouldBeEither_NamesNoTroubleBeforeItIsKnown()
    {
        var asked = Shed.Coach.Take(New, Bike, new MemberSaid("e1", "lever goes all the way to the bar"), Noon);
        Assert.Contains(asked.Case.Standing, e => e.Kind == EntryKind.Complaint);
        Assert.Equal("Clutch trouble: ann's bike", RoomName.Of(asked.Case, Bike, "ann", Shed.Knowledge));

        var known = Shed.Coach.Take(asked.Case, Bike, new MemberSaid("e2", "it goes to the engine"), Noon);
        Assert.StartsWith("The lever suddenly comes to the grip", RoomName.Of(known.Case, Bike, "ann", Shed.Knowledge), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_PlainTrouble_IsNamedForIt() => Assert.Equal(
        "The clutch slips",
        RoomName.Of(Shed.Coach.Take(New, Bike, new MemberSaid("e1", "my clutch slips"), Noon).Case, Bike, null, Shed.Knowledge));
}
