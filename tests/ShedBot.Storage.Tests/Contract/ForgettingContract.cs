using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Storage.Tests.Contract;

/// <summary>What every store promises of forgetting: all that is kept of somebody, and nothing that is kept of others.</summary>
public abstract class ForgettingContract : ClubStoreContract
{
    private static readonly ClubId Twelve = new("12");

    [Fact]
    public async Task ForgetMember_OfSeveral_RemovesAllOfTheirsAndNothingElse()
    {
        await FillAsync("12/1", "12/11", "123/1", "12", "120");
        var member = Twelve.Member("1");

        Assert.Equal(new Forgotten(2, 1, 1), await Clubs.ForgetMemberAsync(member, Ct));
        await ReopenAsync();

        await AssertGoneAsync("12/1");
        await AssertThereAsync("12/11", "123/1", "12", "120");
        Assert.NotNull(await Clubs.FindClubAsync(Twelve, Ct));
    }

    [Fact]
    public async Task ForgetClub_OfSeveral_RemovesItsMembersAndItselfAndNothingElse()
    {
        // "120" comes right after all that begins with "12/"; an ordinary member of no club may be called so.
        await FillAsync("12/1", "12/11", "123/1", "1/2", "12", "120");

        Assert.Equal(new Forgotten(4, 2, 2), await Clubs.ForgetClubAsync(Twelve, Ct));
        await ReopenAsync();

        await AssertGoneAsync("12/1", "12/11");
        await AssertThereAsync("123/1", "1/2", "12", "120");
        Assert.Equal(["1", "123"], (await Clubs.ClubsAsync(Ct)).Select(c => c.Id.Value));
    }

    [Fact]
    public async Task Forget_NobodyKnown_RemovesNothing()
    {
        await FillAsync("12/1");

        Assert.Equal(new Forgotten(0, 0, 0), await Clubs.ForgetMemberAsync(Twelve.Member("2"), Ct));
        Assert.Equal(new Forgotten(0, 0, 0), await Clubs.ForgetClubAsync(new ClubId("1"), Ct));

        await AssertThereAsync("12/1");
    }

    [Fact]
    public async Task ForgetMember_PlaceSharedWithAnother_KeepsWhatIsToBeSaidToTheOther()
    {
        await Shed.SaveAsync(Sample.Opened("one", "12/1").Next().Saying("to one"), Ct);
        await Shed.SaveAsync(Sample.Opened("two", "12/2").Next().Saying("to two"), Ct);

        await Clubs.ForgetMemberAsync(Twelve.Member("1"), Ct);

        Assert.Equal(["to two"], (await Shed.UnsaidAsync("shed-corner", 10, Ct)).Words());
    }

    [Fact]
    public async Task ForgetMember_WhatIsToBeSaidInTheirRoom_IsForgottenWhoeversCaseItIs()
    {
        await Clubs.SaveRoomAsync(Sample.RoomOf("12", "1", "shed-corner"), [], Ct);
        await Shed.SaveAsync(Sample.Opened("two", "12/2").Next().Saying("about their bike"), Ct);

        await Clubs.ForgetMemberAsync(Twelve.Member("1"), Ct);

        Assert.Empty(await Clubs.UnsaidPlacesAsync(10, Ct));
    }

    [Fact]
    public async Task ForgetMember_HelperInOthersRooms_MayNoLongerAnswerThere()
    {
        var (helper, other) = (Twelve.Member("1"), Twelve.Member("11"));
        var read = Sample.RoomOf("12", "2", "place-2") with { Helpers = [helper, other] };
        await Clubs.SaveRoomAsync(read, [], Ct);
        var untouched = Sample.RoomOf("12", "3", "place-3") with { Helpers = [other] };
        await Clubs.SaveRoomAsync(untouched, [], Ct);

        Assert.Equal(new Forgotten(0, 0, 0), await Clubs.ForgetMemberAsync(helper, Ct));

        var room = (await Clubs.FindRoomAsync("place-2", Ct))!;
        Assert.False(room.MayAnswer(helper));
        Assert.True(room.MayAnswer(other));
        Same.Assert(untouched, await Clubs.FindRoomAsync("place-3", Ct));
        // Somebody who read the room before must not bring the leave back.
        await Assert.ThrowsAsync<StaleSaveException>(() => Clubs.SaveRoomAsync(read with { Panel = "m-2", Version = 2 }, [], Ct));
    }

