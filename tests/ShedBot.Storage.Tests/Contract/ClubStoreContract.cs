using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Storage.Tests.Contract;

/// <summary>What every store of clubs and rooms promises. A second store derives from the last of these contracts and gives itself.</summary>
public abstract class ClubStoreContract : IAsyncLifetime
{
    protected static readonly CancellationToken Ct = CancellationToken.None;

    protected IShedStore Shed { get; private set; } = null!;

    protected IClubStore Clubs => (IClubStore)Shed;

    protected IArrivalStore Arrived => (IArrivalStore)Shed;

    public async Task InitializeAsync() => Shed = await OpenAsync();

    public async Task DisposeAsync() => await Shed.DisposeAsync();

    /// <returns>A store of all three kinds.</returns>
    protected abstract Task<IShedStore> OpenAsync();

    protected async Task ReopenAsync()
    {
        await Shed.DisposeAsync();
        Shed = await OpenAsync();
    }

    [Fact]
    public async Task Find_NeverSaved_IsNull()
    {
        Assert.Null(await Clubs.FindClubAsync(new ClubId("nobody's"), Ct));
        Assert.Null(await Clubs.FindRoomAsync("nowhere", Ct));
        Assert.Null(await Clubs.FindRoomByThreadAsync("no thread", Ct));
    }

    [Fact]
    public async Task SaveClub_EveryField_IsFoundAfterReopening()
    {
        var club = Sample.ClubOf("12") with { Units = Units.Imperial, LeftAt = Sample.Noon };
        await Clubs.SaveClubAsync(club, Ct);
        await ReopenAsync();

        Same.Assert(club, await Clubs.FindClubAsync(club.Id, Ct));
    }

    [Fact]
    public async Task Arrivals_KeptTwiceAndReopened_AreThereOnceOldestFirstUntilDropped()
    {
        var (later, sooner) = (new Arrival("9", Sample.Wren, "{\"words\":\"a\"}", Sample.Noon.AddSeconds(1)), new Arrival("10", new MemberId("12/1"), "b", Sample.Noon));
        await Arrived.KeepArrivalAsync(later, Ct);
        await Arrived.KeepArrivalAsync(sooner, Ct);
        await Arrived.KeepArrivalAsync(later, Ct);
        await ReopenAsync();
        Assert.Equal<Arrival>([sooner, later], await Arrived.ArrivalsAsync(Ct));

        await Arrived.DropArrivalAsync("10", Ct);
        await Arrived.DropArrivalAsync("never there", Ct);
        Assert.Equal<Arrival>([later], await Arrived.ArrivalsAsync(Ct));
    }

