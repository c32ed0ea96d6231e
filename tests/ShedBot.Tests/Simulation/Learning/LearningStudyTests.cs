using ShedBot.Coaching.Learning;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Loading;
using ShedBot.Simulation.Learning;

namespace ShedBot.Tests.Simulation.Learning;

/// <summary>The study of learning on clubs of the invented pump: cases that are kept, and what is told of clubs in which nothing moved.</summary>
public sealed class LearningStudyTests : IDisposable
{
    // The hostile member blames a rare cause; these rules have none of their own.
    private static readonly string Text = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Simulation", "pump.yaml")).Replace(
        "is: the bearing has run dry\n    because: A dry bearing hums and in the end it seizes.\n    how common: common",
        "is: the bearing has run dry\n    because: A dry bearing hums and in the end it seizes.\n    how common: rare", StringComparison.Ordinal);

    private readonly TempFolder folder = new();
    private readonly List<string> told = [];

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Run_CasesThatWereKept_AreNotRiddenAgainAndGiveTheSame()
    {
        var first = StudyText.Of(Plan(), Run(Plan()), "rules", "again");
        Assert.Contains(told, t => t.EndsWith("0 of 12 cases", StringComparison.Ordinal));
        told.Clear();

        var second = StudyText.Of(Plan(), Run(Plan()), "rules", "again");

        Assert.Equal(first, second);
        Assert.DoesNotContain(told, t => t.EndsWith("of 12 cases", StringComparison.Ordinal));
        Assert.Equal(12, File.ReadLines(Assert.Single(Directory.GetFiles(folder.Path))).Count());
    }

    [Fact]
    public void Run_FileWithSomethingElse_SaysWhereAndWhatToDo()
    {
        Run(Plan());
        File.AppendAllText(Directory.GetFiles(folder.Path)[0], "{}\n");

        var refused = Assert.Throws<InvalidDataException>(() => Run(Plan()));

        Assert.Contains("line 13", refused.Message, StringComparison.Ordinal);
        Assert.Contains("Move the file away", refused.Message, StringComparison.Ordinal);
    }

    /// <summary>Twelve cases are too few for anything to move: the ratio is one without an interval, and the fresh riders ride once.</summary>
    [Fact]
    public void Run_NothingMoved_CostsExactlyTheSame()
    {
        var results = Run(Plan());

        Assert.Equal([0, 6, 12], results.Select(r => r.Cases));
        Assert.All(results, r => Assert.Equal(results[0].Rides, r.Rides));
        Assert.Single(told, t => t.Contains("fresh riders", StringComparison.Ordinal));
        Assert.Contains("| 3 | 1 | 1 |", StudyText.Of(Plan(), results, "rules", "again"), StringComparison.Ordinal);
    }

    private StudyPlan Plan() => new([3], [6, 12], 3, new WorldSpread(0, 0), new ClubHabits(4, 0.1, 0.1), 1, folder.Path);

    private System.Collections.Immutable.ImmutableArray<StageResult> Run(StudyPlan plan) => new LearningStudy(Load, plan, LearningLimits.Default, told.Add).Run(default);

    private static KnowledgeBase Load(Learnt learnt) =>
        KnowledgeLoader.Load([RuleText.FromText("pump.yaml", Text)], CompileOptions.Default with { Learnt = learnt }).Knowledge!;
}