    [Fact]
    public async Task Forget_WhatIsStillToBeDealtWith_IsForgottenToo()
    {
        foreach (var (id, member) in new[] { ("1", "12/1"), ("2", "12/11"), ("3", "120/1"), ("4", "12") })
        {
            await Arrived.KeepArrivalAsync(new Arrival(id, new MemberId(member), "words", Sample.Noon), Ct);
        }

        await Clubs.ForgetMemberAsync(Twelve.Member("1"), Ct);
        Assert.Equal(["2", "3", "4"], (await Arrived.ArrivalsAsync(Ct)).Select(a => a.Id));
        await Clubs.ForgetClubAsync(Twelve, Ct);
        Assert.Equal(["3", "4"], (await Arrived.ArrivalsAsync(Ct)).Select(a => a.Id));
    }

    [Fact]
    public async Task ForgetMember_TurnRoomAndBikeReadBefore_CannotBeSavedAfter()
    {
        await FillAsync("12/1");
        var read = (await Shed.FindLastCaseAsync(Twelve.Member("1"), "place-12/1", Ct))!;
        var room = (await Clubs.FindRoomAsync("place-12/1", Ct))!;
        var bike = Assert.Single(await Shed.BikesOfAsync(Twelve.Member("1"), Ct));
        await Clubs.ForgetMemberAsync(Twelve.Member("1"), Ct);

        await Assert.ThrowsAsync<StaleSaveException>(() => Shed.SaveBikeAsync(bike with { Version = bike.Version + 1 }, Ct));
        await Assert.ThrowsAsync<StaleSaveException>(() => Shed.SaveAsync(read.Next().Saying("too late"), Ct));
        await Assert.ThrowsAsync<StaleSaveException>(() => Clubs.SaveRoomAsync(room with { Version = room.Version + 1 }, [], Ct));
        await AssertGoneAsync("12/1");
    }

    [Fact]
    public async Task Forget_WhatIsNoId_IsRefused()
    {
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Clubs.ForgetMemberAsync(default, Ct));
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Clubs.ForgetClubAsync(default, Ct));
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Clubs.ForgetClubAsync(new ClubId("12/1"), Ct));
    }

    /// <summary>Two cases, one of them solved, a bike, and for members of a club a room and the club.</summary>
    private async Task FillAsync(params string[] members)
    {
        foreach (var member in members)
        {
            var solved = Sample.Opened($"solved-{member}", member, $"place-{member}").Next(phase: CasePhase.Solved);
            await Shed.SaveAsync(solved.Saying("It holds.") with { Bike = solved.BikeOf().Ridden(), Outcome = solved.OutcomeOf() }, Ct);
            await Shed.SaveAsync(Sample.Opened($"open-{member}", member, $"shed-{member}").Next().Saying("word"), Ct);
            if (ClubId.Of(new MemberId(member)) is not { } club)
            {
                continue;
            }

            await Clubs.SaveRoomAsync(Sample.RoomOf(club.Value, member[(club.Value.Length + 1)..], $"place-{member}"), [], Ct);
            if (await Clubs.FindClubAsync(club, Ct) is null)
            {
                await Clubs.SaveClubAsync(Sample.ClubOf(club.Value), Ct);
            }
        }
    }

    private async Task AssertGoneAsync(params string[] members)
    {
        foreach (var member in members)
        {
            Assert.Equal((0, 0, 0, 0, 0, 0), await KeptOfAsync(member));
        }
    }

    private async Task AssertThereAsync(params string[] members)
    {
        foreach (var member in members)
        {
            var rooms = ClubId.Of(new MemberId(member)) is null ? 0 : 1;
            Assert.Equal((2, 1, 1, rooms, 1, 1), await KeptOfAsync(member));
        }
    }

    private async Task<(int Cases, int Bikes, int Outcomes, int Rooms, int SaidInRoom, int SaidElsewhere)> KeptOfAsync(string name)
    {
        var member = new MemberId(name);
        return (
            (await Shed.CasesOfAsync(member, 10, Ct)).Length,
            (await Shed.BikesOfAsync(member, Ct)).Length,
            (await Shed.OutcomesAsync(100, Ct)).Count(o => o.Case.Value.EndsWith("-" + name, StringComparison.Ordinal)),
            (await Clubs.RoomsOfAsync(member, 10, Ct)).Length,
            (await Shed.UnsaidAsync($"place-{name}", 10, Ct)).Length,
            (await Shed.UnsaidAsync($"shed-{name}", 10, Ct)).Length);
    }
}
