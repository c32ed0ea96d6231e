using ShedBot.Coaching.Tests.Logbook;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Tests.Turns;

/// <summary>Facts of the bike that turn up in a case, under the shipped rules.</summary>
public sealed class OverhearingTests
{
    private readonly Talk talk = new(new Coach(Bench.Knowledge, Listener.For(Bench.Knowledge), new CoachOptions()));

    [Fact]
    public void Take_ATroubleWithFacts_KeepsThemAndSaysSo()
    {
        talk.Say("my 66cc clutch won't let go when I pull it in, it has a 44 tooth sprocket");
        Assert.Equal(("66cc", "heard"), (talk.Bike.Facts["engine-size"].Value, talk.Bike.Facts["engine-size"].How));
        Assert.Equal("44", talk.Bike.Facts["rear-sprocket"].Value);
        Assert.Contains("And noted of your bike: ", talk.AllText, StringComparison.Ordinal);
        Assert.Equal(1, talk.Bike.Version);
    }

    [Fact]
    public void Take_AFactBesideAQuestion_IsNotedAndTheQuestionStaysOpen()
    {
        var before = talk.Say("clutch won't let go when I pull it in").Case.Open;
        talk.Say("by the way the bar is 18.2 mm");
        Assert.Equal("18.2", talk.Bike.Facts["bar-length"].Value);
        Assert.StartsWith("Noted of your bike: bar length 18.2 mm", talk.Said[0].Title, StringComparison.Ordinal);
        Assert.Equal(before, talk.Case.Open);
    }

    [Fact]
    public void Take_TheSameFactAgain_ChangesNothingOfTheBike()
    {
        talk.Say("clutch won't let go when I pull it in on my 66cc");
        var bike = talk.Bike;
        talk.Say("it is a 66cc");
        Assert.Same(bike, talk.Bike);
    }
}
