using ShedBot.Coaching;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Nudging;
using ShedBot.Rules;
using ShedBot.Storage;

namespace ShedBot.Tests.Practice;

/// <summary>Reminders at the practice terminal, under the shipped rules; it is Friday 1 May 2026, ten o'clock UTC.</summary>
public sealed class RemindersTests : IDisposable
{
    private readonly TempFolder temp = new();

    public void Dispose() => temp.Dispose();

    [Fact]
    public async Task Run_EntriesInTheLogbook_AskOnceWhetherToRemind()
    {
        var text = await SitAsync("rode 5 km", "rode 6 km", "bye");
        Assert.Single(Occurrences(text, "Shall I remind you?"));
        Assert.Empty(Occurrences(await SitAsync("rode 7 km", "bye"), "Shall I remind you?"));
    }

    [Fact]
    public async Task Run_NotAgreed_SkipsToTheDueDayAsBefore()
    {
        var text = await SitAsync("kit fitted 20 april", "about 4 days a week, 10 km", "no", "skip", "bye");
        Assert.Contains("No reminders, then", text, StringComparison.Ordinal);
        Assert.Contains("Expected now:", text, StringComparison.Ordinal);
        Assert.Empty(Occurrences(text, "ShedBot writes to you"));
    }

    [Fact]
    public async Task Run_Agreed_SkipsToTheReminderAtTheMembersOwnTime()
    {
        var text = await SitAsync("kit fitted 20 april", "i live in kathmandu", "remind me at 7 pm", "skip", "bye");
        Assert.Contains("ShedBot writes to you on Friday, 1 May 2026, 19:00:", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_TheProgramWasClosedWhenItFellDue_TellsItAtTheStartOnce()
    {
        await SitAsync("kit fitted 20 april", "remind me", "bye");
        var text = await SitAsync(["bye"], Sitting.Noon.AddHours(9));
        Assert.Single(Occurrences(text, "ShedBot writes to you on Friday, 1 May 2026, 19:00:"));
        Assert.Empty(Occurrences(await SitAsync(["bye"], Sitting.Noon.AddHours(10)), "ShedBot writes to you"));
    }

    /// <summary>It was decided, and the program died before a word of it was out.</summary>
    [Fact]
    public async Task Run_AReminderThatWasNeverSaid_IsSaidOnce()
    {
        await SitAsync("kit fitted 20 april", "remind me", "bye");
        var at = Sitting.Noon.AddHours(8);
        await using (var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = temp.File("r.shed"), Durable = false }, CancellationToken.None))
        {
            var rules = RulesInUse.Open(Repository.Knowledge, new CoachOptions(), TextWriter.Null)!;
            using var desk = new RiderDesk(store, store, new OneCoach(() => rules.Coach), (_, _) => ValueTask.FromResult("Etc/UTC"));
            Assert.Single((await desk.RoundAsync(at, CancellationToken.None)).Told);
        }

        Assert.Single(Occurrences(await SitAsync(["bye"], at.AddMinutes(5)), "ShedBot writes to you on Friday, 1 May 2026, 18:00:"));
        Assert.Empty(Occurrences(await SitAsync(["bye"], at.AddMinutes(9)), "ShedBot writes to you"));
    }

