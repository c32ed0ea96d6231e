using Microsoft.Extensions.Logging;
using ShedBot.Coaching.Logbook;
using ShedBot.Pictures;

namespace ShedBot.Tests.Pictures;

/// <summary>Where it cannot be painted, nothing fails.</summary>
public sealed class TimelinePicturesTests : IDisposable
{
    private readonly TempFolder temp = new();
    private readonly Lines log = new();

    public void Dispose() => temp.Dispose();

    [Fact]
    public void Paint_WithATypeface_IsAPng()
    {
        var png = new TimelinePictures(PlainFace.UsualFolders, log).Paint(Bikes.Lay(Bikes.New), PictureLook.Dark);
        // Source: ISO/IEC 15948 (PNG), 5.2.
        Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], png!.Value.Take(8));
        Assert.Empty(log.Said);
    }

    [Fact]
    public void Paint_WithoutATypeface_IsNothingAndSaidOnce()
    {
        var pictures = new TimelinePictures([temp.Path], log);
        Assert.Null(pictures.Paint(Bikes.Lay(Bikes.New), PictureLook.Dark));
        Assert.Null(pictures.Paint(Bikes.Lay(Bikes.New), PictureLook.Light));
        Assert.Contains("No plain typeface", Assert.Single(log.Said), StringComparison.Ordinal);
    }

    [Fact]
    public void Paint_WhereThePaintingBreaks_IsNothingAndSaid()
    {
        Assert.Null(new TimelinePictures(PlainFace.UsualFolders, log).Paint(Bikes.Lay(Bikes.New) with { Rows = default }, PictureLook.Dark));
        Assert.Contains("could not be painted", Assert.Single(log.Said), StringComparison.Ordinal);
    }

    [Fact]
    public void Find_SeveralTypefaces_TakesTheBestWithItsBoldOne()
    {
        foreach (var name in new[] { "zz-icons.ttf", "LiberationSans-Regular.ttf", "DejaVuSansMono.ttf", "LiberationSans-Bold.ttf" }) File.WriteAllText(temp.File(name), "");
        Assert.Equal(new PlainFace(temp.File("LiberationSans-Regular.ttf"), temp.File("LiberationSans-Bold.ttf")), PlainFace.Find([temp.Path, "/nowhere"]));
    }

    [Fact]
    public void Find_NoKnownTypeface_IsNothing()
    {
        File.WriteAllText(temp.File("zz-icons.ttf"), "");
        Assert.Null(PlainFace.Find([temp.Path]));
    }

    private sealed class Lines : ILogger
    {
        public List<string> Said { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) => Said.Add(formatter(state, exception));
    }
}
