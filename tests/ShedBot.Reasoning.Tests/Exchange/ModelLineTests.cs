using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Exchange;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Tests.Exchange;

public class ModelLineTests
{
    private const string Small = """
        {"id": "m", "model": {
          "faults": [{"id": "f", "prior": 0.6}, {"id": "other", "prior": 0.1}],
          "checks": [{"id": "c", "cost": 2, "leak": 0.1, "p_yes": {"f": 0.9}, "err": {"fp": 0.05, "fn": 0.1}, "cluster": "k"}, {"id": "d", "cost": 1, "p_yes": {}}],
          "repairs": [{"id": "r", "cost": 5, "fixes": {"f": 0.8}, "cluster": null}],
          "clusters": [{"id": "k", "cost": 7}],
          "help": {"cost": 60}},
         "answers": {"c": "yes", "d": "unsure"}, "posterior_single_fault": {"f": 0.5}, "optimal_expected_cost": 12.5, "note": "passed over"}
        """;

    [Fact]
    public void Read_WholeLine_KeepsEverything()
    {
        var line = ModelLine.Read(Small);
        Assert.Equal("m", line.Id);
        Assert.True(line.Model.Faults[1].IsOther);
        Assert.Equal(new AnswerError(0.05, 0.1), line.Model.Checks[0].Error);
        Assert.Equal("k", line.Model.Checks[0].Cover);
        Assert.Equal([0.9, 0.1], line.Model.Findings[0].Leak.ToArray());
        Assert.Equal(0.9, line.Model.Findings[0].Links.Single().Net[1]);
        Assert.Equal(2, line.Model.Checks[0].Cost.Minutes);
        Assert.Equal(7, line.Model.Covers.Single().OpeningCost.Minutes);
        Assert.Equal(new Fix("f", 0.8), line.Model.Repairs.Single().Fixes.Single());
        Assert.Null(line.Model.Repairs.Single().Cover);
        Assert.Equal(60, line.Model.HelpCost);
        Assert.Equal(new CheckAnswered("c", "yes"), Assert.Single(line.Evidence));
        Assert.Equal(0.5, line.SingleFault!["f"]);
        Assert.Null(line.UpToTwo);
        Assert.Null(line.EvidenceProbability);
        Assert.Equal(12.5, line.Costs["optimal_expected_cost"]);
    }

    [Theory]
    [InlineData("\"id\": \"m\", ", "", "line.id is missing")]
    [InlineData("\"prior\": 0.6", "\"prior\": \"0.6\"", "line.model.faults[0].prior must be a number")]
    [InlineData("\"prior\": 0.6", "\"prior\": 1.6", "line.model: ")]
    [InlineData("\"prior\": 0.6", "\"prior\": 1e999", "line.model.faults[0].prior is not a number that can be used")]
    [InlineData("\"p_yes\": {\"f\": 0.9}", "\"p_yes\": {\"g\": 0.9}", "'g', which is no fault")]
    [InlineData("\"c\": \"yes\"", "\"c\": \"maybe\"", "line.answers.c must be yes, no, unsure or cannot")]
    [InlineData("\"c\": \"yes\"", "\"z\": \"yes\"", "line.answers.z answers a check that the model does not have")]
    [InlineData("\"help\": {\"cost\": 60}", "\"help\": 60", "line.model.help must be an object")]
    [InlineData("\"faults\": [", "\"faults\": 3, \"x\": [", "line.model.faults must be a list")]
    [InlineData("{\"id\": \"m\"", "[\"id\": \"m\"", "This is not JSON")]
    public void Read_SomethingWrong_NamesTheField(string was, string becomes, string expected)
    {
        Assert.Contains(was, Small, StringComparison.Ordinal);
        var refusal = Assert.Throws<FormatException>(() => ModelLine.Read(Small.Replace(was, becomes, StringComparison.Ordinal)));
        Assert.Contains(expected, refusal.Message, StringComparison.Ordinal);
    }
}
