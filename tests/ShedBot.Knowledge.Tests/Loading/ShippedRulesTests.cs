using ShedBot.Knowledge.Loading;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;
using Xunit.Abstractions;

namespace ShedBot.Knowledge.Tests.Loading;

public class ShippedRulesTests(ITestOutputHelper output)
{
    private static readonly LoadResult Shipped = KnowledgeLoader.Load(KnowledgeFolder.Read(Path.Combine(Root(), "knowledge")));

    [Fact]
    public void Knowledge_ShippedRules_HaveNoProblems()
    {
        var problems = Shipped.Problems.Select(p => p.ToString()).ToList();

        foreach (var problem in problems) output.WriteLine(problem);
        Assert.True(problems.Count == 0, $"{problems.Count} problems:\n{string.Join('\n', problems)}");
        Assert.NotNull(Shipped.Knowledge);
    }

    /// <summary>Diagnosis text books keep 2 to 10 % for what is not listed; told any complaint, it must still be about there.</summary>
    [Fact]
    public void Knowledge_AnyShippedComplaint_LeavesSomethingElseInTheRunning() => Assert.All(Shipped.Knowledge!.Complaints.Keys, complaint =>
        Assert.InRange(
            Inferrer.InferSingle(Shipped.Knowledge.Model, [new FindingTold(complaint, Finding.Yes, AnswerError.Even(0.02))]).Marginal(KnowledgeBase.SomethingElse),
            0.02,
            0.10));

    /// <summary>If only one fault is there, a rider sees each state that its rule lists as often as the rule says, to the last of the sums.</summary>
    [Fact]
    public void Knowledge_EveryShippedStrength_ComesOutAsWritten()
    {
        var model = Shipped.Knowledge!.Model;
        foreach (var fault in Shipped.Knowledge.Faults.Values)
        {
            foreach (var (finding, words) in fault.ShowsAs)
            {
                var at = model.FindingAt(finding);
                var given = new StateChances(model, at).Given([model.FaultAt(fault.Id)]);
                var scale = Math.Min(1, 0.99 / words.Values.Sum(Wording.ChanceWords.Chance));
                foreach (var (state, word) in words)
                    Assert.Equal(Wording.ChanceWords.Chance(word) * scale, given[model.StateAt(at, state)], 9);
            }
        }
    }

    internal static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ShedBot.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("The tests run outside the project's folder.");
    }
}
