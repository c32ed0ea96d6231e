using System.Text.Json;
using ShedBot.Hearing;
using ShedBot.Knowledge.Understanding;
using ShedBot.Rules;

namespace ShedBot.Tests.Hearing;

public sealed class UnderstandTests
{
    [Fact]
    public async Task Run_AComplaint_GivesEveryField()
    {
        using var answer = JsonDocument.Parse(Assert.Single(await RunAsync("bell makes no sound\n")));
        Assert.Equal(
            ["text", "complaints", "denied", "findings", "facts", "emergency", "how_to", "not_mine", "not_mine_because", "could_be_either"],
            answer.RootElement.EnumerateObject().Select(p => p.Name));
        var complaint = answer.RootElement.GetProperty("complaints")[0];
        Assert.Equal("silent", complaint.GetProperty("id").GetString());
        Assert.InRange(complaint.GetProperty("score").GetDouble(), 0.5, 1);
        Assert.False(answer.RootElement.GetProperty("not_mine").GetBoolean());
        Assert.Equal(JsonValueKind.Null, answer.RootElement.GetProperty("emergency").ValueKind);
    }

    [Fact]
    public async Task Run_LinesOfEveryKind_GiveOneLineEach()
    {
        var lines = await RunAsync("\n" + new string('x', 1_000_000) + "\n\0\u001b\ufffd\n😀😀\nשלום עולם\n" + (char)0xD800 + "\n\"\\\n");
        Assert.Equal(7, lines.Length);
        Assert.All(lines, l =>
        {
            using var answer = JsonDocument.Parse(l);
            Assert.True(answer.RootElement.GetProperty("not_mine").GetBoolean());
            Assert.NotEqual(JsonValueKind.Null, answer.RootElement.GetProperty("not_mine_because").ValueKind);
        });
    }

    private static async Task<string[]> RunAsync(string input)
    {
        using var temp = new TempFolder();
        var listener = Listener.For(RulesFolder.Load(temp.BellRules(), TextWriter.Null)!);
        var output = new StringWriter { NewLine = "\n" };
        await UnderstandCommand.RunAsync(listener, new StringReader(input), output, CancellationToken.None);
        return output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }
}
