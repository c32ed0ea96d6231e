using ShedBot.Coaching.Logbook;

namespace ShedBot.Pictures;

/// <summary>
/// The colours of a picture, as #rrggbb. Letters stand out from the ground at 4.5:1 or more, marks at 3:1 or more (WCAG 2.2, success criteria 1.4.3 and
/// 1.4.11). No colour means anything by itself: every mark has a shape of its own too.
/// </summary>
/// <param name="Ground">Solid, so that the picture reads the same wherever it is shown.</param>
/// <param name="Ink">Names, the title and the line of today.</param>
/// <param name="Pale">Days and other smaller words.</param>
/// <param name="Rule">Lines that only guide the eye and carry nothing.</param>
/// <param name="Rest">Stripes over days of rest.</param>
internal sealed record Palette(
    string Ground, string Ink, string Pale, string Rule, string Rest, string Done, string Due, string Overdue, string Expected)
{
    public static Palette Dark { get; } = new("#14191f", "#f2f4f7", "#b6c0cc", "#333d48", "#6b7885", "#57c785", "#ffc145", "#ff7b6e", "#6fb7ff");

    public static Palette Light { get; } = new("#fcfbf7", "#1b232b", "#4a5562", "#dcd8cc", "#85909b", "#1e7a45", "#9a5b00", "#b3261e", "#1b5faa");

    public static Palette Of(PictureLook look) => look == PictureLook.Light ? Light : Dark;

    public string Of(TimelineSign sign) => sign switch
    {
        TimelineSign.Done or TimelineSign.DoneEarlier => Done,
        TimelineSign.Due => Due,
        TimelineSign.Overdue => Overdue,
        TimelineSign.Expected or TimelineSign.ExpectedLater => Expected,
        _ => throw new ArgumentOutOfRangeException(nameof(sign), sign, "A new sign needs a colour."),
    };
}
