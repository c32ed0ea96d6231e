using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Learning.Counting;
using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Coaching.Tests.Samples;
using static ShedBot.Coaching.Tests.Learning.Told;

namespace ShedBot.Coaching.Tests.Learning;

/// <summary>What riders leave out when they tell their trouble, fitted to riders whose habit is known.</summary>
public class TellingHabitsTests
{
    private static readonly RuleSheet Rules = new(Pump.Knowledge);

    private static readonly PairSets Sets = new(Rules.Faults);

    /// <summary>The pump has two complaints; of bikes that show both, both are told, or always only one of them.</summary>
    [Theory]
    [InlineData(2, 0, 0.2)]
    [InlineData(1, 0.4, 0.95)]
    public void Fitted_RidersWhoTellSoMany_IsTheirHabit(int most, double least, double largest)
    {
        var stories = Stories(most);

        Assert.InRange(TellingHabits.Fitted(Rules, Sets, stories, [.. stories.Select(_ => 1.0)]).Silence.Untold, least, largest);
    }

    /// <summary>These riders never name a wrong complaint, and the coach's doubt is taken back.</summary>
    [Fact]
    public void Fitted_RidersWhoNeverErr_AreDoubtedLess()
    {
        var stories = Stories(2);

        var fitted = TellingHabits.Fitted(Rules, Sets, stories, [.. stories.Select(_ => 1.0)]).Stories;

        Assert.Equal(0.2, stories[0].Complaints[0].Unmeant, 9);
        Assert.InRange(fitted[0].Complaints[0].Unmeant, 0, 0.025);
    }

    /// <summary>
    /// By hand: the bearing alone hums in 97 of 100 and never stops the water but by the leak; when half of the complaints stay untold, silence about the humming
    /// is 0.5 + 0.5 * (1 - 0.97) = 0.515 for it, and 0.5 + 0.5 * 0.999 for a shut tap, which only the leak of 0.001 makes hum.
    /// </summary>
    [Fact]
    public void Of_UntoldComplaint_SpeaksAgainstWhatGivesIt()
    {
        var quiet = new Silence(Rules, Sets, 0.5).Of(Read(Case(1, "m", CasePhase.Left, Has("no-water"))));

        double Quiet(string fault) => quiet[Array.IndexOf(Sets.All, (Rules.Model.FaultAt(fault), -1))];
        Assert.Equal(0.515, Quiet("bearing-dry"), 6);
        Assert.Equal(0.9995, Quiet("tap-shut"), 6);
    }

    [Fact]
    public void Of_ComplaintThatWasDenied_IsNotSilence()
    {
        var quiet = new Silence(Rules, Sets, 0.5).Of(Read(Case(1, "m", CasePhase.Left, Has("no-water"), Line(EntryKind.Denied, "hums"))));

        Assert.All(quiet, q => Assert.Equal(1, q, 9));
    }

    /// <summary>By hand: new pumps at 67.5 parts have a worn wheel 0.2 times as often, old ones at 32.5 parts 6 times: 0.135 + 1.95 = 2.085 times on the mean.</summary>
    [Fact]
    public void ExpectedOdds_FactThatNobodyAskedFor_AreTheMeanOverBikes()
    {
        var (unknown, old) = (Rules.ExpectedOdds(new Dictionary<string, string>()), Rules.ExpectedOdds(new Dictionary<string, string> { ["age"] = "old" }));
        var worn = Rules.Model.FaultAt("wheel-worn");

        Assert.Equal(2.085, unknown[worn] / Rules.Odds[worn], 9);
        Assert.Equal(6, old[worn] / Rules.Odds[worn], 9);
        Assert.Equal(Rules.Odds[Rules.Model.FaultAt("tap-shut")], unknown[Rules.Model.FaultAt("tap-shut")], 12);
    }

    /// <param name="most">So many of their complaints are told, drawn at random.</param>
    private static List<CaseStory> Stories(int most)
    {
        var draw = new RiderDraw(Pump.Knowledge, new RidersWanted());
        return
        [
            .. Enumerable.Range(0, 600).Select(i => draw.Draw(5, i)).Select(r => Read(Case(
                r.Number, $"m{r.Number}", CasePhase.Left, [.. r.Complaints.OrderBy(c => r.Luck.Roll(c)).Take(most).Select(c => Has(c) with { Score = 0.6 })]))),
        ];
    }

    private static CaseStory Read(ClosedCase closed) => StoryReader.Read(closed, Pump.Knowledge)!;
}
