using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Tests.Simulation;

public class RiderAnswersTests
{
    private const int Many = 4000;

    private static Check FeelHose => PumpRules.Knowledge.Model.Checks[PumpRules.Knowledge.Model.CheckAt("feel-hose")];

    // 'Easy to misread' is a wrong answer in 8 % and 'not sure' in 12 % of the cases: the scale of the rules, common practice, no source.
    [Fact]
    public void Check_ManyRiders_ErrAndDoubtAsOftenAsTheRulesSay()
    {
        var (wrong, unsure) = (0, 0);
        for (var i = 0; i < Many; i++)
        {
            var (said, truth) = Ask(i, new Habits());
            if (said is null) unsure++;
            else if (said != truth) wrong++;
        }

        Assert.InRange(unsure / (double)Many, 0.10, 0.14);
        Assert.InRange(wrong / (double)(Many - unsure), 0.062, 0.098);
    }

    [Fact]
    public void Check_OneInTenReplaced_ErrsThatMuchMore()
    {
        var wrong = Enumerable.Range(0, Many).Select(i => Ask(i, new Habits(Wrong: 0.1, Unsure: 0))).Count(a => a.Said != a.Truth);
        // Two states: wrong is 0.08 * 0.9 + 0.92 * 0.1 = 0.164.
        Assert.InRange(wrong / (double)Many, 0.14, 0.19);
    }

    [Fact]
    public void Check_AlwaysUnsure_NeverSaysAState() =>
        Assert.All(Enumerable.Range(0, 50), i => Assert.Null(Ask(i, new Habits(Unsure: 1)).Said));

    [Fact]
    public void Fact_CleanHabits_IsTheTruth()
    {
        var rider = PumpRules.Rider("wheel-worn", 1);
        Assert.Equal(rider.Facts["age"], new RiderAnswers(rider, new Habits()).Fact(PumpRules.Knowledge.Facts["age"], 0));
    }

    [Fact]
    public void Fact_AlwaysWrong_IsNeverTheTruth()
    {
        var rider = PumpRules.Rider("wheel-worn", 1);
        Assert.NotEqual(rider.Facts["age"], new RiderAnswers(rider, new Habits(Wrong: 1)).Fact(PumpRules.Knowledge.Facts["age"], 0));
    }

    [Fact]
    public void Try_ByWhatIsLeft_IsHeldBetterOrNoChange()
    {
        var rider = PumpRules.Rider("hose-kinked", 0);
        var two = rider.Machine with { Faults = ["hose-kinked", "wheel-worn"] };
        var answers = new RiderAnswers(rider, new Habits());
        Assert.Equal(TriedOut.NoChange, answers.Try(rider.Machine, rider.Machine, 0));
        Assert.Equal(TriedOut.Better, answers.Try(two, rider.Machine, 0));
        Assert.Equal(TriedOut.Held, answers.Try(rider.Machine, rider.Machine with { Faults = [] }, 0));
    }

    private static (string? Said, string Truth) Ask(int number, Habits habits)
    {
        var rider = PumpRules.Rider("hose-kinked", number);
        var hose = PumpRules.Knowledge.Model.Findings[PumpRules.Knowledge.Model.FindingAt("hose")];
        return (new RiderAnswers(rider, habits).Check(FeelHose, rider.Machine, 0), hose.States[rider.Machine.StateOf("hose")]);
    }
}
