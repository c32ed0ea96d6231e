using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Nudging;

namespace ShedBot.Storage.Tests.Contract;

/// <summary>What every store promises about members' wishes about reminders.</summary>
public abstract class RiderContract : BikeContract
{
    private IRiderStore Riders => (IRiderStore)Store;

    private IClubStore Keeper => (IClubStore)Store;

    [Fact]
    public async Task SaveRider_WithWhatIsSaid_BothAreFoundAfterReopening()
    {
        var rider = Sample.RiderOf("12/1", 5);
        await Riders.SaveRiderAsync(rider, [], Message(rider, "grease"), Ct);

        await ReopenAsync();

        Same.Assert(rider, await Riders.FindRiderAsync(rider.Member, Ct));
        Assert.Equal(["grease"], (await Store.UnsaidAsync("nudge/12/1", 10, Ct)).Words());
        Assert.Null(await Riders.FindRiderAsync(new MemberId("nobody"), Ct));
    }

    [Fact]
    public async Task SaveRider_ReadBeforeSomebodyElseSaved_IsStaleAndSaysNothing()
    {
        var rider = Sample.RiderOf("12/1", 5);
        await Riders.SaveRiderAsync(rider, [], Message(rider, "grease"), Ct);

        await Assert.ThrowsAsync<StaleSaveException>(() => Riders.SaveRiderAsync(rider with { Unanswered = 1 }, [], Message(rider, "twice"), Ct));
        await Assert.ThrowsAsync<StaleSaveException>(() => Riders.SaveRiderAsync(rider with { Version = 3 }, [], Message(rider, "twice"), Ct));

        Assert.Equal(["grease"], (await Store.UnsaidAsync("nudge/12/1", 10, Ct)).Words());
    }

    [Fact]
    public async Task RemoveBike_OfTwo_IsGoneAndTheOtherAndItsCasesStay()
    {
        var rider = Sample.RiderOf("12/1", 5);
        var (bike, other) = (BikeProfile.New(BikeId.Of(rider.Member), rider.Member).Ridden(), BikeProfile.New(new BikeId("12/1/bike-x"), rider.Member).Ridden());
        await Riders.SaveRiderAsync(rider, [bike, other], [], Ct);

        await Store.RemoveBikeAsync(rider with { Version = 2, Bike = other.Id }, bike, Ct);
        await ReopenAsync();

        Assert.Null(await Store.FindBikeAsync(bike.Id, Ct));
        Same.Assert(other, Assert.Single(await Store.BikesOfAsync(rider.Member, Ct)));
        Assert.Equal(other.Id, (await Riders.FindRiderAsync(rider.Member, Ct))!.Bike);
    }

    [Fact]
    public async Task RemoveBike_ReadBeforeSomebodyElseSaved_IsStaleAndNothingIsRemoved()
    {
        var rider = Sample.RiderOf("12/1", 5);
        var bike = BikeProfile.New(BikeId.Of(rider.Member), rider.Member).Ridden();
        await Riders.SaveRiderAsync(rider, [bike], [], Ct);
        var next = rider with { Version = 2 };

        await Assert.ThrowsAsync<StaleSaveException>(() => Store.RemoveBikeAsync(next, bike with { Version = bike.Version + 1 }, Ct));
        await Assert.ThrowsAsync<StaleSaveException>(() => Store.RemoveBikeAsync(next with { Version = 3 }, bike, Ct));
        await Assert.ThrowsAsync<StaleSaveException>(() => Store.RemoveBikeAsync(next, BikeProfile.New(new BikeId("12/1/bike-x"), rider.Member), Ct));
        await Assert.ThrowsAsync<ArgumentException>(() => Store.RemoveBikeAsync(Sample.RiderOf("12/2", 5), bike, Ct));

        Same.Assert(bike, await Store.FindBikeAsync(bike.Id, Ct));
        Same.Assert(rider, await Riders.FindRiderAsync(rider.Member, Ct));
    }

    [Fact]
    public async Task SaveRider_WithABike_BothAreKeptOrNeither()
    {
        var rider = Sample.RiderOf("12/1", 5);
        var bike = BikeProfile.New(BikeId.Of(rider.Member), rider.Member).Ridden();
        await Riders.SaveRiderAsync(rider, [bike], [], Ct);
        var (next, ridden) = (rider with { Version = 2 }, bike.Ridden(5));

        await Assert.ThrowsAsync<StaleSaveException>(() => Riders.SaveRiderAsync(next, [ridden with { Version = 9 }], Message(rider, "grease"), Ct));
        await Assert.ThrowsAsync<StaleSaveException>(() => Riders.SaveRiderAsync(next with { Version = 9 }, [ridden], Message(rider, "grease"), Ct));
        Same.Assert(rider, await Riders.FindRiderAsync(rider.Member, Ct));
        Same.Assert(bike, await Store.FindBikeAsync(bike.Id, Ct));
        Assert.Empty(await Store.UnsaidAsync("nudge/12/1", 10, Ct));

        await Riders.SaveRiderAsync(next, [ridden], Message(rider, "grease"), Ct);
        await ReopenAsync();
        Same.Assert(next, await Riders.FindRiderAsync(rider.Member, Ct));
        Same.Assert(ridden, await Store.FindBikeAsync(bike.Id, Ct));
    }

