using System.Collections.Immutable;
using Microsoft.Extensions.Logging;
using ShedBot.Coaching.Learning.Reports;
using ShedBot.Coaching.Logbook;

namespace ShedBot.Pictures;

/// <summary>Pictures of timelines and of calibration for every place. The painting library is not touched, and takes no memory, before the first picture is asked for.</summary>
/// <param name="folders">Where typefaces are looked for.</param>
internal sealed class TimelinePictures(IReadOnlyCollection<string> folders, ILogger log)
{
    private readonly Lock gate = new();
    private bool looked;
    private PlainFace? face;

    public ImmutableArray<byte>? Paint(Timeline timeline, PictureLook look) => Paint(face => TimelinePlot.Paint(timeline, Palette.Of(look), face));

    public ImmutableArray<byte>? Paint(CalibrationReport report, PictureLook look) => Paint(face => CalibrationPlot.Paint(report, Palette.Of(look), face));

    /// <summary>One at a time: a picture takes some megabytes while it is painted.</summary>
    /// <returns>A PNG, or null when it cannot be painted here: the reply must not fail for it.</returns>
    private ImmutableArray<byte>? Paint(Func<PlainFace, byte[]> paint)
    {
        try
        {
            lock (gate) return Find() is { } known ? [.. paint(known)] : null;
        }
        catch (Exception e)
        {
            // Whatever the library of another's making or a broken typeface comes up with: the card says the same in words.
            log.NotPainted(e);
            return null;
        }
    }

    private PlainFace? Find()
    {
        if (looked) return face;
        looked = true;
        if (PlainFace.Find(folders) is { } found && TimelinePlot.Use(found)) face = found;
        else log.NoFace();
        return face;
    }
}
