using ShedBot.Serving.Copies;

namespace ShedBot.Tests.Serving.Copies;

public sealed class DailyBackupTests : IDisposable
{
    private static readonly DateTimeOffset Noon = new(2026, 5, 1, 10, 0, 0, TimeSpan.Zero);
    private readonly TempFolder temp = new();
    private readonly DailyBackup backups;

    public DailyBackupTests() => backups = new DailyBackup(temp.Path, keepDays: 14);

    public void Dispose() => temp.Dispose();

    [Fact]
    public void Due_None_IsNamedAfterTheTime() => Assert.Equal(temp.File("club-20260501T100000Z.shed"), backups.Due(Noon));

    [Theory]
    [InlineData(23, false)]
    [InlineData(24, true)]
    [InlineData(-1, true)]
    public void Due_OnceADay_AlsoWhenTheClockWasSetBack(int hoursLater, bool due)
    {
        Make(Noon);
        Assert.Equal(due, backups.Due(Noon.AddHours(hoursLater)) is not null);
        Assert.Equal(Noon, backups.Newest());
    }

    [Fact]
    public void TooOld_AfterTheDaysToKeep_LeavesTheNewestAndWhatIsNotOurs()
    {
        string[] old = [Make(Noon.AddDays(-16)), Make(Noon.AddDays(-15))];
        Make(Noon.AddDays(-14));
        Make(Noon);
        File.WriteAllText(temp.File("club-before-2.shed"), "");
        Assert.Equal(old, backups.TooOld(Noon));
    }

    [Fact]
    public void TooOld_OnlyOldOnes_LeavesTheNewest()
    {
        var older = Make(Noon.AddDays(-40));
        Make(Noon.AddDays(-30));
        Assert.Equal(older, Assert.Single(backups.TooOld(Noon)));
    }

    private string Make(DateTimeOffset at)
    {
        var file = new DailyBackup(Directory.CreateDirectory(temp.File("empty")).FullName, 1).Due(at)!;
        file = temp.File(Path.GetFileName(file));
        File.WriteAllText(file, "");
        return file;
    }
}
