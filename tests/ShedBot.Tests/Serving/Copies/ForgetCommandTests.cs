using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Serving.Copies;
using ShedBot.Storage;

namespace ShedBot.Tests.Serving.Copies;

public sealed class ForgetCommandTests : IDisposable
{
    private static readonly ClubId One = new("11"), Two = new("22");
    private readonly TempFolder temp = new();

    public void Dispose() => temp.Dispose();

    [Theory]
    [InlineData(null, 0, 0)]
    [InlineData("11", 0, 1)]
    public async Task Forget_AMember_RemovesTheirsThereAndNobodyElses(string? club, int leftInOne, int leftInTwo)
    {
        var data = temp.File("club.shed");
        await FillAsync(data);
        var output = new StringWriter();

        Assert.Equal(ExitCodes.Fine, await ForgetCommand.ForgetAsync(data, "5", club, output, TextWriter.Null, default));

        Assert.Contains($"Removed {2 - leftInOne - leftInTwo} cases", output.ToString(), StringComparison.Ordinal);
        Assert.Equal((leftInOne, leftInTwo, 1), await LeftAsync(data));
    }

    [Theory]
    [InlineData("robin", null)]
    [InlineData("5", "11/5")]
    public async Task Forget_WhatIsNoId_SaysWhatAnIdIsAndRemovesNothing(string person, string? club)
    {
        var data = temp.File("club.shed");
        await FillAsync(data);
        var errors = new StringWriter();

        Assert.Equal(ExitCodes.InputHasErrors, await ForgetCommand.ForgetAsync(data, person, club, TextWriter.Null, errors, default));

        Assert.Contains("number of the chat", errors.ToString(), StringComparison.Ordinal);
        Assert.Equal((1, 1, 1), await LeftAsync(data));
    }

    private static async Task FillAsync(string data)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = data }, default);
        foreach (var club in new[] { One, Two }) await store.SaveClubAsync(Club.New(club) with { Version = 1 }, default);
        foreach (var member in new[] { One.Member("5"), Two.Member("5"), One.Member("55") })
        {
            var @case = Case.New(new CaseId("case-" + member.Value), member, new BikeId(member.Value + "/bike"), "place-" + member.Value, DateTimeOffset.UnixEpoch) with { Version = 1 };
            await store.SaveAsync(new TurnSaved(@case, null, null, []), default);
        }
    }

    private static async Task<(int One, int Two, int Other)> LeftAsync(string data)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = data }, default);
        return (
            (await store.CasesOfAsync(One.Member("5"), 10, default)).Length,
            (await store.CasesOfAsync(Two.Member("5"), 10, default)).Length,
            (await store.CasesOfAsync(One.Member("55"), 10, default)).Length);
    }
}
