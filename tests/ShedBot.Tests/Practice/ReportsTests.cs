namespace ShedBot.Tests.Practice;

/// <summary>Reports and words that were not understood at the practice terminal, on invented rules for a bicycle bell.</summary>
public sealed class ReportsTests : IDisposable
{
    private const string Odd = "the whatsit is sulking and refuses to talk to me";

    private readonly TempFolder temp = new();

    public void Dispose() => temp.Dispose();

    [Fact]
    public async Task Words_TaughtByOneNumberAndPublished_TheNextRiderIsUnderstood()
    {
        var text = await SitAsync(Odd, "as Mira", Odd, "as Keeper", "rules words", "1", "1", "sound", "1", "rules try", "rules publish", "as Una", Odd, "as Keeper", "rules words", "bye");

        Assert.Contains("Said 2 times, by 2 members.", text, StringComparison.Ordinal);
        Assert.Contains("Edition 1 is out", text, StringComparison.Ordinal);
        Assert.Contains("If I got that wrong, just say so.", text.Split("> as Una")[1], StringComparison.Ordinal);
        Assert.Contains("None: all words so far", text.Split("> rules words")[2], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Reports_AreChosenByNumberOrName()
    {
        var text = await SitAsync("rules reports", "1", "rules report unanswered", "rules report rubbish", "bye");
        Assert.Contains("No closed case yet.", text, StringComparison.Ordinal);
        Assert.Contains("Every case so far had an answer.", text, StringComparison.Ordinal);
        Assert.Contains("Try: rules reports", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Chances_AreTold_AndWrittenAsAPicture()
    {
        var text = await SitAsync("bell makes no sound", "1", "2", "1", "1", "rules report fixes", "rules report chances", "rules report chances light", "bye");
        Assert.Contains("1 case, 1 mended", text, StringComparison.Ordinal);
        Assert.Contains("From 1 mended case", text, StringComparison.Ordinal);
        foreach (var look in new[] { "dark", "light" })
        {
            Assert.Contains($"Written to {temp.File($"chances-{look}.png")}", text, StringComparison.Ordinal);
            // The first eight bytes of every PNG (ISO/IEC 15948, 5.2).
            Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], (await File.ReadAllBytesAsync(temp.File($"chances-{look}.png")))[..8]);
        }
    }

    private Task<string> SitAsync(params string[] lines) => Sitting.AtAsync(temp.File("bell.shed"), temp.BellRules(), lines);
}
