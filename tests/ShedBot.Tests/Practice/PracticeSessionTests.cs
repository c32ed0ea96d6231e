using Microsoft.Extensions.Logging.Abstractions;
using ShedBot.Cards;
using ShedBot.Coaching;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Turns;
using ShedBot.Practice;
using ShedBot.Rules;
using ShedBot.Storage;

namespace ShedBot.Tests.Practice;

public sealed class PracticeSessionTests : IDisposable
{
    private readonly TempFolder temp = new();

    public void Dispose() => temp.Dispose();

    [Fact]
    public async Task Run_AWholeConversation_EndsMended()
    {
        var text = await SitAsync("bell makes no sound", "1", "2", "belief", "1", "1", "cases", "bike", "bye");
        Assert.Contains("   2. One drop of oil.", text, StringComparison.Ordinal);
        Assert.Matches(@"  #+\.+  \d\d %  [a-z ]+: the hammer is rusted to its pin", text);
        Assert.Contains("  - 2026-05-01, mended: \"bell makes no sound\"", text, StringComparison.Ordinal);
        Assert.Contains("2026-05-01: clean and oil the pin of the hammer", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_TheSameLinesTwice_GivesTheSameWords()
    {
        string[] lines = ["bell makes no sound", "1", "n", "why", "bye"];
        using var other = new TempFolder();
        Assert.Equal(await SitAsync(lines), await Sitting.AtAsync(other.File("bell.shed"), other.BellRules(), lines));
    }

    [Fact]
    public async Task Run_SatDownAgain_GoesOnAtTheOpenQuestion()
    {
        var before = await SitAsync("bell makes no sound");
        var question = Question(before);
        var after = await SitAsync("help", "bye");
        Assert.Contains("We were here:", after, StringComparison.Ordinal);
        Assert.Equal(question, Question(after));
    }

    /// <summary>The turn is kept, and the program dies before a word of the reply is out.</summary>
    [Fact]
    public async Task Run_AfterAReplyThatWasNeverSaid_SaysItOnce()
    {
        var member = new MemberName("Rider");
        var rules = RulesInUse.Open(temp.BellRules(), new CoachOptions(), TextWriter.Null)!;
        await using (var store = await OpenAsync())
        {
            using var desk = new CaseDesk(store, store, new OneCoach(() => rules.Coach), new FrozenClock(Sitting.Noon), () => "lost-001");
            await desk.HandleAsync(member.Id, member.Place, new MemberSaid("a", "bell sounds flat"), CancellationToken.None);
            await desk.HandleAsync(member.Id, member.Place, new MemberSaid("b", "why do you ask"), CancellationToken.None);
            Assert.NotEmpty(await store.UnsaidAsync(member.Place, 100, CancellationToken.None));
        }

        var text = await SitAsync("bye");
        Assert.Contains("We were here:", text, StringComparison.Ordinal);
        Assert.Contains("Why I ask", text, StringComparison.Ordinal);
        Assert.Single(text.Split("Why I ask")[1].Split('\n'), l => l.StartsWith("  [1] ", StringComparison.Ordinal));
        await using var after = await OpenAsync();
        Assert.Empty(await after.UnsaidAsync(member.Place, 100, CancellationToken.None));
        Assert.DoesNotContain("Why I ask", await SitElsewhereAsync(after), StringComparison.Ordinal);

        Task<LiteShedStore> OpenAsync() => LiteShedStore.OpenAsync(new StoreOptions { Path = temp.File("bell.shed"), Durable = false }, CancellationToken.None);

        async Task<string> SitElsewhereAsync(LiteShedStore store)
        {
            var output = new StringWriter { NewLine = "\n" };
            using var session = new PracticeSession(
                store, store, store, rules, new PlainScreen(output, 88, echo: true), new StringReader("bye"), new FrozenClock(Sitting.Noon), NullLogger.Instance, member, temp.Path, (_, _) => null,
                Sitting.Trials, (_, _) => null);
            await session.RunAsync(CancellationToken.None);
            return output.ToString();
        }
    }

    [Fact]
    public async Task Run_TwoMembers_KeepToTheirOwnCases()
    {
        var text = await SitAsync("bell makes no sound", "as Mira", "bell sounds flat", "as Rider", "cases", "as mira", "cases", "bye");
        Assert.Contains("Hello Mira", text, StringComparison.Ordinal);
        Assert.Contains("Hello Rider. We were here:", text, StringComparison.Ordinal);
        var lists = text.Split("Your cases")[1..];
        Assert.Contains("bell makes no sound", lists[0], StringComparison.Ordinal);
        Assert.DoesNotContain("bell sounds flat", lists[0].Split("> as mira")[0], StringComparison.Ordinal);
        Assert.Contains("bell sounds flat", lists[1], StringComparison.Ordinal);
        Assert.DoesNotContain("bell makes no sound", lists[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\0\u0001\u001b[2J")]
    [InlineData("😀😀😀")]
    [InlineData("שלום, הפעמון")]
    [InlineData("\u202e\u202e")]
    [InlineData("0")]
    [InlineData("-1")]
    [InlineData("99999999999999999999")]
    [InlineData("[red]x[/] {0} %s \\")]
    public async Task Run_AnyWords_GetAKindAnswer(string words)
    {
        var first = await SitAsync(words);
        var later = await SitAsync("bell makes no sound", words, "bye");
        foreach (var text in new[] { first, later })
        {
            Assert.DoesNotContain("went wrong", text, StringComparison.Ordinal);
            Assert.DoesNotContain(text, c => char.IsControl(c) && c != '\n');
        }

        var answer = first.Split("> ")[^1];
        Assert.True(answer.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length > 2, first);
    }

    [Fact]
    public async Task Run_AHugeLine_GetsAKindAnswer()
    {
        var text = await SitAsync(new string('x', 3_000_000), "bye");
        Assert.Contains("That is a lot at once", text, StringComparison.Ordinal);
        Assert.True(text.Length < 5_000);
    }

    private Task<string> SitAsync(params string[] lines) => Sitting.AtAsync(temp.File("bell.shed"), temp.BellRules(), lines);

    /// <summary>The last card that asks something, with its answers.</summary>
    private static string Question(string text)
    {
        var parts = text.Split("\n\n").ToList();
        var answers = parts.FindLastIndex(p => p.StartsWith("  [1]", StringComparison.Ordinal));
        return parts[answers];
    }
}