    [Fact]
    public async Task Clubs_Several_AreById()
    {
        foreach (var id in new[] { "9", "123", "12" })
        {
            await Clubs.SaveClubAsync(Sample.ClubOf(id), Ct);
        }

        Assert.Equal(["12", "123", "9"], (await Clubs.ClubsAsync(Ct)).Select(c => c.Id.Value));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public async Task SaveClub_NotTheNextVersion_IsStaleAndChangesNothing(int version)
    {
        await Clubs.SaveClubAsync(Sample.ClubOf("12"), Ct);

        await Assert.ThrowsAsync<StaleSaveException>(() => Clubs.SaveClubAsync(Sample.ClubOf("12", version) with { HelperRole = "other" }, Ct));
        Assert.Equal("role-1", (await Clubs.FindClubAsync(new ClubId("12"), Ct))!.HelperRole);

        await Clubs.SaveClubAsync(Sample.ClubOf("12", 2) with { HelperRole = "next" }, Ct);
        Assert.Equal("next", (await Clubs.FindClubAsync(new ClubId("12"), Ct))!.HelperRole);
    }

    [Fact]
    public async Task SaveRoom_EveryField_IsFoundAfterReopeningByPlaceAndByThread()
    {
        var room = Sample.RoomOf("12", "wren", "place-1") with
        {
            Thread = "t-1",
            Private = true,
            Panel = "m-9",
            Helpers = [new ClubId("12").Member("pip"), new ClubId("12").Member("jay")],
            Hinted = true,
            LastHeard = "m-8",
            State = RoomState.Closed,
        };
        await Clubs.SaveRoomAsync(room, [], Ct);
        await Clubs.SaveRoomAsync(Sample.RoomOf("12", "pip", "place-2") with { Thread = "t-11" }, [], Ct);
        await ReopenAsync();

        Same.Assert(room, await Clubs.FindRoomAsync("place-1", Ct));
        Same.Assert(room, await Clubs.FindRoomByThreadAsync("t-1", Ct));
    }

    [Fact]
    public async Task FindRoomByThread_ThreadMadeLater_FindsItFromThenOn()
    {
        var room = Sample.RoomOf("12", "wren", "place-1");
        await Clubs.SaveRoomAsync(room, [], Ct);
        Assert.Null(await Clubs.FindRoomByThreadAsync("t-1", Ct));

        await Clubs.SaveRoomAsync(room with { Thread = "t-1", Version = 2 }, [], Ct);
        Assert.Equal("place-1", (await Clubs.FindRoomByThreadAsync("t-1", Ct))?.Place);
    }

    [Fact]
    public async Task SaveRoom_WithWhatWasSaidInIt_MarksItAsSaid()
    {
        var turn = Sample.Opened(place: "place-1").Next().Saying("one", "two", "three");
        await Shed.SaveAsync(turn, Ct);

        await Clubs.SaveRoomAsync(Sample.RoomOf("12", "wren", "place-1"), [turn.Say[0].Id, "said-before", turn.Say[1].Id], Ct);
        await ReopenAsync();

        Assert.Equal(["three"], (await Shed.UnsaidAsync("place-1", 10, Ct)).Words());
    }

    [Fact]
    public async Task SaveRoom_Stale_ChangesNeitherTheRoomNorWhatIsToBeSaid()
    {
        var turn = Sample.Opened(place: "place-1").Next().Saying("one");
        await Shed.SaveAsync(turn, Ct);
        var room = Sample.RoomOf("12", "wren", "place-1");
        await Clubs.SaveRoomAsync(room, [], Ct);

        await Assert.ThrowsAsync<StaleSaveException>(() => Clubs.SaveRoomAsync(room with { Panel = "m-5" }, [turn.Say[0].Id], Ct));

        Same.Assert(room, await Clubs.FindRoomAsync("place-1", Ct));
        Assert.Equal(["one"], (await Shed.UnsaidAsync("place-1", 10, Ct)).Words());
    }

    [Fact]
    public async Task SaveRoom_FromEightSidesAtOnce_TakesOneAndCallsTheOthersStale()
    {
        var room = Sample.RoomOf("12", "wren", "place-1");
        await Clubs.SaveRoomAsync(room, [], Ct);

        var results = await Task.WhenAll(Enumerable.Range(0, 8).Select(n => Task.Run(async () =>
        {
            try
            {
                await Clubs.SaveRoomAsync(room with { Panel = $"side-{n}", Version = 2 }, [], Ct);
                return n;
            }
            catch (StaleSaveException)
            {
                return -1;
            }
        })));

        Assert.Equal($"side-{Assert.Single(results, r => r >= 0)}", (await Clubs.FindRoomAsync("place-1", Ct))!.Panel);
    }

    [Fact]
    public async Task Save_WhatCouldMixTwoClubs_IsRefused()
    {
        var room = Sample.RoomOf("12", "wren", "place-1");
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Clubs.SaveRoomAsync(room with { Member = new ClubId("123").Member("wren") }, [], Ct));
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Clubs.SaveRoomAsync(room with { Member = new MemberId("wren") }, [], Ct));
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Clubs.SaveRoomAsync(room with { Helpers = [new ClubId("9").Member("pip")] }, [], Ct));
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Clubs.SaveRoomAsync(room with { Version = 0 }, [], Ct));
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Clubs.SaveClubAsync(Sample.ClubOf("12/3"), Ct));
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Clubs.SaveClubAsync(Sample.ClubOf("12", 0), Ct));

        Assert.Null(await Clubs.FindRoomAsync("place-1", Ct));
        Assert.Empty(await Clubs.ClubsAsync(Ct));
    }

    [Fact]
    public async Task RoomsOf_MoreThanTheLimit_AreTheMembersLastOpenedFirst()
    {
        foreach (var minute in new[] { 2, 4, 1, 3 })
        {
            await Clubs.SaveRoomAsync(Sample.RoomOf("12", "1", $"place-{minute}", minute), [], Ct);
        }

        await Clubs.SaveRoomAsync(Sample.RoomOf("12", "11", "place-of-another", 9), [], Ct);

        Assert.Equal(["place-4", "place-3", "place-2"], (await Clubs.RoomsOfAsync(new ClubId("12").Member("1"), 3, Ct)).Select(r => r.Place));
    }

    [Fact]
    public async Task OpenRooms_OfAllClubs_AreTheOpenOnesOldestFirst()
    {
        await Clubs.SaveRoomAsync(Sample.RoomOf("12", "wren", "b", 5), [], Ct);
        await Clubs.SaveRoomAsync(Sample.RoomOf("9", "pip", "a", 7), [], Ct);
        await Clubs.SaveRoomAsync(Sample.RoomOf("9", "pip", "z", -5), [], Ct);
        await Clubs.SaveRoomAsync(Sample.RoomOf("12", "wren", "closed", 1) with { State = RoomState.Closed }, [], Ct);
        await Clubs.SaveRoomAsync(Sample.RoomOf("12", "wren", "gone", 2) with { State = RoomState.Gone }, [], Ct);
        Assert.Equal(["z", "b", "a"], (await Clubs.OpenRoomsAsync(Ct)).Select(r => r.Place));

        await Clubs.SaveRoomAsync(Sample.RoomOf("12", "wren", "b", 5) with { State = RoomState.Closed, Version = 2 }, [], Ct);
        await Clubs.SaveRoomAsync(Sample.RoomOf("12", "wren", "closed", 1) with { Version = 2 }, [], Ct);
        Assert.Equal(["z", "closed", "a"], (await Clubs.OpenRoomsAsync(Ct)).Select(r => r.Place));
    }

    [Fact]
    public async Task UnsaidPlaces_SeveralMessagesEach_AreDistinctOldestFirst()
    {
        var (z, a) = (Sample.Opened("z", "wren", "z-place").Next(), Sample.Opened("a", "pip", "a-place").Next());
        await Shed.SaveAsync(z.Saying("1", "2"), Ct);
        await Shed.SaveAsync(a.Saying("3"), Ct);
        await Shed.SaveAsync(z.Next().Saying("4"), Ct);
        Assert.Equal(["z-place", "a-place"], (await Clubs.UnsaidPlacesAsync(10, Ct)).AsEnumerable());
        Assert.Equal(["z-place"], (await Clubs.UnsaidPlacesAsync(1, Ct)).AsEnumerable());

        foreach (var message in z.Saying("1", "2").Say)
        {
            await Shed.MarkSaidAsync(message.Id, Ct);
        }

        Assert.Equal(["a-place", "z-place"], (await Clubs.UnsaidPlacesAsync(10, Ct)).AsEnumerable());
    }

    [Theory]
    [InlineData(0)]
    [InlineData(10_001)]
    public async Task RoomsOfAndUnsaidPlaces_LimitOutOfRange_Throw(int limit)
    {
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => Clubs.RoomsOfAsync(Sample.Wren, limit, Ct));
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => Clubs.UnsaidPlacesAsync(limit, Ct));
    }
}
