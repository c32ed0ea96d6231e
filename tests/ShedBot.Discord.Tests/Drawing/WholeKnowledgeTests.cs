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

    [Fact]
    public void Draw_EverythingSaidInRandomTalks_StaysWithinTheLimitsAndLosesNoOption()
    {
        var (turns, messages, titles) = (0, 0, new HashSet<string>(StringComparer.Ordinal));
        foreach (var cards in Enumerable.Range(1, 6).SelectMany(Shed.Talk).Where(c => c.Count > 0))
        {
            var drawn = CardDrawing.Draw(cards, new CaseId("k7f3q9"), 1000, CardPictures.None, Context);
            Assert.All(drawn, Allowed.Check);
            Assert.Equal(drawn.Select((_, i) => (int?)(1000 + i)), drawn.Select(d => Seen.All(d).First(c => c.Type == 17).Id));
            Assert.All(drawn.SkipLast(1), d => Assert.Empty(Seen.OptionIds(d)));
            Assert.Equal(
                cards[^1].Options.OrderBy(o => o.Role).Select(o => o.Id), Seen.OptionIds(drawn[^1]));
            Assert.All(Seen.OptionIds(drawn[^1]), id => Assert.NotNull(OptionId.Read(id)));
            Assert.True(cards[^1].Options.Count(o => o.Role == OptionRole.Answer) <= 25, "One list has to hold the answers.");
            Assert.All(CardDrawing.Spent(cards, "Yes", 1000), Allowed.Check);
            Assert.All(cards, c => Allowed.Check(CardDrawing.Plain(c)));
            (turns, messages) = (turns + 1, messages + drawn.Length);
            titles.UnionWith(cards.Select(c => c.Title));
        }

        output.WriteLine($"{turns} turns, {messages} messages, {titles.Count} different titles");
        // Without this the law above could hold over nothing.
        Assert.True(titles.Count > 10, $"Only {titles.Count} different cards were met.");
    }
}
