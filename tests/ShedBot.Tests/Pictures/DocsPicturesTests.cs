using System.Buffers.Binary;
using ShedBot.Coaching.Logbook;

namespace ShedBot.Tests.Pictures;

/// <summary>The pictures of the docs, of invented bikes. With SHEDBOT_APPROVE=1 they are painted anew.</summary>
public sealed class DocsPicturesTests
{
    [Theory]
    [InlineData("timeline-dark.png", PictureLook.Dark)]
    [InlineData("timeline-light.png", PictureLook.Light)]
    public void Pictures_OfTheDocs_AreThereAndOfTheSizeThatIsPainted(string name, PictureLook look)
    {
        var path = Path.Combine(Repository.Root, "docs", "pictures", name);
        using var painted = Painted.Of(Bikes.Lay(look == PictureLook.Dark ? Bikes.YearOld : Bikes.New), look);
        if (Environment.GetEnvironmentVariable("SHEDBOT_APPROVE") == "1") File.WriteAllBytes(path, painted.Png);
        // Letters differ a little from machine to machine, so only the width is held: ISO/IEC 15948 (PNG), 11.2.2.
        Assert.Equal(painted.Size.Width, BinaryPrimitives.ReadInt32BigEndian(File.ReadAllBytes(path).AsSpan(16)));
    }
}
