using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Tests.Samples;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>What a new edition keeps of the one before: the club's text and the learnt numbers, each by itself.</summary>
public sealed class EditionGateTests
{
    private const string Learnt = "learnt 1\nodds bearing-dry 2\n";

    [Fact]
    public async Task Publish_RulesOnly_KeepsWhatWasLearnt()
    {
        using var school = await WithLearntAsync();
        Assert.Equal((2, Learnt), await PublishAsync(school));
        Assert.Contains("edition: 2", (await EditionAsync(school, 2)).Layer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Publish_WhereNothingWasLearnt_KeepsNothing()
    {
        using var school = PumpSchool.New();
        Assert.Equal((1, ""), await PublishAsync(school));
    }

    [Fact]
    public async Task TakeBack_ToAnEdition_BringsItsTextAndItsNumbers()
    {
        using var school = await WithLearntAsync();
        await PublishAsync(school);
        Assert.Equal(3, (await school.DoAsync(School.Ada, new TakeBack(0, 2))).Edition);
        Assert.Equal(("", ""), ((await EditionAsync(school, 3)).Layer, (await EditionAsync(school, 3)).Learnt));
        Assert.Equal(4, (await school.DoAsync(School.Ada, new TakeBack(1, 3))).Edition);
        Assert.Equal(("", Learnt), ((await EditionAsync(school, 4)).Layer, (await EditionAsync(school, 4)).Learnt));
        Assert.Equal(5, (await school.DoAsync(School.Ada, new TakeBack(2, 4))).Edition);
        var last = await EditionAsync(school, 5);
        Assert.Equal(Learnt, last.Learnt);
        Assert.Contains("hums", last.Layer, StringComparison.Ordinal);
        Assert.Equal((await EditionAsync(school, 2)).Layer.Replace("edition: 2", "edition: 5", StringComparison.Ordinal), last.Layer);
        Assert.Equal(Pump.Knowledge.Version, last.Base);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(2)]
    public async Task TakeBack_ToWhatIsNone_IsRefused(int edition)
    {
        using var school = await WithLearntAsync();
        Assert.Equal("gone", (await school.DoAsync(School.Ada, new TakeBack(edition, 1))).Refused?.Code);
        Assert.Equal("gone", (await school.DoAsync(School.Ada, new AskTakeBack(edition))).Refused?.Code);
        Assert.Equal(1, await school.Shelf.NewestEditionAsync(School.Club, default));
    }

    [Fact]
    public async Task TakeBack_ToWhatCounts_IsRefused()
    {
        using var school = await WithLearntAsync();
        Assert.Equal("same", (await school.DoAsync(School.Ada, new TakeBack(1, 1))).Refused?.Code);
        Assert.Equal(1, await school.Shelf.NewestEditionAsync(School.Club, default));
    }

    private static async Task<School> WithLearntAsync()
    {
        var school = PumpSchool.New();
        var edition = new RulesEdition(School.Club, 1, "", Learnt, "learnt", null, null, "", Pump.Knowledge.Version, School.Noon);
        await school.Shelf.SaveTeachingAsync(
            new TeachingSaved(School.Club, null, null, null, edition, [new AuditEntry(School.Club, 0, null, "", AuditAct.Published, "1", "learnt", School.Noon)], []), default);
        return school;
    }

    private static async Task<(int Edition, string Learnt)> PublishAsync(School school)
    {
        var tried = await school.TriedAsync(School.Ada);
        var done = await school.DoAsync(School.Ada, new Publish(tried.Id, tried.Version));
        Assert.Null(done.Refused);
        return (done.Edition!.Value, (await EditionAsync(school, done.Edition.Value)).Learnt);
    }

    private static async Task<RulesEdition> EditionAsync(School school, int number) => (await school.Shelf.FindEditionAsync(School.Club, number, default))!;
}
