using ShedBot.Coaching.Tests.Riding.Simulated;
using ShedBot.Coaching.Tests.Samples;

namespace ShedBot.Coaching.Tests.Riding;

/// <summary>The tables of docs/service-plan.md are those of the code. With SHEDBOT_APPROVE=1 they are written anew, to be read before they are committed.</summary>
public sealed class DueErrorTests
{
    private static readonly string Page = Path.Combine(Repository.Root, "docs", "service-plan.md");

    [Theory]
    [InlineData("14 riding days", 14, false)]
    [InlineData("3 riding days", 3, false)]
    [InlineData("150 km", 150, true)]
    public void Table_OfSimulatedRiders_IsTheOneInThePage(string heading, double need, bool kilometres)
    {
        var before = File.ReadAllText(Page).ReplaceLineEndings("\n");
        var (start, end) = Lines(before, heading);
        var table = DueErrors.Table(need, kilometres);
        if (Environment.GetEnvironmentVariable("SHEDBOT_APPROVE") == "1") File.WriteAllText(Page, before[..start] + table + before[end..]);
        else Assert.Equal(before[start..end], table);
    }

    /// <summary>What the page promises: nobody of settled habits is off by more than a few days, and the band holds about what it says.</summary>
    [Fact]
    public void Of_RidersOfSettledHabits_AreNearAndWithinTheirBand()
    {
        foreach (var habit in Habit.All.Where(h => h.Name.StartsWith("steady", StringComparison.Ordinal) || h.Name.StartsWith("to work", StringComparison.Ordinal)))
        {
            var errors = DueErrors.Of(habit, 14, kilometres: false);
            Assert.InRange(errors.Median, 0, 4);
            Assert.InRange(Math.Abs(errors.Bias), 0, 1);
            Assert.InRange(errors.Covered, 0.75, 0.97);
        }
    }

    /// <summary>The lines below the head of the table under a heading.</summary>
    private static (int Start, int End) Lines(string page, string heading)
    {
        var head = page.IndexOf("\n### " + heading, StringComparison.Ordinal);
        var start = page.IndexOf("--: |\n", head, StringComparison.Ordinal) + "--: |\n".Length;
        var end = page.IndexOf("\n\n", start, StringComparison.Ordinal);
        return (start, end < 0 ? page.TrimEnd().Length : end);
    }
}
