using ShedBot.DiscordStandIn.Checks;

namespace ShedBot.Discord.Tests.Checks;

/// <summary>Files sent with a message. Source of the figures: the platform's API reference, "Uploading files" (10 files, 10 MiB each,
/// 25 MiB together) and its message reference (alt text 1024).</summary>
public sealed class FileRulesTests
{
    private const long Mebibyte = 1 << 20;
    private static readonly CheckedPart Picture = new("files[0]", "chart.png", 5000);

    private static readonly CheckedRequest Sent = Asked.To("POST", Asked.Messages, """
        {"flags":32768,"components":[{"type":12,"items":[{"media":{"url":"attachment://chart.png"}}]}],
         "attachments":[{"id":"0","filename":"chart.png","description":"Three bars, the clutch longest"}],"allowed_mentions":{"parse":[]}}
        """).WithFiles(Picture);

    [Fact]
    public void Violations_GoodSample_None() => Holds.Clean(Sent);

    [Fact]
    public void Violations_IdAsNumber_IsTheContractsBusiness() => Holds.Clean(Sent.With("attachments", """[{"id":0,"filename":"chart.png","description":"x"}]"""));

    [Theory]
    [InlineData("""[{"id":"1","filename":"chart.png","description":"x"},{"id":"0","description":"x"}]""", "attachments[0].id: no part files[1]")]
    [InlineData("""[{"filename":"chart.png","description":"x"},{"id":"0","description":"x"}]""", "attachments[0].id: is needed")]
    [InlineData("""[{"id":"0","filename":"chart.png"}]""", "attachments[0].description: a picture needs words")]
    [InlineData("[]", "attachments: files[0] is not listed")]
    public void Violations_ListAtOddsWithParts_Refused(string attachments, string start) => Holds.Refuses(start, Sent.With("attachments", attachments));

    [Fact]
    public void Violations_NameAtOddsWithPart_Refused() =>
        Holds.Refuses("attachments[0].filename: the part is called 'chart.png'",
            Sent.With("attachments", """[{"id":"0","filename":"graph.png","description":"x"}]""").With("flags", "0").With("components", "[]").With("content", "\"x\""));

    [Fact]
    public void Violations_AltText_UpTo1024()
    {
        static string Listed(int length) => $$"""[{"id":"0","filename":"chart.png","description":"{{Asked.Repeat('d', length)}}"}]""";
        Holds.Clean(Sent.With("attachments", Listed(1024)));
        Holds.Refuses("attachments[0].description: 0 to 1024", Sent.With("attachments", Listed(1025)));
    }

    [Fact]
    public void Violations_NothingPointsAtTheFile_Refused() =>
        Holds.Refuses("attachments: nothing points at 'chart.png'", Sent.With("components", """[{"type":10,"content":"x"}]"""));

    [Fact]
    public void Violations_PointsAtAFileNotSent_Refused() =>
        Holds.Refuses("attachments: 'other.png' is pointed at", Sent.With("components",
            """[{"type":12,"items":[{"media":{"url":"attachment://chart.png"}},{"media":{"url":"attachment://other.png"}}]}]"""));

    [Fact]
    public void Violations_EditKeepsAnOldFile_Passes()
    {
        var edit = Asked.To("PATCH", Asked.OneMessage, """{"attachments":[{"id":"900000000000000001"}]}""");
        Holds.Clean(edit);
        Holds.Refuses("attachments[0].id: no part files[0]", edit.With("attachments", """[{"id":"0"}]"""));
        Holds.Refuses("attachments[0].id: no part", edit with { Method = "POST", Route = Asked.Messages, Body = Asked.To("POST", "/x", """{"content":"x","allowed_mentions":{"parse":[]},"attachments":[{"id":"900000000000000001"}]}""").Body });
    }

    [Fact]
    public void Violations_FileTooLarge_Refused()
    {
        Holds.Clean(Sent with { Parts = [Sent.Parts[0], Picture with { Length = 10 * Mebibyte }] });
        Holds.Refuses("files[0]: at most", Sent with { Parts = [Sent.Parts[0], Picture with { Length = (10 * Mebibyte) + 1 }] });
    }

    [Fact]
    public void Violations_FilesTogether_UpTo25MebibytesAndTen()
    {
        Holds.Refuses("files: at most 26214400 bytes", Text(3, 9 * Mebibyte));
        Holds.Clean(Text(10, 1));
        Assert.Contains("files: at most 10, not 11", Holds.Ours.Violations(Text(11, 1)));
    }

    [Theory]
    [InlineData("file", "chart.png", "file: a file's part is called files[n]")]
    [InlineData("files[x]", "chart.png", "files[x]: a file's part is called files[n]")]
    [InlineData("files[1]", null, "files[1]: needs a file name")]
    [InlineData("files[1]", "größe.txt", "files[1]: the file name must be plain ASCII")]
    public void Violations_BadPart_Refused(string name, string? file, string start) =>
        Assert.Contains(Holds.Ours.Violations(Sent with { Parts = [.. Sent.Parts, new CheckedPart(name, file, 1)] }), reason => reason.StartsWith(start, StringComparison.Ordinal));

    [Fact]
    public void Violations_PartTwice_Refused() => Holds.Refuses("files[0]: is there twice", Sent with { Parts = [.. Sent.Parts, Picture] });

    [Fact]
    public void Violations_NoJsonPart_Refused() => Holds.Refuses("payload_json: ", Sent with { Parts = [Picture] });

    private static CheckedRequest Text(int files, long bytes)
    {
        var listed = string.Join(',', Enumerable.Range(0, files).Select(index => $$"""{"id":"{{index}}"}"""));
        return Asked.To("POST", Asked.Messages, $$$"""{"content":"x","attachments":[{{{listed}}}],"allowed_mentions":{"parse":[]}}""")
            .WithFiles([.. Enumerable.Range(0, files).Select(index => new CheckedPart($"files[{index}]", $"a{index}.txt", bytes))]);
    }
}
