using ShedBot.Serving.Health;

namespace ShedBot.Tests.Serving.Health;

public sealed class HealthFileTests : IDisposable
{
    private readonly TempFolder temp = new();

    public void Dispose() => temp.Dispose();

    [Fact]
    public void Read_WhatWasWritten_IsTheSame()
    {
        var file = new HealthFile(temp.File("health.json"));
        var report = VerdictTests.Well with { Totals = new() { ["requests"] = 3 }, Times = new() { ["answer"] = new(2, 0.5, 0.4) } };
        file.Write(report);
        file.Write(report);
        var read = file.Read()!;
        Assert.Equal(report with { Totals = read.Totals, Times = read.Times }, read);
        Assert.Equal((3, new Timed(2, 0.5, 0.4)), (read.Totals["requests"], read.Times["answer"]));
        Assert.Equal(["health.json"], Directory.EnumerateFiles(temp.Path).Select(Path.GetFileName));
    }

    [Theory]
    [InlineData("")]
    [InlineData("{\"when\":")]
    [InlineData("null")]
    public void Read_WhatIsNoReport_IsNone(string content)
    {
        File.WriteAllText(temp.File("health.json"), content);
        Assert.Null(new HealthFile(temp.File("health.json")).Read());
    }

    /// <summary>Whoever reads while it is written finds the old or the new report, never half of one.</summary>
    [Fact]
    public async Task Read_WhileItIsWritten_NeverFindsHalf()
    {
        var file = new HealthFile(temp.File("health.json"));
        file.Write(VerdictTests.Well);
        var writing = Task.Run(() =>
        {
            for (var i = 0; i < 300; i++) file.Write(VerdictTests.Well with { Busy = i });
        });
        var reads = 0;
        for (; !writing.IsCompleted || reads == 0; reads++) Assert.NotNull(file.Read());
        await writing;
    }

    [Fact]
    public void Run_HealthCommand_EndsWith0WhenWellAnd1WhenNot()
    {
        var path = temp.File("health.json");
        Dictionary<string, string?> given = new() { ["Serve:Health"] = path };
        var output = new StringWriter();
        Assert.Equal(1, HealthCommand.Run(given, TimeProvider.System, output));
        new HealthFile(path).Write(VerdictTests.Well with { When = DateTimeOffset.UtcNow });
        Assert.Equal(0, HealthCommand.Run(given, TimeProvider.System, output));
        Assert.Equal(2, output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
    }
}