    [Fact]
    public async Task Run_AReminderWhileAQuestionIsOpen_TakesTheKeysAndGivesThemBack()
    {
        var text = await SitAsync("kit fitted 20 april", "yes", "clutch drags", "skip", "in a week", "1", "bye");
        var question = After(text, "> clutch drags").Split('\n', StringSplitOptions.RemoveEmptyEntries)[0];
        var later = After(text, "> in a week");
        Assert.Contains("Good, I'll come back to it on Fri 8 May", later, StringComparison.Ordinal);
        Assert.Contains(question, later, StringComparison.Ordinal);
        Assert.Contains("(1 question so far)", After(text, "> 1\n"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_OneOfADigestDone_LeavesTheOthersToBeAnswered()
    {
        var text = await SitAsync("kit fitted 20 april", "yes", "skip", "how do i", "1", "how do i?", "done", "bye");
        Assert.Contains("Which of them?", After(text, "> how do i\n"), StringComparison.Ordinal);
        Assert.Contains("In this order:", After(text, "> how do i?"), StringComparison.Ordinal);
        var done = After(text, "> done");
        Assert.Contains("Noted as done: the round of all nuts and bolts", done, StringComparison.Ordinal);
        Assert.Contains("Of that, still open", done, StringComparison.Ordinal);
        Assert.DoesNotContain("The round of all nuts and bolts", done, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("next week", "on Fri 8 May at 18:00")]
    [InlineData("On Saturday.", "on Sat 2 May at 10:00")]
    [InlineData("later", "on Fri 1 May at 20:00")]
    [InlineData("all done", "Noted as done")]
    [InlineData("run it in", "Time to read how to ride while the engine is new")]
    [InlineData("stop all", "No reminders, then")]
    public async Task Run_AnAnswerInWords_IsThatAnswer(string words, string says) =>
        Assert.Contains(says, After(await SitAsync("kit fitted 20 april", "yes", "skip", words, "bye"), "> " + words).ReplaceLineEndings(" "), StringComparison.Ordinal);

    /// <summary>A number that was meant for the coach must not be a consent.</summary>
    [Fact]
    public async Task Run_AnEntryWhileAQuestionIsOpen_DoesNotAskForConsent()
    {
        var text = await SitAsync("clutch drags", "rode 12 km", "1", "bye");
        Assert.Empty(Occurrences(text, "Shall I remind you?"));
        Assert.Contains("Reminders are off", await SitAsync("reminders", "bye"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_NotRidingTillADay_AnswersTheReminderForAllBikes()
    {
        var text = await SitAsync("kit fitted 20 april", "yes", "skip", "not riding till 15 may", "bike", "bye");
        Assert.Contains("No reminders till 15 May 2026", text, StringComparison.Ordinal);
        Assert.Contains("not riding from 1 May 2026 till 15 May 2026", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_TroubleShown_OpensACaseWithTheComplaint()
    {
        var text = await SitAsync("kit fitted 20 april", "yes", "skip", "2", "it shows trouble", "1", "cases", "bye");
        Assert.Contains("What does it show?", text, StringComparison.Ordinal);
        Assert.Contains("(If I got that wrong, just say so.)", text, StringComparison.Ordinal);
        Assert.DoesNotContain("None yet", After(text, "> cases"), StringComparison.Ordinal);
    }

    /// <summary>A member who is away: two digests, the question whether to go on, and then silence.</summary>
    [Fact]
    public async Task Run_SkipAMonth_ShowsWhatWouldHaveComeInOrder()
    {
        var text = await SitAsync("kit fitted 20 april", "yes", "about 4 days a week, 10 km", "skip 30 days", "reminders", "bye");
        var shown = Occurrences(text, "ShedBot writes to you on ");
        Assert.Equal(3, shown.Count);
        Assert.Contains("Shall I go on reminding you?", After(text, shown[2]), StringComparison.Ordinal);
        Assert.Contains("It is Sunday, 31 May 2026 now.", text, StringComparison.Ordinal);
        Assert.Contains("Reminders are resting", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_SettingsWhileADigestIsOpen_LeaveItsKeys()
    {
        var text = await SitAsync("kit fitted 20 april", "yes", "skip", "reminders", "1", "bye");
        Assert.DoesNotContain("No reminders, then", text, StringComparison.Ordinal);
        Assert.Contains("[1] Done", After(text, "> 1\n"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_UnitsOfTheMember_AreUsed()
    {
        var text = await SitAsync("my units miles", "rode 5 miles", "my units furlongs", "bye");
        Assert.Contains("Noted: 5 miles", text, StringComparison.Ordinal);
        Assert.Contains("Write km or miles.", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_WordsAfterAClosedTrouble_SaysThatANewOneIsOpened()
    {
        var text = await SitAsync("clutch drags", "forget it", "clutch slips", "bye");
        Assert.Single(Occurrences(text, "so I take this as a new one"));
        Assert.Contains("new one", After(text, "> clutch slips"), StringComparison.Ordinal);
    }

    private static List<string> Occurrences(string text, string line) => [.. text.Split('\n').Where(l => l.Contains(line, StringComparison.Ordinal))];

    private static string After(string text, string line) => text[(text.IndexOf(line, StringComparison.Ordinal) + line.Length)..];

    private Task<string> SitAsync(params string[] lines) => SitAsync(lines, Sitting.Noon);

    private Task<string> SitAsync(string[] lines, DateTimeOffset at) => Sitting.AtAsync(temp.File("r.shed"), Repository.Knowledge, lines, at: at);
}
