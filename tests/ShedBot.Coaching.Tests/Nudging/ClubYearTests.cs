using System.Globalization;
using NodaTime;
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
    private const string Start = "<!-- year -->\n", End = "\n<!-- end of year -->";

    private static readonly string Page = Path.Combine(Repository.Root, "docs", "nudges.md");

    private static readonly KnowledgeBase Club = KnowledgeLoader.Load(KnowledgeFolder.Read(Path.Combine(Repository.Root, "knowledge"))).Knowledge!;

    [Fact]
    public void Year_OfFortyRiders_KeepsTheLawsAndIsTheOneInThePage()
    {
        var kinds = ClubRider.All.SelectMany(k => Enumerable.Repeat(k, k.Count)).ToArray();
        Assert.Equal(40, kinds.Length);
        var lives = kinds.AsParallel().AsOrdered().Select((kind, i) => (Kind: kind, Life: new RiderLife(kind, i, Club).Live())).ToArray();
        foreach (var (kind, life) in lives) Laws(kind, life);

        var table = Table(lives);
        output.WriteLine(table);
        var page = File.ReadAllText(Page).ReplaceLineEndings("\n");
        var (start, end) = (page.IndexOf(Start, StringComparison.Ordinal) + Start.Length, page.IndexOf(End, StringComparison.Ordinal));
        if (Environment.GetEnvironmentVariable("SHEDBOT_APPROVE") == "1") File.WriteAllText(Page, page[..start] + table + page[end..]);
        else Assert.Equal(page[start..end], table);
    }

    private static void Laws(ClubRider kind, RiderLife life)
    {
        Assert.All(life.Messages, m => Assert.True(m.Agreed));
        Assert.All(life.Messages, m => Assert.False(m.Quiet.Cover(m.Local.TimeOfDay), $"{kind.Kind}: {m.Local} is quiet."));
        Assert.All(life.Messages.Where(m => !m.Evening).GroupBy(m => m.Local.Date), day => Assert.Single(day));
        Assert.All(life.Messages.Where(m => m.Evening).GroupBy(m => m.Local.Date), day => Assert.Single(day));
        Assert.InRange(life.Messages.Count(m => m.Mention) + life.Notes, 0, kind.ClosedFrom is null ? 0 : 2);
        Assert.InRange(life.LongestWait, 0, 2);
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

    private static string Table((ClubRider Kind, RiderLife Life)[] lives) => string.Join('\n', lives.GroupBy(l => l.Kind).Select(g => Line(g.Key.Kind, [.. g.Select(l => l.Life)]))
        .Append(Line("all", [.. lives.Select(l => l.Life)])));

    private static string Line(string kind, RiderLife[] lives)
    {
        var messages = lives.SelectMany(l => l.Messages).ToArray();
        var told = lives.Sum(l => l.Messages.SelectMany(m => m.Keys).Distinct().Count());
        var again = lives.Sum(l => l.Messages.Sum(m => m.Keys.Length)) - told;
        var never = lives.Sum(l => l.EverDue.Except(l.Messages.SelectMany(m => m.Keys)).Count());
        var reasons = lives.SelectMany(l => l.Withheld.Keys).Distinct().Order().Select(r => $"{Words(r)} {lives.Sum(l => l.Withheld.GetValueOrDefault(r))}");
        var errors = lives.SelectMany(l => l.Errors).Select(Math.Abs).Order().ToArray();
        var week = lives.Max(l => l.Messages.GroupBy(m => Period.DaysBetween(RiderLife.First, m.Local.Date) / 7).Select(w => w.Count()).DefaultIfEmpty(0).Max());
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {kind} | {lives.Length} | {lives.Sum(l => l.EverDue.Union(l.Messages.SelectMany(m => m.Keys)).Count())} | {told} | {again} | {never} | {messages.Count(m => !m.Keys.IsEmpty)} | {messages.Count(m => m.Asks)} | {messages.Count(m => m.Mention) + lives.Sum(l => l.Notes)} | {week} | {string.Join(", ", reasons)} | {At(errors, 0.5)} | {At(errors, 0.9)} |");
    }

    private static string Words(WithheldFor why) => why switch
    {
        WithheldFor.NoConsent => "not agreed",
        WithheldFor.Refused => "refused",
        WithheldFor.Silence => "silence",
        WithheldFor.Stopped => "stopped",
        WithheldFor.Resting => "resting",
        WithheldFor.Later => "put off",
        WithheldFor.SpokenToday => "spoken that day",
        WithheldFor.Quiet => "quiet by then",
        WithheldFor.AskingFirst => "asking first",
        _ => why.ToString(),
    };

    private static string At(int[] sorted, double share) => sorted.Length == 0 ? "-" : sorted[(int)((sorted.Length - 1) * share)].ToString(CultureInfo.InvariantCulture);
}
