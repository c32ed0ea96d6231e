using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Turns;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Pictures;
using ShedBot.Discord.Wire;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.Drawing;

public sealed class WholeKnowledgeTests(ITestOutputHelper output)
{
    private static readonly DrawContext Context = new(WordsButton: true, "<@80351110224678912>", AllowedMentions.User(new Snowflake(80351110224678912)), "Between us two");

    /// <summary>A turn of the coach takes some tenths of a second, so a few talks are played each time, and as many as are wanted when this says so.</summary>
    private static int Talks => int.TryParse(Environment.GetEnvironmentVariable("SHEDBOT_TALKS"), out var talks) ? talks : 4;

    [Fact]
    public void Draw_EveryQuestionOfTheRules_StaysWithinTheLimitsAndLosesNothing() => Hold(Shed.EveryQuestion(), leastTitles: 100);

    [Fact]
    public void Draw_EveryHowTo_StaysWithinTheLimitsAndLosesNothing() => Hold(Shed.EveryHowTo(), leastTitles: 5);

    [Fact]
    public void Draw_EverythingSaidInRandomTalks_StaysWithinTheLimitsAndLosesNothing() =>
        Hold(Enumerable.Range(1, Talks).SelectMany(Shed.Talk), leastTitles: 10);

    private void Hold(IEnumerable<IReadOnlyList<Card>> turns, int leastTitles)
    {
        var (count, messages, most, titles) = (0, 0, 0, new HashSet<string>(StringComparer.Ordinal));
        foreach (var cards in turns.Where(c => c.Count > 0))
        {
            var drawn = CardDrawing.Draw(cards, new CaseId("k7f3q9"), 1000, CardPictures.None, Context);
            CardLaws.Hold(cards, drawn, Context, 1000);
            Assert.True(cards[^1].Options.Count(o => o.Role == OptionRole.Answer) <= 25, "One list has to hold the answers.");
            Assert.All(cards[^1].Options, o => Assert.NotNull(OptionId.Read(o.Id)));
            Assert.All(cards, c => Allowed.Check(CardDrawing.Plain(c)));
            (count, messages, most) = (count + 1, messages + drawn.Length, Math.Max(most, drawn.Length));
            titles.UnionWith(cards.Select(c => c.Title));
        }

        output.WriteLine($"{count} turns, {messages} messages, at most {most} for a turn, {titles.Count} different titles");
        // Without this the laws could hold over nothing.
        Assert.True(titles.Count >= leastTitles, $"Only {titles.Count} different cards were met.");
    }
}
