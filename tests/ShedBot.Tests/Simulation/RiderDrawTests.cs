using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Wording;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Tests.Simulation;

public class RiderDrawTests
{
    private const int Many = 3000;

    [Fact]
    public void Draw_AnyRider_HasAFaultAndAComplaintAndEveryFact()
    {
        var draw = new RiderDraw(PumpRules.Knowledge, new RidersWanted());
        Assert.All(Enumerable.Range(0, 200).Select(i => draw.Draw(1, i)), rider =>
        {
            Assert.NotEmpty(rider.Machine.Faults);
            Assert.NotEmpty(rider.Complaints);
            Assert.All(rider.Complaints, c => Assert.True(rider.Machine.Shows(c)));
            Assert.Equal(PumpRules.Knowledge.Facts.Keys, rider.Facts.Keys);
        });
    }

    // Sampling held against the exact sums over fault sets: P(fault | no water, a fault at all), with the facts of the bike averaged out.
    [Fact]
    public void Draw_ManyWithOneComplaint_FaultsAreAsCommonAsExactInferenceSays()
    {
        var knowledge = PumpRules.Knowledge;
        var draw = new RiderDraw(knowledge, new RidersWanted(Complaint: "no-water"));
        var riders = Enumerable.Range(0, Many).Select(i => draw.Draw(11, i)).ToList();
        var expected = knowledge.Model.Faults.ToDictionary(f => f.Id, _ => 0.0);
        var weights = 0.0;
        var often = knowledge.Facts["age"].Values.Sum(v => ChanceWords.Chance(v.HowOften));
        foreach (var value in knowledge.Facts["age"].Values)
        {
            var model = MachineProfile.ModelFor(knowledge, new Dictionary<string, string> { ["age"] = value.Id });
            var belief = Inferrer.Infer(model, [new FindingTold("no-water", Finding.Yes, default)], new InferenceOptions(LargestSet: 5));
            var any = 1 - model.Faults.Aggregate(1.0, (none, f) => none * (1 - f.Prior));
            var weight = ChanceWords.Chance(value.HowOften) / often * any * Math.Exp(belief.LogEvidence);
            weights += weight;
            foreach (var fault in model.Faults) expected[fault.Id] += weight * belief.Marginal(fault.Id);
        }

        Assert.All(expected, e =>
        {
            var (p, seen) = (e.Value / weights, riders.Count(r => r.Machine.Faults.Contains(e.Key)) / (double)Many);
            var slack = 0.002 + (4 * Math.Sqrt(p * (1 - p) / Many));
            Assert.InRange(seen, p - slack, p + slack);
        });
    }

    [Fact]
    public void Draw_OneFaultWanted_HasThatOneAlone()
    {
        var rider = PumpRules.Rider("bearing-dry", 4);
        Assert.Equal(["bearing-dry"], rider.Machine.Faults);
    }

    [Fact]
    public void Draw_FaultThatIsNeverSoShown_IsRefusedInWords()
    {
        // A shut tap shows as humming through the leak alone, so this is met, but rarely: the draw goes on until it is.
        var rider = new RiderDraw(PumpRules.Knowledge, new RidersWanted("hums", "tap-shut")).Draw(1, 0);
        Assert.Contains("hums", rider.Complaints);
        Assert.True(rider.Luck.Draw > 0);
    }
}
