using System.Text.RegularExpressions;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Storage;
using ShedBot.Tests.Approving;
using ShedBot.Tests.Practice;

namespace ShedBot.Tests.Conversations;

/// <summary>
/// Talks every conversation of docs/conversations once more: the rider's lines, marked '&gt; ', go in, and the whole text must come out as it
/// stands there. With SHEDBOT_APPROVE=1 the files are written anew from the rider's lines, to be read before they are committed.
/// </summary>
public sealed partial class ConversationTests
{
    /// <summary>The page that begins with the closed cases of an invented club.</summary>
    private const string Learning = "learning.md";

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
        var after = page.With([.. await Task.WhenAll(page.Conversations.Select(c => TalkAsync(c, file)))]);
        if (Environment.GetEnvironmentVariable("SHEDBOT_APPROVE") == "1") await File.WriteAllTextAsync(path, after);
        else Assert.True(before == after, $"{file} no longer reads as approved.\n{Approved.FirstDifference(before, after)}");
    }

    private static async Task<string> TalkAsync(string conversation, string file)
    {
        using var temp = new TempFolder();
        var data = temp.File("talk.shed");
        if (file == Learning) await FillAsync(data);
        return Written().Replace(await Sitting.AtAsync(data, Repository.Knowledge, ConversationPage.RiderLines(conversation)), "Written to (beside the data file)/$1.");
    }

    private static async Task FillAsync(string data)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = data, Durable = false }, CancellationToken.None);
        foreach (var closed in HeavyLevers.Closed(name => new MemberId(name), Sitting.Noon)) await store.SaveAsync(closed, CancellationToken.None);
        // ShedBot would put up a proposal of its own before anybody has looked.
        var onlyCounted = TeachingSettings.New(ClubId.Practice) with { Learning = LearningMode.Off, Version = 1 };
        var line = new AuditEntry(ClubId.Practice, 0, new MemberId("marlo"), "Marlo", AuditAct.ChoseSettings, "", "chose that learning is only counted", Sitting.Noon.AddDays(-60));
        await store.SaveTeachingAsync(new TeachingSaved(ClubId.Practice, null, null, onlyCounted, null, [line], []), CancellationToken.None);
    }

    /// <summary>Where files go is another folder each time.</summary>
    [GeneratedRegex(@"Written to\s+\S+/([^/\s]+)\.(?=\s)")]
    private static partial Regex Written();
}
