using System.Collections.Immutable;

namespace ShedBot.Coaching.Logbook;

/// <summary>Paints a timeline. Safe to call from several threads.</summary>
/// <returns>A PNG, or null when it cannot be painted here; the card says the same in words.</returns>
public delegate ImmutableArray<byte>? TimelinePainter(Timeline timeline, PictureLook look);

/// <summary>What a picture is to be looked at on; it has a ground of its own in either.</summary>
public enum PictureLook
{
    Dark,
    Light,
}
