using System.Globalization;

namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>The parts of a multipart request. Source: the platform's API reference, "Uploading files"; that our file names are plain ASCII
/// is our own rule, because the ways to write others in a header differ.</summary>
internal static class FileRules
{
    private const int MostFiles = 10;
    private const long MostBytes = 10 << 20, MostBytesTogether = 25 << 20;

    public static IEnumerable<string> Of(CheckedRequest request, bool ours)
    {
        if (request.Parts.Count == 0) yield break;
        if (request.Parts.Count(part => part.Name == "payload_json") != 1) yield return "payload_json: there must be one such part";

        var files = request.Parts.Where(part => part.Name != "payload_json").ToList();
        if (files.Count > MostFiles) yield return $"files: at most {MostFiles}, not {files.Count}";
        if (files.Sum(file => file.Length) > MostBytesTogether) yield return $"files: at most {MostBytesTogether} bytes together";
        foreach (var twice in files.GroupBy(file => file.Name, StringComparer.Ordinal).Where(group => group.Count() > 1)) yield return $"{twice.Key}: is there twice";

        foreach (var file in files)
        {
            if (Number(file) is null) yield return $"{file.Name}: a file's part is called files[n]";
            if (file.Length > MostBytes) yield return $"{file.Name}: at most {MostBytes} bytes, not {file.Length}";
            if (string.IsNullOrEmpty(file.FileName)) yield return $"{file.Name}: needs a file name";
            else if (ours && !file.FileName.All(char.IsAscii)) yield return $"{file.Name}: the file name must be plain ASCII";
        }
    }

    /// <summary>The n of <c>files[n]</c>, or null for a part of another name.</summary>
    public static int? Number(CheckedPart part) =>
        part.Name.StartsWith("files[", StringComparison.Ordinal) && part.Name.EndsWith(']')
        && int.TryParse(part.Name.AsSpan(6, part.Name.Length - 7), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : null;
}
