namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>A page of docs/conversations/in-a-club: one approved conversation. With SHEDBOT_APPROVE=1 it is written anew, to be read before it is committed.</summary>
internal static class ToldPage
{
    /// <summary>What ends the conversation stands at the beginning of a line; what the chat shows in a fence of its own does not.</summary>
    private const string Opens = "```text\n", Closes = "\n```\n";

    /// <param name="play">Has the conversation once more, and tells what each of them sees.</param>
    public static async Task CheckAsync(string page, Func<Task<string>> play)
    {
        var path = Path.Combine(ConversationScript.Folder(), "in-a-club", page);
        var before = (await File.ReadAllTextAsync(path)).ReplaceLineEndings("\n");
        var from = before.IndexOf(Opens, StringComparison.Ordinal) + Opens.Length;
        var to = before.IndexOf(Closes, from - 1, StringComparison.Ordinal) + 1;
        var after = before[..from] + (await play()).ReplaceLineEndings("\n").TrimEnd() + "\n" + before[to..];
        if (Environment.GetEnvironmentVariable("SHEDBOT_APPROVE") == "1") await File.WriteAllTextAsync(path, after);
        else Assert.Equal(before, after);
    }
}
