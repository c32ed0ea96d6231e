namespace ShedBot.Knowledge.Tests.Layers;

public class LayerLintTests
{
    public static TheoryData<int, string> Numbers
    {
        get
        {
            var data = new TheoryData<int, string>();
            for (var i = 0; i < LayerCases.All.Length; i++) data.Add(i, LayerCases.All[i].Code);
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Load_RuleBroken_FiresOnTheClubsLine(int number, string code)
    {
        var (load, problems) = LayerCases.All[number].Run(LayerCases.All[number].Bad);

        var hits = problems.Where(p => p.Code == code).ToList();
        Assert.True(hits.Count > 0, $"{code} is silent; told were: {string.Join('\n', problems)}");
        var lines = (LayerCase.About + LayerCases.All[number].Bad).ReplaceLineEndings("\n").Split('\n');
        Assert.All(hits, p => Assert.Equal(LampClub.File, p.File));
        Assert.True(hits.Exists(p => lines[p.Line - 1].Contains(LayerCases.All[number].At, StringComparison.Ordinal)), string.Join('\n', hits));
        Assert.All(hits, p => Assert.True(p.What.EndsWith('.') && !p.ToString().Contains('\n', StringComparison.Ordinal), p.ToString()));
        Assert.Equal(problems.Exists(p => p.Severity == Problems.Severity.Error), load?.Knowledge is null);
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Load_RuleJustKept_IsSilent(int number, string code)
    {
        var (load, problems) = LayerCases.All[number].Run(LayerCases.All[number].Good);

        Assert.DoesNotContain(problems, p => p.Code == code);
        Assert.NotNull(load);
    }
}
