using ShedBot.Terminal;

namespace ShedBot.Tests.Terminal;

public sealed class BoundedLinesTests
{
    [Fact]
    public async Task Read_LinesOfEveryKind_ComeOneByOne() =>
        Assert.Equal(["one", "", "two", "three"], await All("one\n\ntwo\r\nthree", 100));

    [Fact]
    public async Task Read_LineEndAtTheEnd_AddsNoEmptyLine() => Assert.Equal(["one"], await All("one\n", 100));

    [Fact]
    public async Task Read_LongerThanTheLimit_KeepsTheStartAndTheNextLine() =>
        Assert.Equal([new string('x', 10), "next"], await All(new string('x', 100_000) + "\nnext\n", 10));

    [Fact]
    public async Task Read_Nothing_IsTheEnd() => Assert.Empty(await All("", 10));

    private static async Task<List<string>> All(string text, int most)
    {
        var lines = new BoundedLines(new StringReader(text), most);
        var all = new List<string>();
        while (await lines.ReadAsync(CancellationToken.None) is { } line) all.Add(line);
        return all;
    }
}
