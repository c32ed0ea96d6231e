namespace ShedBot.Trade.Release;

/// <summary>The notched nut that sets where the outer plate sits on the rod. Count the notches and gauge the pitch on your own.</summary>
/// <remarks>Source: screw geometry [derived]. The nut takes up slack; the clamp force comes from the spring inside.</remarks>
public sealed record FlowerNut
{
    /// <param name="pitch">Thread pitch, more than 0.</param>
    /// <param name="notches">Places per turn where the set screw can lock it, 1 to 60.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public FlowerNut(Length pitch, int notches) =>
        (Pitch, Notches) = (Limits.MoreThanZero(pitch), Limits.Between(notches, 1, 60));

    public Length Pitch { get; }

    public int Notches { get; }

    /// <summary>Axial move of one notch: pitch / notches.</summary>
    public Length PerNotch => Pitch / Notches;

    /// <summary>Notches that make up for a bar (or ball) of another length: change / move per notch.</summary>
    /// <param name="lengthChange">New length less old; a longer bar is positive and asks for that many notches in, a shorter one for notches out.</param>
    /// <returns>Notches, not rounded.</returns>
    public double NotchesFor(Length lengthChange) => lengthChange / PerNotch;
}
