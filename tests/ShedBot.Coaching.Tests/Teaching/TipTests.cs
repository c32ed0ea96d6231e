using ShedBot.Coaching.Teaching;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>What becomes of what members pass on: taken up, or turned down kindly, once.</summary>
public sealed class TipTests
{
    private static readonly Teacher Cy = School.Member("cy", TeachingRights.None);

    [Fact]
    public async Task Decline_WithAReason_TellsItsGiverOnceAndKindly()
    {
        using var school = new School();
        var tip = await GivenAsync(school);
        var answer = await school.DoAsync(School.Ada, new DeclineTip(tip.Id, "We have that already @everyone."));
        Assert.Null(answer.Refused);
        var said = Assert.Single(school.Shelf.Said);
        var text = School.Text(said.Card);
        Assert.Equal(TeachingPlace.Of(Cy.Who), said.Place);
        Assert.Contains("You said: \"a tight tie pinches the cable\"", text);
        Assert.Contains("Thank you for it. This time it did not become a rule: We have that already", text);
        Assert.Equal("taken", (await school.DoAsync(School.Bo, new DeclineTip(tip.Id, "again"))).Refused?.Code);
        Assert.Single(school.Shelf.Said);
        Assert.Equal((TipState.Declined, "We have that already @everyone."), (await TipAsync(school, tip.Id) is var after ? after.State : default, after.Answer));
        Assert.Empty(await school.Shelf.TipsAsync(School.Club, TipState.Waiting, 10, default));
    }

    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    [InlineData("...")]
    public async Task Decline_WithoutAReason_AsksForOneAndLeavesTheTip(string reason)
    {
        using var school = new School();
        var tip = await GivenAsync(school);
        Assert.Equal("reason", (await school.DoAsync(School.Ada, new DeclineTip(tip.Id, reason))).Refused?.Code);
        Assert.Equal(TipState.Waiting, (await TipAsync(school, tip.Id)).State);
        Assert.Empty(school.Shelf.Said);
    }

    [Fact]
    public async Task Decline_ATipThatIsBeingWritten_IsNotDeclined()
    {
        using var school = new School();
        var tip = await GivenAsync(school);
        var begun = await school.DoAsync(School.Bo, new BeginSheet("cause", tip.Id));
        Assert.Equal("taken", (await school.DoAsync(School.Ada, new DeclineTip(tip.Id, "no"))).Refused?.Code);
        await school.DoAsync(School.Bo, new Withdraw(begun.Proposal!.Id));
        Assert.Null((await school.DoAsync(School.Ada, new DeclineTip(tip.Id, "We tried it; it was something else."))).Refused);
    }

    [Fact]
    public async Task Decline_ATipThatNeverWas_IsNotFound() =>
        Assert.NotNull((await new School().DoAsync(School.Ada, new DeclineTip("T99", "no"))).Refused);

    private static async Task<Tip> GivenAsync(School school)
    {
        await school.DoAsync(Cy, new PassTip("a tight tie pinches the cable"));
        return Assert.Single(await school.Shelf.TipsAsync(School.Club, TipState.Waiting, 10, default));
    }

    private static async Task<Tip> TipAsync(School school, string id) => (await school.Shelf.FindTipAsync(School.Club, id, default))!;
}
