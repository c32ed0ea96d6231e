using System.Text;

namespace ShedBot.Storage.Opening;

/// <summary>The mark at the head of a LiteDB 5 file, looked at before LiteDB may touch it.</summary>
internal static class FileMark
{
    // Read off files that LiteDB 5.0.21 made; a test holds it against a fresh one.
    private const int Position = 32;
    private static readonly byte[] Mark = [.. Encoding.ASCII.GetBytes("** This is a LiteDB file **"), 8];

    public static void Check(string data)
    {
        using var file = new FileStream(data, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        var head = new byte[Position + Mark.Length];
        var read = file.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
        if (read < head.Length || !head.AsSpan(Position).SequenceEqual(Mark))
        {
            throw new StoreRefusedException(
                RefusalCodes.NotOurFile,
                $"{Path.GetFileName(data)} is not a data file of ShedBot, or its beginning was overwritten. Nothing was changed. "
                + "Give another path for the data file, or put the last good backup in its place.");
        }
    }
}
