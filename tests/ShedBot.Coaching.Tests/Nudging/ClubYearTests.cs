using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Tests.Nudging.Simulated;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Loading;
using Xunit.Abstractions;

namespace ShedBot.Coaching.Tests.Nudging;

/// <summary>
/// A year of an invented club of forty, with the club's own tasks. Asserts the laws of docs/nudges.md; its table is the one in the page. With
/// SHEDBOT_APPROVE=1 the table is written anew, to be read before it is committed.
/// </summary>
public sealed class ClubYearTests(ITestOutputHelper output)
{
    private static readonly string Page = Path.Combine(Repository.Root, "docs", "nudges.md");

    /// <summary>What fell due was told at most once a day before; then other gaps.</summary>
    private static readonly Bundling[] Compared = [new(1, -1, 7), new(3, 3, 3), Bundling.Usual, new(4, 7, 3), new(5, 5, 3), new(7, 7, 3)];

    private static readonly KnowledgeBase Club = KnowledgeLoader.Load(KnowledgeFolder.Read(Path.Combine(Repository.Root, "knowledge"))).Knowledge!;

    [Fact]
    public void Year_OfFortyRiders_KeepsTheLawsAndIsTheOneInThePage()
    {
        var lives = Live(Bundling.Usual);
        foreach (var (kind, life) in lives) Laws(kind, life);

        var (year, told, usual) = (YearTables.Year(lives), YearTables.Told(lives), YearTables.Bundled(Bundling.Usual, lives));
        output.WriteLine($"{year}\n\n{told}\n\n{usual}");
        var page = File.ReadAllText(Page).ReplaceLineEndings("\n");
        if (Environment.GetEnvironmentVariable("SHEDBOT_APPROVE") == "1")
        {
            // The other ways of bundling are lived only for the page: each is another year.
            var ways = Compared.Select(b => b == Bundling.Usual ? usual : YearTables.Bundled(b, Live(b)));
            File.WriteAllText(Page, Put(Put(Put(page, "year", year), "told", told), "bundling", string.Join('\n', ways)));
            return;
        }

        Assert.Equal(Between(page, "year"), year);
        Assert.Equal(Between(page, "told"), told);
        Assert.Contains(usual, Between(page, "bundling").Split('\n'));
    }

    private static (ClubRider Kind, RiderLife Life)[] Live(Bundling bundling)
    {
        var kinds = ClubRider.All.SelectMany(k => Enumerable.Repeat(k, k.Count)).ToArray();
        Assert.Equal(40, kinds.Length);
        return [.. kinds.AsParallel().AsOrdered().Select((kind, i) => (kind, new RiderLife(kind, i, Club, bundling).Live()))];
    }

    private static void Laws(ClubRider kind, RiderLife life)
    {
        Assert.All(life.Messages, m => Assert.True(m.Agreed));
        Assert.All(life.Messages, m => Assert.False(m.Quiet.Cover(m.Local.TimeOfDay), $"{kind.Kind}: {m.Local} is quiet."));
        Assert.All(life.Messages.Where(m => !m.Evening).GroupBy(m => m.Local.Date), day => Assert.Single(day));
        Assert.All(life.Messages.Where(m => m.Evening).GroupBy(m => m.Local.Date), day => Assert.Single(day));
        Assert.InRange(life.Messages.Count(m => m.Mention) + life.Notes, 0, kind.ClosedFrom is null ? 0 : 2);
        // What does not press waits for the gap, or till a week has room, and a day for the hour.
        Assert.InRange(life.LongestWait, 0, 6);
        Weeks(kind, life);
        foreach (var key in life.Messages.SelectMany(m => m.Keys.Select(k => (Key: k, m.At))).GroupBy(k => k.Key, StringComparer.Ordinal))
        {
            // Told again only when, since the telling before, it was asked for and the time they named has come.
            Assert.All(key.Zip(key.Skip(1)), pair => Assert.Contains(life.Asked, a => a.Key == key.Key && a.Asked >= pair.First.At && a.Until <= pair.Second.At));
        }

        foreach (var (first, second, third) in life.Messages.Zip(life.Messages.Skip(1), life.Messages.Skip(2)))
            Assert.False(first.Asks && second.Asks && third.Asks, "Asked again and again whether to go on.");
        if (kind.Does == 0) Assert.Equal([false, false, true], life.Messages.Select(m => m.Asks));
        if (!kind.Agrees) Assert.Empty(life.Messages);
    }

    /// <summary>A fourth digest in seven days, of our own accord, is one with something that presses, while a kit is new.</summary>
    private static void Weeks(ClubRider kind, RiderLife life)
    {
        foreach (var week in YearTables.Weeks(life.Unasked).Where(w => w.Length > Bundling.Usual.MostAWeek))
        {
            Assert.True(week[^1].Local.Date < RiderLife.First.PlusDays(14), $"{kind.Kind}: {week.Length} digests in the week before {week[^1].Local}.");
            Assert.Contains(week[^1].Keys, k => life.Tellings[k].Pressing);
            Assert.Equal(4, week.Length);
        }

        // What presses is told on its day, or on the next when the ride was logged at night or the message of the day was out.
        Assert.All(YearTables.Late([life], pressing: true), days => Assert.InRange(days, 0, 1));
    }

    private static string Between(string page, string name) => page[Range(page, name)];

    private static string Put(string page, string name, string table) => page[..Range(page, name).Start] + table + page[Range(page, name).End..];

    private static Range Range(string page, string name)
    {
        var start = page.IndexOf($"<!-- {name} -->\n", StringComparison.Ordinal) + $"<!-- {name} -->\n".Length;
        return start..page.IndexOf($"\n<!-- end of {name} -->", start, StringComparison.Ordinal);
    }
}