    [Fact]
    public async Task SaveRider_WithSomebodyElsesBike_IsRefused()
    {
        var rider = Sample.RiderOf("12/1", 5);
        var other = BikeProfile.New(BikeId.Of(Sample.Wren), Sample.Wren).Ridden();
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Riders.SaveRiderAsync(rider, [other], [], Ct));
    }

    [Fact]
    public async Task Save_TurnWithItsOwner_BothAreKeptOrNeither()
    {
        var c = Sample.Opened().Next();
        var owner = Rider.New(c.Member) with { Consent = Consent.Given, NextLook = Sample.Noon, Version = 1 };
        await Store.SaveAsync(c.Saying("hello") with { Owner = owner }, Ct);
        Same.Assert(owner, await Riders.FindRiderAsync(c.Member, Ct));

        await Assert.ThrowsAsync<StaleSaveException>(() => Store.SaveAsync(c.Next().Saying("lost") with { Owner = owner with { Version = 3 } }, Ct));

        Same.Assert(c, await Store.FindCaseAsync(c.Id, Ct));
        Same.Assert(owner, await Riders.FindRiderAsync(c.Member, Ct));
    }

    [Fact]
    public async Task SaveRider_SameSaveAgainAfterItWasSaid_IsNotSaidAgain()
    {
        var rider = Sample.RiderOf("12/1", 5);
        var message = Message(rider, "grease");
        await Riders.SaveRiderAsync(rider, [], message, Ct);
        await Store.MarkSaidAsync(message[0].Id, Ct);

        await Riders.SaveRiderAsync(rider, [], message, Ct);

        Assert.Empty(await Store.UnsaidAsync("nudge/12/1", 10, Ct));
    }

    [Fact]
    public async Task SaveRider_MessageOfTheSameNameStillWaits_IsNotSaidTwice()
    {
        var rider = Sample.RiderOf("12/1", 5);
        await Riders.SaveRiderAsync(rider, [], Message(rider, "grease"), Ct);
        await Riders.SaveRiderAsync(rider with { Version = 2 }, [], Message(rider, "spokes"), Ct);

        Assert.Equal(["spokes"], (await Store.UnsaidAsync("nudge/12/1", 10, Ct)).Words());
    }

    [Fact]
    public async Task SaveRider_MessageOfAnotherPlaceOrNoVersion_IsRefused()
    {
        var (rider, other) = (Sample.RiderOf("12/1", 5), Sample.RiderOf("12/2", 5));

        await Assert.ThrowsAnyAsync<ArgumentException>(() => Riders.SaveRiderAsync(rider, [], Message(other, "grease"), Ct));
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Riders.SaveRiderAsync(rider with { Version = 0 }, [], [], Ct));
        Assert.Null(await Riders.FindRiderAsync(rider.Member, Ct));
    }

    [Fact]
    public async Task DueRiders_SomeDue_AreThoseLongestWaitingFirstUpToTheLimit()
    {
        foreach (var (person, minute) in new[] { ("a", 30), ("b", 10), ("c", 20), ("d", 31), ("e", -90_000) })
        {
            await Riders.SaveRiderAsync(Sample.RiderOf("12/" + person, minute), [], [], Ct);
        }

        await Riders.SaveRiderAsync(Sample.RiderOf("12/never", null), [], [], Ct);

        Assert.Equal(["12/e", "12/b", "12/c", "12/a"], await DueAsync(30, 10));
        Assert.Equal(["12/e", "12/b"], await DueAsync(30, 2));
        await Riders.SaveRiderAsync(Sample.RiderOf("12/b", 99) with { Version = 2 }, [], [], Ct);
        await Riders.SaveRiderAsync(Sample.RiderOf("12/e", null) with { Version = 2 }, [], [], Ct);
        Assert.Equal(["12/c", "12/a"], await DueAsync(30, 10));
        await Assert.ThrowsAnyAsync<ArgumentException>(() => DueAsync(30, 0));
    }

    [Fact]
    public async Task ForgetMember_WithReminders_IsForgottenAndNobodyElseIs()
    {
        await KeepAsync("12/1", "12/11", "120/1", "12");

        await Keeper.ForgetMemberAsync(new MemberId("12/1"), Ct);

        Assert.Equal(["12", "12/11", "120/1"], await LeftAsync());
        await Assert.ThrowsAsync<StaleSaveException>(() => Riders.SaveRiderAsync(Sample.RiderOf("12/1", 5) with { Version = 2 }, [], [], Ct));
    }

    [Fact]
    public async Task ForgetClub_WithReminders_ForgetsItsMembersOnly()
    {
        await KeepAsync("12/1", "12/11", "120/1", "12", "120");

        await Keeper.ForgetClubAsync(new ClubId("12"), Ct);

        Assert.Equal(["12", "120", "120/1"], await LeftAsync());
    }

    private async Task KeepAsync(params string[] members)
    {
        foreach (var rider in members.Select(m => Sample.RiderOf(m, 5)))
        {
            await Riders.SaveRiderAsync(rider, [], Message(rider, "grease"), Ct);
        }
    }

    private async Task<string[]> LeftAsync()
    {
        string[] left = [.. (await Riders.DueRidersAsync(Sample.Noon.AddDays(1), 100, Ct)).Select(r => r.Member.Value).Order(StringComparer.Ordinal)];
        string[] said = [.. (await Keeper.UnsaidPlacesAsync(100, Ct)).Order(StringComparer.Ordinal)];
        Assert.Equal(left.Select(m => "nudge/" + m), said);
        return left;
    }

    private async Task<string[]> DueAsync(int minute, int limit) =>
        [.. (await Riders.DueRidersAsync(Sample.Noon.AddMinutes(minute), limit, Ct)).Select(r => r.Member.Value)];

    private static ImmutableArray<OutboxMessage> Message(Rider rider, string words) =>
        [new(Decision.PlaceOf(rider.Member) + "/2026-05-02", new CaseId(Decision.PlaceOf(rider.Member)), Decision.PlaceOf(rider.Member), Sample.CardOf(words), Sample.Noon)];
}
