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

    [Theory]
    [MemberData(nameof(Filled.Others), MemberType = typeof(Filled))]
    public async Task Write_EachOfTheOtherSheets_FitsTheShippedRules(string sheet, string[] answers)
    {
        using var school = new School();
        var given = answers.Select(a => a.Split('=', 2)).ToDictionary(p => p[0], p => p[1] == "?" ? School.Shipped.Knowledge!.HowTos.Keys.Take(1).ToArray() : p[1].Split('\n'), StringComparer.Ordinal);
        var written = await school.WriteAsync(School.Ada, sheet, given);
        var text = School.Text(written.Card);
        Assert.Contains("[Try it out]", text);
        Assert.DoesNotContain("Does not fit yet", text);
    }

    [Fact]
    public async Task Answer_InAnyOrder_GivesTheSameChanges()
    {
        // Sheets are functions of their answers: four orders drawn with fixed seeds.
        using var school = new School();
        var expected = (await school.WriteAsync(School.Ada, "cause", Filled.Cause)).Proposal!.Changes;
        for (var seed = 1; seed <= 4; seed++)
        {
            var id = (await school.DoAsync(School.Ada, new BeginSheet("cause"))).Proposal!.Id;
            var left = Filled.Cause.ToList();
            var random = new Random(seed);
            while (left.Count > 0)
            {
                foreach (var (question, values) in left.OrderBy(_ => random.Next()).ToList())
                    await school.DoAsync(School.Ada, new AnswerSheet(id, question, [.. values]));
                var kept = (await school.Shelf.FindProposalAsync(School.Club, id, default))!.Answers;
                left.RemoveAll(a => kept.ContainsKey(a.Key));
            }

            Assert.Equal(expected, (await school.Shelf.FindProposalAsync(School.Club, id, default))!.Changes);
        }
    }

    [Theory]
    [InlineData("It says \"no\": {x} # - [y] 'z' \\ & * ! | > % @ `")]
    [InlineData("Das Öl läuft, 油が漏れる, النفط 🔧")]
    [InlineData("yes")]
    [InlineData("--- ...")]
    public async Task Write_OddText_SurvivesTheWholeWay(string text)
    {
        using var school = new School();
        var answers = new Dictionary<string, string[]>(Filled.Cause, StringComparer.Ordinal) { ["cause-because"] = [text] };
        await school.PublishAsync(School.Ada, "cause", answers);
        var layer = (await school.Shelf.FindEditionAsync(School.Club, 1, default))!.ReadLayer();
        var rules = ShedBot.Knowledge.Layers.LayeredRules.Load(School.Shipped, layer).Knowledge!;
        Assert.Contains(rules.Faults.Values, f => f.Because == text);
    }
}
