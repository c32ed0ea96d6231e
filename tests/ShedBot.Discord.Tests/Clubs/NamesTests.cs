using CsCheck;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Discord.Clubs;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Clubs;

public sealed class NamesTests
{
    private static readonly Gen<Snowflake> Id = Gen.ULong[1, ulong.MaxValue].Select(v => new Snowflake(v));

    [Fact]
    public void PressEvent_ReadBack_GivesTheMessage() => Gen.Select(Id, Id).Sample(
        (interaction, message) => Names.PressedIn(Names.PressEvent(interaction, message)) == message.ToString()
            && Names.SaidIn(Names.PressEvent(interaction, message)) is null);

    [Fact]
    public void SaidEvent_ReadBack_GivesTheMessage() => Id.Sample(
        message => Names.SaidIn(Names.SaidEvent(message)) == message && Names.PressedIn(Names.SaidEvent(message)) is null);

    /// <summary>Source: the platform's published description, resources/message, "Create Message": a nonce has up to 25 characters.</summary>
    [Fact]
    public void Nonce_OfAnyText_Fits() => Gen.String[0, 400].Sample(text => Names.Nonce(text).Length is > 0 and <= Limits.Nonce);

    [Fact]
    public void Nonce_OfAnotherText_IsAnother() => Assert.NotEqual(Names.Nonce("a.0001#0"), Names.Nonce("a.0001#1"));

    /// <summary>Source: the platform's published description, components/reference: a component's id is a whole number of 32 bits; those it gives itself count from 1.</summary>
    [Fact]
    public void Mark_OfAnyTurn_LeavesRoomForSixteenMessagesAndForThePlatformsOwnNumbers() =>
        Gen.Select(Gen.String[1, 30], Gen.Int[0, 5000]).Sample((id, turn) =>
        {
            var mark = Names.Mark(new CaseId(id), turn);
            return mark > 1000 && mark <= int.MaxValue - 16 && (mark & 15) == 0;
        });

    [Fact]
    public void Mark_OfTheNextTurn_IsAnother() => Assert.NotEqual(Names.Mark(new CaseId("a"), 1), Names.Mark(new CaseId("a"), 2));

    [Fact]
    public void Person_OfAMember_IsThePersonAgain() => Gen.Select(Id, Id).Sample(
        (guild, person) => Names.Person(Names.Club(guild).Member(person.ToString())) == person && Names.Guild(Names.Club(guild)) == guild);

    [Fact]
    public void ClubOf_AMemberOfNoClub_IsNone() => Assert.Null(ClubId.Of(new MemberId("Rider")));
}
