using System.Text;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>A club's rules out as a file and in again while others go on, and cases that are open while the rules change under them.</summary>
public sealed class TeachingFilesInAClub(ITestOutputHelper output)
{
    private const string Retired = """
        about: {covers: what our club knows better, author: Mod A, source: common practice, date: 2026-05-01}
        retires:
        """;

    [Fact]
    public async Task File_OutAndInAgainWithChangesBetween_KeepsBoth()
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new QuickTrials());
        await house.PublishedAsync(house.Owner, Moderating.HowTo("polish"));
        var file = Assert.Single((await house.AskAsync(house.Owner, "rules file-out")).Files);
        var text = Encoding.UTF8.GetString(file.Bytes.Span);
        Assert.Contains("edition: 1", text, StringComparison.Ordinal);
        // Unchanged it is no proposal.
        var same = await house.AskAsync(house.Owner, "rules file-in", ("file", house.Platform.File(file.FileName, file.Bytes)));
        Assert.Contains("says the same", same.Words, StringComparison.Ordinal);

        var nell = await house.SecondModeratorAsync();
        await house.PublishedAsync(nell, Moderating.HowTo("wrap", edition: 0));
        await house.PublishedAsync(house.Owner, text.TrimEnd() + "\n" + Moderating.Item("drain") + "\n");
        var layer = (await house.Store.FindEditionAsync(Moderating.ClubOf(house.Guild), 3, default))!.Layer;
        Assert.All(new[] { "id: polish", "id: wrap", "id: drain" }, id => Assert.Contains(id, layer, StringComparison.Ordinal));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Case_OpenWhileItsQuestionIsTakenOutOfUse_GoesOnAndSaysSo()
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new QuickTrials());
        await house.AskAsync(house.Rider, "trouble", ("words", "the clutch arm sits half way in at rest"));
        var thread = await house.ThreadAsync();
        await house.AnswerAsync(house.Rider, thread, "No, not lately");
        await house.AnswerAsync(house.Rider, thread, "Yes, all of it");
        var (asked, before) = (house.Panel(thread)!, house.Text(thread));
        var repair = ClubHouse.Knowledge.Repairs.Values.Single(r => before.Contains($"The repair: {r.Does}.", StringComparison.Ordinal));
        await house.PublishedAsync(house.Owner, $"{Retired}\n  - {{of: repair, id: {repair.Id}, because: We do it another way.}}\n");

        await house.Platform.PressAsync(house.Rider, asked, asked.Control("Done, now let me prove it").CustomId!);
        await ClubHouse.UntilAsync(() => house.Text(thread).Contains("That question has gone", StringComparison.Ordinal), "what became of the question");
        Assert.Contains("The club's rules have changed since we last spoke", house.Text(thread), StringComparison.Ordinal);
        Assert.DoesNotContain("answered already", house.Text(thread), StringComparison.Ordinal);
        await house.AnswerAsync(house.Rider, thread, "Go on");
        Assert.DoesNotContain("Go on", ClubHouse.Labels(house.Panel(thread)!));
        output.WriteLine(house.Text(thread));
        Assert.DoesNotContain("Something went wrong", house.Text(thread), StringComparison.Ordinal);
        house.AssertNoViolations();
    }
}
