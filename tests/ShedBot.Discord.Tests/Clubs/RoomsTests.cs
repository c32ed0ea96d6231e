using System.Collections.Immutable;
using Moq;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Discord.Clubs;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Clubs;

/// <summary>Rooms that two make or change at once. Common practice, no source.</summary>
public sealed class RoomsTests
{
    private static readonly ClubId Twelve = new("12");

    private static readonly Room There = new(
        "12/7", Twelve, Twelve.Member("1"), "100", "200", OwnThread: true, null, false, "Clutch", "300", [], true, null, RoomState.Open, DateTimeOffset.UnixEpoch, 4);

    private readonly Mock<IClubStore> store = new();

    [Fact]
    public async Task Add_OfOneThatAnotherHasJustMade_IsTheOneThatIsThere()
    {
        store.Setup(s => s.SaveRoomAsync(It.IsAny<Room>(), It.IsAny<ImmutableArray<string>>(), It.IsAny<CancellationToken>())).ThrowsAsync(new StaleSaveException("Room"));
        store.Setup(s => s.FindRoomAsync(There.Place, It.IsAny<CancellationToken>())).ReturnsAsync(There);
        var rooms = new Rooms(store.Object);

        Assert.Same(There, await rooms.AddAsync(There with { Thread = null, Panel = null, Version = 0 }, default));
        Assert.True(rooms.IsRoom(new Snowflake(200)));
    }

    [Fact]
    public async Task Add_OfOneThatCannotBeSavedForAnotherReason_Fails()
    {
        store.Setup(s => s.SaveRoomAsync(It.IsAny<Room>(), It.IsAny<ImmutableArray<string>>(), It.IsAny<CancellationToken>())).ThrowsAsync(new StaleSaveException("Room"));
        await Assert.ThrowsAsync<StaleSaveException>(() => new Rooms(store.Object).AddAsync(There, default));
    }
}
