using NodaTime;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Nudging;
using static ShedBot.Coaching.Tests.Nudging.Talk;

namespace ShedBot.Coaching.Tests.Nudging;

/// <summary>What each wish does to the member. Common practice, no source.</summary>
public sealed class RiderWishesTests
{
    private static readonly DateTimeOffset Now = At(June3, 12);

    private static readonly Rider Agreed = Rider.New(new MemberId("m1")) with { Consent = Consent.Given, NextLook = At(June3.PlusDays(3), 18), Version = 7 };

    public static TheoryData<RiderRequest> All =>
    [
        new RemindMe(null), new RemindMe(new LocalTime(9, 0)), new RemindMeNoMore(), new KeepQuiet(QuietHours.Usual), new LiveIn("Asia/Kathmandu"), new ThinkIn(Units.Imperial),
        new HearAgain("grease"), new HearAgain(null), new MentionMe("channel/1"),
    ];

    [Theory]
    [MemberData(nameof(All))]
    public void Take_AnyWish_IsOneSaveAndASignOfLife(RiderRequest request)
    {
        var after = RiderWishes.Take(Agreed with { Unanswered = 2, Silent = true }, request, Now).Must;
        Assert.Equal((8, 0, false), (after.Version, after.Unanswered, after.Silent));
        Assert.Equal(request is RemindMeNoMore ? null : Now, after.NextLook);
    }

    /// <summary>Settings can be told without wanting reminders.</summary>
    [Theory]
    [MemberData(nameof(All))]
    public void Take_WithoutConsent_OnlyAskingForRemindersGivesIt(RiderRequest request)
    {
        var after = RiderWishes.Take(Rider.New(new MemberId("m1")), request, Now).Must;
        Assert.Equal(request is RemindMe ? Consent.Given : request is RemindMeNoMore ? Consent.Withheld : Consent.NotAsked, after.Consent);
        Assert.Equal(request is RemindMe ? Now : null, after.NextLook);
    }

    [Fact]
    public void Take_RemindMeAfterARefusal_TriesAgain()
    {
        var after = RiderWishes.Take(Agreed with { Refused = true, Note = true, NextLook = null }, new RemindMe(new LocalTime(9, 0)), Now).Must;
        Assert.Equal((false, false, new LocalTime(9, 0), Now), (after.Refused, after.Note, after.Preferred, after.NextLook));
    }

    /// <summary>Another wish does not undo what the platform refused.</summary>
    [Fact]
    public void Take_AnotherWishAfterARefusal_StaysQuiet()
    {
        var after = RiderWishes.Take(Agreed with { Refused = true, NextLook = null }, new LiveIn("Asia/Kathmandu"), Now).Must;
        Assert.Equal((true, null), (after.Refused, after.NextLook));
    }

    [Fact]
    public void Take_RemindMeNoMore_DropsWhatWasPutOff()
    {
        var after = RiderWishes.Take(Agreed with { Later = [new Postponed("k", Now, false)] }, new RemindMeNoMore(), Now).Must;
        Assert.Equal((Consent.Withheld, true, null), (after.Consent, after.Later.IsEmpty, after.NextLook));
    }

    [Fact]
    public void Take_HearAgain_TakesOneTaskOrAllFromTheStopped()
    {
        var stopped = Agreed with { Stopped = ["chain", "grease"] };
        Assert.Equal(["chain"], RiderWishes.Take(stopped, new HearAgain("grease"), Now).Must.Stopped.AsEnumerable());
        Assert.Equal(["chain", "grease"], RiderWishes.Take(stopped, new HearAgain("spokes"), Now).Must.Stopped.AsEnumerable());
        Assert.Empty(RiderWishes.Take(stopped, new HearAgain(null), Now).Must.Stopped);
    }

    /// <summary>An hour a day must be left: 23 hours of quiet are taken, a minute more is not.</summary>
    [Theory]
    [InlineData(8, 0, 7, 0, true)]
    [InlineData(8, 0, 7, 1, false)]
    [InlineData(0, 0, 23, 0, true)]
    [InlineData(0, 0, 23, 59, false)]
    [InlineData(0, 0, 0, 0, true)]
    public void Take_KeepQuiet_LeavesAnHourADay(int from, int fromMinute, int until, int untilMinute, bool taken)
    {
        var quiet = new QuietHours(new LocalTime(from, fromMinute), new LocalTime(until, untilMinute));
        var after = RiderWishes.Take(Agreed, new KeepQuiet(quiet), Now);
        Assert.Equal(taken ? null : "always-quiet", after.Refused?.Code);
        if (taken) Assert.Equal(quiet, after.Must.Quiet);
    }

    [Theory]
    [InlineData("Asia/Kathmandu", true)]
    [InlineData("Mars/Olympus", false)]
    [InlineData(null, true)]
    public void Take_LiveIn_TakesZonesOfTheDataOnly(string? zone, bool taken)
    {
        var after = RiderWishes.Take(Agreed with { Zone = "Europe/Lisbon" }, new LiveIn(zone), Now);
        Assert.Equal(taken ? null : "zone", after.Refused?.Code);
        if (taken) Assert.Equal(zone, after.Must.Zone);
    }
}
