using ShedBot.Trade.Figures;

namespace ShedBot.Trade.Release;

/// <summary>Release results ready to show a rider, with their inputs and how to measure each.</summary>
public static class ReleaseFigures
{
    private const string MeasureArm = "Ruler from the middle of the arm's shaft to the cable hole.";

    private const string MeasureContact =
        "Vernier across the bright patch on the bar's tip that bears on the cam; half of it.";

    /// <summary>Bar travel from one pull, for an arm that may rest off neutral: <see cref="BarTravel.OnPull"/> with a square wire.</summary>
    /// <param name="cam">The cam as measured.</param>
    /// <param name="armRadius">Distance from the arm's axis to the cable hole, more than 0.</param>
    /// <param name="usablePull">Cable that reaches the arm, 0 or more; see <see cref="LeverPull.Usable"/>.</param>
    /// <param name="start">Where the arm rests, from neutral, 0 to 90 degrees.</param>
    /// <param name="limit">Where the arm can turn no further, from start to 90 degrees.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument outside its range.</exception>
    public static TradeFigure<Length> TravelLeft(
        HalfRoundCam cam, Length armRadius, Length usablePull, Angle start, Angle limit) =>
        new(
            BarTravel.OnPull(cam, start, ArmSwing.Tangential(usablePull, armRadius), limit).Left,
            "lift(start + swing) - lift(start), swing = least of pull / R and limit - start",
            "Plane geometry of a half-round cam against a flat-ended bar",
            SourceMark.Derived,
            [
                new("Usable pull", Shown.Millimetres(usablePull), "Engine off: mark the wire at the arm, pull the lever fully, measure the move."),
                new("Arm radius R", Shown.Millimetres(armRadius), MeasureArm),
                new("Cam radius r", Shown.Millimetres(cam.Radius), "Vernier across the round of the arm's shaft; half of it."),
                new("Flat offset h", Shown.Millimetres(cam.FlatOffset), "Vernier from flat to back of the shaft, less the radius."),
                new("Contact half-width b", Shown.Millimetres(cam.ContactHalfWidth), MeasureContact),
                new("Rest angle", Shown.Degrees(start), "Wire off: how far from neutral does the arm stand when it is set?"),
                new("Swing limit", Shown.Degrees(limit), "Wire off: turn the arm by hand until it meets something."),
            ]);

    /// <summary>Cable slack that one notch of the flower nut gives or takes: pitch / notches x R / b.</summary>
    public static TradeFigure<Length> SlackPerNotch(FlowerNut nut, SlackLever lever) =>
        new(
            lever.CableFor(nut.PerNotch),
            "P / notches x R / b",
            "Screw and lever geometry near neutral",
            SourceMark.Derived,
            [
                new("Nut pitch P", Shown.Millimetres(nut.Pitch), "Pitch gauge on the rod's thread."),
                new("Notches", Shown.Plain(nut.Notches), "Count the petals once round."),
                new("Arm radius R", Shown.Millimetres(lever.ArmRadius), MeasureArm),
                new("Contact half-width b", Shown.Millimetres(lever.ContactHalfWidth), MeasureContact),
            ]);
}
