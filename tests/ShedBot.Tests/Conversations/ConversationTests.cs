using ShedBot.Tests.Approving;
using ShedBot.Tests.Practice;

namespace ShedBot.Tests.Conversations;

/// <summary>
/// Talks every conversation of docs/conversations once more: the rider's lines, marked '&gt; ', go in, and the whole text must come out as it
/// stands there. With SHEDBOT_APPROVE=1 the files are written anew from the rider's lines, to be read before they are committed.
/// </summary>
public sealed class ConversationTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "docs", "conversations");

    public static TheoryData<string> Files => [.. Directory.EnumerateFiles(Folder, "*.md").Select(f => Path.GetFileName(f)!)
        .Where(f => f != "README.md").Order(StringComparer.Ordinal).DefaultIfEmpty("")];

    [Theory]
    [MemberData(nameof(Files))]
    public async Task Replay_EachConversation_ReadsAsApproved(string file)
    {
        if (file.Length == 0) return;
        var path = Path.Combine(Folder, file);
        var before = (await File.ReadAllTextAsync(path)).ReplaceLineEndings("\n");
        var page = ConversationPage.Read(before);
        Assert.NotEmpty(page.Conversations);
        var after = page.With([.. await Task.WhenAll(page.Conversations.Select(TalkAsync))]);
        if (Environment.GetEnvironmentVariable("SHEDBOT_APPROVE") == "1") await File.WriteAllTextAsync(path, after);
        else Assert.True(before == after, $"{file} no longer reads as approved.\n{Approved.FirstDifference(before, after)}");
    }

    private static async Task<string> TalkAsync(string conversation)
    {
        using var temp = new TempFolder();
        return await Sitting.AtAsync(temp.File("talk.shed"), Repository.Knowledge, ConversationPage.RiderLines(conversation));
    }
}
