using System.Runtime.CompilerServices;

namespace ShedBot.Tests.Approving;

/// <summary>Holds a text against the approved one in <c>Class.Test.approved.txt</c> beside the test. What differs is written to <c>.received.txt</c>, to be looked at and renamed.</summary>
internal static class Approved
{
    public static void Text(string text, [CallerFilePath] string file = "", [CallerMemberName] string test = "")
    {
        var path = Path.Combine(Beside(file), $"{Path.GetFileNameWithoutExtension(file)}.{test}");
        var (approved, received) = (path + ".approved.txt", path + ".received.txt");
        var expected = File.Exists(approved) ? File.ReadAllText(approved) : "";
        if (expected == text)
        {
            File.Delete(received);
            return;
        }

        File.WriteAllText(received, text);
        Assert.True(expected == text, $"The text is not as approved. Look at {received}; if it is right, rename it to .approved.txt.\n{FirstDifference(expected, text)}");
    }

    public static string FirstDifference(string expected, string text)
    {
        var (was, now) = (expected.Split('\n'), text.Split('\n'));
        for (var i = 0; i < Math.Max(was.Length, now.Length); i++)
        {
            if (was.ElementAtOrDefault(i) != now.ElementAtOrDefault(i))
                return $"line {i + 1}\n  approved: {was.ElementAtOrDefault(i)}\n  received: {now.ElementAtOrDefault(i)}";
        }

        return "no difference";
    }

    /// <summary>A build may have replaced the front of source paths, so only the end is trusted.</summary>
    private static string Beside(string file)
    {
        var parts = file.Split('/', '\\');
        var from = Array.LastIndexOf(parts, "ShedBot.Tests");
        return Path.Combine([Repository.Root, "tests", .. parts[from..^1]]);
    }
}
