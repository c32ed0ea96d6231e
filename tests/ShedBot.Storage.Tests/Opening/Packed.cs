using System.IO.Compression;

namespace ShedBot.Storage.Tests.Opening;

/// <summary>Files that the last program of each layout wrote, kept here as they were.</summary>
internal static class Packed
{
    public static void File(int layout, ScratchDirectory to)
    {
        using var packed = typeof(Packed).Assembly.GetManifestResourceStream($"layout-{layout}.db.gz")!;
        using var unpacked = new GZipStream(packed, CompressionMode.Decompress);
        using var file = System.IO.File.Create(to.Data);
        unpacked.CopyTo(file);
    }
}
