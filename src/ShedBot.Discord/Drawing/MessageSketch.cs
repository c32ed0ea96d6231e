using System.Globalization;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Drawing;

/// <summary>One message while it is put together: a frame for each card, with its texts and pictures, and the controls at the end of the last.</summary>
/// <param name="id">Of the first frame.</param>
internal sealed class MessageSketch(int? id)
{
    private readonly List<Component> above = [];
    private readonly List<(int? Colour, List<Component> Parts)> frames = [];
    private readonly List<Picture> pictures = [];

    public void Above(string line) => above.Add(Text(line));

    /// <summary>Pieces of one block become one text; a picture stands by itself.</summary>
    public void Frame(IEnumerable<Piece> pieces, int? colour)
    {
        var parts = new List<Component>();
        var text = new List<string>();
        var block = -1;
        foreach (var piece in pieces)
        {
            if (piece.Block != block || piece.Picture is not null) EndText();
            block = piece.Block;
            if (piece.Picture is { } picture) parts.Add(Show(picture));
            else text.Add(piece.Text);
        }

        EndText();
        if (parts.Count > 0) frames.Add((colour, parts));

        void EndText()
        {
            if (text.Count > 0) parts.Add(Text(string.Join('\n', text)));
            text.Clear();
        }
    }

    public void End(IReadOnlyList<Component> controls, string? footer)
    {
        if (controls.Count == 0 && footer is null) return;
        if (frames.Count == 0) frames.Add((null, []));
        var parts = frames[^1].Parts;
        if (controls.Count > 0 && parts.Count > 0) parts.Add(new Component(ComponentTypes.Separator, Divider: true, Spacing: 1));
        parts.AddRange(controls);
        if (footer is not null) parts.Add(Text("-# " + footer));
    }

    public Drawn Finish(AllowedMentions mentions)
    {
        var containers = frames.Select((f, i) => new Component(ComponentTypes.Container, Id: i == 0 ? id : null, AccentColor: f.Colour, Components: f.Parts));
        var body = new MessageBody(
            Components: [.. above, .. containers],
            AllowedMentions: mentions,
            Flags: MessageFlags.ComponentsV2,
            Attachments: [.. pictures.Select((p, i) => new OutgoingAttachment(i.ToString(CultureInfo.InvariantCulture), Name(i), p.Alt))]);
        return new Drawn(body, [.. pictures.Select((p, i) => new Upload(Name(i), "image/png", p.Png))]);
    }

    private static string Name(int number) => string.Create(CultureInfo.InvariantCulture, $"drawing-{number + 1}.png");

    private static Component Text(string content) => new(ComponentTypes.Text, Content: content);

    private Component Show(Picture picture)
    {
        pictures.Add(picture);
        return new Component(ComponentTypes.MediaGallery, Items: [new GalleryItem(new MediaReference($"attachment://{Name(pictures.Count - 1)}"), picture.Alt)]);
    }
}
