using NodaTime;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Nudging;
using static ShedBot.Coaching.Tests.Nudging.Talk;

namespace ShedBot.Coaching.Tests.Nudging;

/// <summary>A member's settings as they read them. Kathmandu is 5:45 ahead of UTC the whole year (IANA data).</summary>
public sealed class RiderCardsTests
{
    private static readonly Rider Agreed = Rider.New(new MemberId("m1")) with { Consent = Consent.Given };

    [Fact]
    public void Of_SomebodyReminded_SaysWhenAndHowToStop() => Assert.Equal(
        """
        Reminders are on
        So far: around 18:00, when something is due; at most one a day of my own accord / quiet from 21:00 to 08:00 / your clock: Europe/Lisbon until you tell me yours; it is 12:00 there
        [Stop all reminders]
        """.ReplaceLineEndings("\n"),
        Text(Agreed));

    [Fact]
    public void Of_SomebodyWithWishes_NamesThemAll()
    {
        var rider = Agreed with
        {
            Zone = "Asia/Kathmandu",
            Units = Units.Imperial,
            Quiet = new QuietHours(LocalTime.Noon, LocalTime.Noon),
            Stopped = ["grease", "gone"],
            Later = [new Postponed("k", At(June3, 18), true), new Postponed("past", At(June3, 9), true)],
        };
        var text = Text(rider);
        Assert.Contains("no quiet hours / your clock: Asia/Kathmandu; it is 16:45 there / distances in miles", text, StringComparison.Ordinal);
        Assert.Contains("not reminded of: grease and gone / put off for later: 1", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_ATimeInQuietHours_SaysWhyItIsAnother() =>
        Assert.Contains("around 08:00, when something is due (22:00 is in your quiet hours)", Text(Agreed with { Preferred = new LocalTime(22, 0) }), StringComparison.Ordinal);

    [Theory]
    [InlineData(Consent.NotAsked, false, false, "Reminders are off")]
    [InlineData(Consent.Withheld, false, false, "Reminders are off")]
    [InlineData(Consent.Given, true, false, "Reminders don't reach you")]
    [InlineData(Consent.Given, false, true, "Reminders are resting")]
    public void Of_SomebodyNotReminded_OffersToBegin(Consent consent, bool refused, bool silent, string title)
    {
        var text = Text(Agreed with { Consent = consent, Refused = refused, Silent = silent });
        Assert.StartsWith(title, text, StringComparison.Ordinal);
        Assert.DoesNotContain("around 18:00", text, StringComparison.Ordinal);
        Assert.EndsWith("[Remind me]", text, StringComparison.Ordinal);
    }

    private static string Text(Rider rider)
    {
        var card = RiderCards.Of(rider, new Talk(Due("grease", 3)).Knowledge, "Europe/Lisbon", At(June3, 12));
        return Samples.Talk.Text(card) + "\n" + string.Join("\n", card.Options.Select(o => $"[{o.Label}]"));
    }
}
