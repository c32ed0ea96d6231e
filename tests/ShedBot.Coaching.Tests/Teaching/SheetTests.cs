using ShedBot.Coaching.Teaching;

namespace ShedBot.Coaching.Tests.Teaching;

public sealed class SheetTests
{
    [Fact]
    public async Task Write_ACauseThatIsNew_FitsTheShippedRulesAndReadsAloud()
    {
        using var school = new School();
        var written = await school.WriteAsync(School.Ada, "cause", Filled.Cause);
        var text = School.Text(written.Card);
        Assert.Contains("If a cable tie round the frame pinches the clutch cable, riders often (55 to 80 %) say: the clutch drags.", text);
        Assert.Contains("it is very often (80 to 95 %) mended when you cut the tight tie and put a looser one on.", text);
        Assert.DoesNotContain("Does not fit yet", text);
        Assert.DoesNotContain("To look at", text);
        Assert.Equal(ProposalState.Draft, written.Proposal!.State);
    }
}
