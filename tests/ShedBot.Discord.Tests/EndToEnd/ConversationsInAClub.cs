using ShedBot.Coaching.Cases;
using ShedBot.Discord.Pictures;
using ShedBot.DiscordStandIn.World;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>
/// The approved conversations of docs/conversations, had in a club: every question offers the same answers as in the practice terminal, and the
/// end is the same. What a good conversation is was settled there, by rules marked with their sources.
/// </summary>
public sealed class ConversationsInAClub(ITestOutputHelper output)
{
    public static TheoryData<string> Pages =>
        [.. Directory.EnumerateFiles(ConversationScript.Folder(), "*.md").Select(f => Path.GetFileName(f)!).Where(f => char.IsDigit(f[0])).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Page_WithButtonsAndWords_GoesAsInTheTerminal(string page)
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var script = ConversationScript.Read(page);
        var thread = await PlayAsync(house, house.Rider, script, restarts: false);
        if (script.IsMended) await AssertMendedAsync(house, thread);
        else Assert.DoesNotContain(ConversationScript.Mended, house.Text(thread), StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    /// <summary>Source of the first eight bytes: the PNG specification (W3C), section 5.2.</summary>
    [Fact]
    public async Task Page_ThatShowsADrawing_SendsAPictureWithWordsForThoseWhoDoNotSeeIt()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await PlayAsync(house, house.Rider, ConversationScript.Read("01-drag-arm-off-neutral.md"), restarts: false);
        var pictures = house.Platform.Messages(thread).SelectMany(m => m.Files).ToList();
        if (FixedWidthFace.Find(FixedWidthFace.UsualFolders) is null)
        {
            output.WriteLine("No fixed-width typeface on this machine: drawings go as text.");
            Assert.Empty(pictures);
            return;
        }

        Assert.NotEmpty(pictures);
        Assert.All(pictures, p => Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], p.Bytes[..8].ToArray()));
        Assert.All(pictures, p => Assert.False(string.IsNullOrWhiteSpace(p.Description)));
    }

    [Theory]
    [InlineData("01-drag-arm-off-neutral.md")]
    [InlineData("09-two-faults-at-once.md")]
    public async Task Page_RestartedAfterEachStep_GoesAsInTheTerminal(string page)
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var thread = await PlayAsync(house, house.Rider, ConversationScript.Read(page), restarts: true);
        await AssertMendedAsync(house, thread);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Pages_TwoMembersAtOnce_DoNotMix()
    {
        await using var house = await ClubHouse.OpenAsync(output);
        var first = PlayAsync(house, house.Rider, ConversationScript.Read("02-drag-loose-cover-screws.md"), restarts: false);
        var second = PlayAsync(house, house.Mate, ConversationScript.Read("04-slip-oil.md"), restarts: false);
        foreach (var thread in await Task.WhenAll(first, second)) await AssertMendedAsync(house, thread);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Page_InAForum_GoesAsInTheTerminal()
    {
        await using var house = await ClubHouse.OpenAsync(output, forum: true);
        var thread = await PlayAsync(house, house.Rider, ConversationScript.Read("02-drag-loose-cover-screws.md"), restarts: false);
        await AssertMendedAsync(house, thread);
        house.AssertNoViolations();
    }

    private static async Task<Channel> PlayAsync(ClubHouse house, Person rider, ConversationScript script, bool restarts)
    {
        var before = house.Platform.Threads(house.Help).Select(t => t.Id).ToHashSet();
        var deed = await house.Platform.CommandAsync(rider, house.Lobby, "trouble", new Dictionary<string, object> { ["words"] = script.Steps[0].Typed });
        var told = await deed.Settled;
        Assert.False(told.Failed);
        var thread = house.Platform.Threads(house.Help).Single(t => !before.Contains(t.Id) && told.Message!.Words.Contains($"<#{t.Id}>", StringComparison.Ordinal));
        AssertOffers(house, thread, script.Steps[0]);
        foreach (var step in script.Steps.Skip(1))
        {
            if (restarts) await house.RestartAsync();
            if (step.Label is not null) await house.AnswerAsync(rider, thread, step.Label);
            else await house.SayAsync(rider, thread, step.Typed);
            AssertOffers(house, thread, step);
        }

        return thread;
    }

    private static void AssertOffers(ClubHouse house, Channel thread, ConversationStep step)
    {
        var panel = house.Panel(thread);
        if (step.After.IsEmpty) return;
        Assert.True(panel is not null, $"After '{step.Typed}' no question is open; the thread reads:\n{house.Text(thread)}");
        var labels = ClubHouse.Labels(panel).ToList();
        Assert.All(step.After.Values, wanted => Assert.True(
            labels.Any(l => ClubHouse.Same(l, wanted)), $"After '{step.Typed}': '{wanted}' is not among: {string.Join(" | ", labels)}"));
    }

    private static async Task AssertMendedAsync(ClubHouse house, Channel thread)
    {
        Assert.Contains(ConversationScript.Mended, house.Text(thread), StringComparison.Ordinal);
        var outcomes = await house.Store.OutcomesAsync(100, default);
        Assert.Contains(outcomes, o => o.Phase == CasePhase.Solved);
        await ClubHouse.UntilAsync(() => thread.Thread!.Archived, "the thread to be put away");
    }
}
