using ShedBot.Knowledge.Understanding;

namespace ShedBot.Knowledge.Tests.Understanding;

/// <summary>Each way of denying, or of telling the past, beside its affirmed twin. English usage; common practice, no source.</summary>
public class ScopeTests
{
    [Theory]
    [InlineData("clutch wont let go when i pull it in, bike keeps pulling")]
    [InlineData("since i put the clutch back together it never releases, nothing i adjust helps")]
    public void Understand_ClutchThatOnlyDrags_IsNoEmergency(string message)
    {
        Assert.Equal("drags", Heard(message).Complaints[0].Id);
        Assert.Null(Heard(message).Emergency);
    }

    [Theory]
    [InlineData("it slips", "slips")]
    [InlineData("it does not slip", "")]
    [InlineData("it does not slip, it drags", "drags")]
    [InlineData("it won't let go", "drags")]
    [InlineData("isn't slipping any more", "")]
    [InlineData("clutch stopped slipping", "")]
    [InlineData("it won't stop slipping", "slips")]
    [InlineData("it used to slip, fixed that, now it grabs", "grabs")]
    [InlineData("no squeak but it slips", "slips")]
    [InlineData("it never slips", "")]
    [InlineData("it does not drag, slip or grab", "")]
    [InlineData("what if it slips", "")]
    [InlineData("no idea why it slips", "slips")]
    [InlineData("not only does it slip", "slips")]
    [InlineData("they say it slips. it does not slip", "")]
    public void Understand_DeniedOrPast_HearsOnlyWhatIsSo(string message, string expected) =>
        Assert.Equal(expected, string.Join(' ', Heard(message).Complaints.Select(c => c.Id)));

    [Theory]
    [InlineData("it does not slip, it drags", "slips")]
    [InlineData("isn't slipping any more", "slips")]
    [InlineData("no squeak but it slips", "squeaks")]
    public void Understand_DeniedComplaint_IsToldAsDenied(string message, string denied) =>
        Assert.Contains(denied, Heard(message).Denied);

    [Theory]
    [InlineData("the lever is very heavy and it squeaks when it bites", "lever-heavy", "squeaks")]
    [InlineData("bike keeps pulling with the lever in, also the cover screws keep falling out", "drags", "cover-screws-fall-out")]
    public void Understand_TwoComplaints_HearsBoth(string message, string one, string other) =>
        Assert.Equal(new[] { one, other }.Order(), Heard(message).Complaints.Select(c => c.Id).Order());

    [Theory]
    [InlineData("no slack left", "slack-now", "none")]
    [InlineData("there is no ball", "ball-count", "missing")]
    [InlineData("ball is missing", "ball-count", "missing")]
    public void Understand_VolunteeredState_IsHeard(string message, string finding, string state) =>
        Assert.Contains(Heard(message).Findings, f => f.Subject == finding && f.State == state);

    [Theory]
    [InlineData("fuel is leaking", "fuel-leak")]
    [InlineData("my bike is on fire", "fire")]
    [InlineData("fuel is not leaking", null)]
    [InlineData("no fire no smoke, it only squeaks", null)]
    [InlineData("the throttle is stuck open", "runaway-throttle")]
    public void Understand_Danger_IsNoticedUnlessDenied(string message, string? emergency) =>
        Assert.Equal(emergency, Heard(message).Emergency);

    [Theory]
    [InlineData("my wrist hurts from the lever", null)]
    [InlineData("I fell off and my wrist hurts", "injury")]
    [InlineData("the gear cover is cracked", null)]
    [InlineData("when I'm riding the clutch drags every ride", null)]
    [InlineData("I'm riding and the clutch won't release", "clutch-stuck-riding")]
    public void Understand_DangerOrNot_IsToldByTheWordsBesideIt(string message, string? emergency) =>
        Assert.Equal(emergency, Heard(message).Emergency);

    /// <summary>Words that are said of something else take nothing away from the rest of the message.</summary>
    [Theory]
    [InlineData("There is fire under the tank", "fire")]
    [InlineData("there's fire at the carb", "fire")]
    [InlineData("that is fire under the tank", "fire")]
    [InlineData("my bike is on fire and I have no fire extinguisher", "fire")]
    [InlineData("bike on fire, called the fire brigade, what now", "fire")]
    [InlineData("it misfired and set the air filter on fire", "fire")]
    [InlineData("the engine is on fire, haha help", "fire")]
    [InlineData("where do I keep a fire extinguisher", null)]
    [InlineData("I sat by the fire", null)]
    [InlineData("this bike is fire", null)]
    [InlineData("that is fire!", null)]
    [InlineData("there is no fire", null)]
    [InlineData("no smoke from the exhaust but the clutch cover is smoking", "smoke-now")]
    [InlineData("some blue smoke from the exhaust when cold", null)]
    [InlineData("not leaking last week but now fuel is dripping from the carb", "fuel-leak")]
    [InlineData("I was filling up and now the tank is leaking petrol on the engine", "fuel-leak")]
    [InlineData("smells of petrol when filling up", null)]
    [InlineData("throttle stuck on a hill climb", "runaway-throttle")]
    [InlineData("fitted new brakes and now the front brake does not work at all", "brakes-failing")]
    [InlineData("my hand hurts, I got it caught in the sprocket", "injury")]
    public void Understand_DangerBesideWordsThatOnlySoundSo_IsHeardForWhatIsLeft(string message, string? emergency) =>
        Assert.Equal(emergency, Heard(message).Emergency);

    [Theory]
    [InlineData("lever is super heavy", null)]
    [InlineData("how heavy should the lever be, what is normal", "what-is-normal")]
    [InlineData("pads are swimming in oil", null)]
    [InlineData("how do I clean the pads", "clean-the-pads")]
    [InlineData("cable routing", "route-the-cable")]
    public void Understand_TopicAskedOrOnlyTold_IsOfferedWhenAsked(string message, string? topic) =>
        Assert.Equal(topic, Heard(message).HowTo?.Id);

    private static Understood Heard(string message) => Shipped.Listener.Understand(message);
}
