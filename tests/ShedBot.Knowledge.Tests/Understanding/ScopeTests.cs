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
