using System.Collections.Immutable;
using Microsoft.Extensions.Logging;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Trials;

namespace ShedBot.Pictures;

/// <summary>Pictures of trials for every place. The painting library is not touched before the first picture is asked for.</summary>
/// <param name="folders">Where typefaces are looked for.</param>
internal sealed class TrialPictures(IReadOnlyCollection<string> folders, ILogger log)
{
    private readonly Lock gate = new();
    private bool looked;
    private PlainFace? face;

    /// <summary>One at a time: a picture takes some megabytes while it is painted.</summary>
    /// <returns>A PNG, or null when it cannot be painted here: the reply must not fail for it.</returns>
    public ImmutableArray<byte>? Paint(TrialReport report, PictureLook look)
    {
        try
        {
            lock (gate) return Find() is { } known ? [.. TrialPlot.Paint(report, Palette.Of(look), known)] : null;
        }
        catch (Exception e)
        {
            // Whatever the library of another's making or a broken typeface comes up with: the card says the same in words.
            log.TrialNotPainted(e);
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
