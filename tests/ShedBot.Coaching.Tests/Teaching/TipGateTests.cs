using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>Tips: who may pass on what, how much of it, whose it is, and how it ends.</summary>
public sealed class TipGateTests
{
    private static readonly Teacher Ben = School.Member("ben", TeachingRights.None);

    [Theory]
    [InlineData(0, "empty")]
    [InlineData(1, null)]
    [InlineData(TipActs.MostWords, null)]
    [InlineData(TipActs.MostWords + 1, "long")]
    public async Task Pass_OfSomeLength_IsTakenWhereItFits(int length, string? refused)
    {
        using var school = PumpSchool.New();
        Assert.Equal(refused, (await school.DoAsync(Ben, new PassTip(new string('a', length)))).Refused?.Code);
        Assert.Equal(refused is null ? 1 : 0, (await school.Shelf.TipsAsync(School.Club, TipState.Waiting, 10, default)).Length);
    }

    [Fact]
    public async Task Pass_SignsAlone_SayNothing()
    {
        using var school = PumpSchool.New();
        Assert.Equal("empty", (await school.DoAsync(Ben, new PassTip(" ... ?! "))).Refused?.Code);
        Assert.Null((await school.DoAsync(Ben, new PassTip("?! 7"))).Refused);
    }

    /// <summary>One's own words, or another member's of the same club, under their name; never those of another club's.</summary>
    [Fact]
    public async Task Pass_AnothersWords_AreTheirs()
    {
        using var school = PumpSchool.New();
        var cleo = School.Member("cleo", TeachingRights.None);
        await school.DoAsync(Ben, new PassTip("grease it", cleo.Who, "Cleo", "thread 7"));
        var tip = Assert.Single(await school.Shelf.TipsAsync(School.Club, TipState.Waiting, 10, default));
        Assert.Equal((cleo.Who, "Cleo", Ben.Who, "thread 7", 1), (tip.From, tip.FromName, tip.PassedOnBy, tip.Where, tip.Version));
        Assert.Contains("Cleo", (await school.LastAsync()).What, StringComparison.Ordinal);
        await school.DoAsync(Ben, new PassTip("oil it"));
        var own = (await school.Shelf.TipsAsync(School.Club, TipState.Waiting, 10, default)).Single(t => t.Words == "oil it");
        Assert.Equal((Ben.Who, "ben", Ben.Who), (own.From, own.FromName, own.PassedOnBy));
        Assert.Equal("gave a tip", (await school.LastAsync()).What);
        var stranger = School.Member("dora", TeachingRights.None, new ClubId("other-club"));
        Assert.Equal("gone", (await school.DoAsync(Ben, new PassTip("theirs", stranger.Who))).Refused?.Code);
    }

    [Fact]
    public async Task Pass_TheSameEventTwice_IsOneTip()
    {
        using var school = PumpSchool.New();
        for (var i = 0; i < 2; i++) Assert.Null((await school.DoAsync(Ben, new PassTip("grease it", Id: "E5"))).Refused);
        Assert.Equal("E5", Assert.Single(await school.Shelf.TipsAsync(School.Club, TipState.Waiting, 10, default)).Id);
    }

    [Fact]
    public async Task Pass_TooManyWaiting_IsToldAndOthersTipsDoNotCount()
    {
        using var school = PumpSchool.New();
        await school.DoAsync(School.Ada, new PassTip("one of another's"));
        for (var i = 0; i < TipActs.MostWaiting; i++) Assert.Null((await school.DoAsync(Ben, new PassTip($"tip {i}"))).Refused);
        Assert.Equal("many", (await school.DoAsync(Ben, new PassTip("one more"))).Refused?.Code);
        Assert.Null((await school.DoAsync(School.Ada, new PassTip("another's"))).Refused);
        var first = (await school.Shelf.TipsAsync(School.Club, TipState.Waiting, 100, default)).First(t => t.From == Ben.Who);
        await school.DoAsync(School.Ada, new DeclineTip(first.Id, "known already"));
        Assert.Null((await school.DoAsync(Ben, new PassTip("one more"))).Refused);
    }

    [Fact]
    public async Task Decline_Waiting_TellsItsGiverOnce()
    {
        using var school = PumpSchool.New();
        var tip = await school.TipAsync(Ben);
        Assert.Equal("gone", (await school.DoAsync(School.Ada, new DeclineTip("T99", "no"))).Refused?.Code);
        Assert.Equal("gone", (await school.DoAsync(School.Ada, new ShowTip("T99"))).Refused?.Code);
        Assert.Equal("reason", (await school.DoAsync(School.Ada, new DeclineTip(tip.Id, " ? "))).Refused?.Code);
        Assert.Empty(school.Shelf.Said);
        Assert.Null((await school.DoAsync(School.Ada, new DeclineTip(tip.Id, "we grease it by the book"))).Refused);
        var after = (await school.Shelf.FindTipAsync(School.Club, tip.Id, default))!;
        Assert.Equal((TipState.Declined, "we grease it by the book", tip.Version + 1), (after.State, after.Answer, after.Version));
        var word = Assert.Single(school.Shelf.Said);
        Assert.Equal(TeachingPlace.Of(Ben.Who), word.Place);
        Assert.Contains("by the book", School.Text(word.Card), StringComparison.Ordinal);
        Assert.Equal("taken", (await school.DoAsync(School.Ada, new DeclineTip(tip.Id, "no"))).Refused?.Code);
        Assert.Equal(AuditAct.TipDeclined, (await school.LastAsync()).Act);
        Assert.Contains("No tip is waiting", School.Text((await school.DoAsync(School.Ada, new ShowTips())).Card), StringComparison.Ordinal);
        Assert.Contains("a rag in the bearing", School.Text((await school.DoAsync(School.Ada, new ShowTip(tip.Id))).Card), StringComparison.Ordinal);
    }
}
