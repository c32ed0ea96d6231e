using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Drawing;

/// <summary>A message ready to be sent.</summary>
/// <param name="Body">Names every file that it shows, so that in an edit the files of before go away.</param>
internal sealed record Drawn(MessageBody Body, ImmutableArray<Upload> Files)
{
    /// <summary>The same with files below, to be taken away.</summary>
    /// <param name="files">Of names that no picture of the message has.</param>
    public Drawn WithFiles(IEnumerable<Upload> files)
    {
        ImmutableArray<Upload> all = [.. Files, .. files];
        return new Drawn(
            Body with
            {
                Components = [.. Body.Components ?? [], .. all[Files.Length..].Select(f => new Component(ComponentTypes.File, File: new MediaReference($"attachment://{f.Name}")))],
                Attachments =
                [
                    .. Body.Attachments ?? [],
                    .. all.Select((f, i) => (f, i)).Skip(Files.Length).Select(x => new OutgoingAttachment(x.i.ToString(CultureInfo.InvariantCulture), x.f.Name, null)),
                ],
            },
            all);
    }

    /// <summary>The same with a picture above.</summary>
    /// <param name="name">That no other file of the message has; ends in .png.</param>
    public Drawn WithPicture(string name, Picture picture) => new(
        Body with
        {
            Components = [new Component(ComponentTypes.MediaGallery, Items: [new GalleryItem(new MediaReference($"attachment://{name}"), picture.Alt)]), .. Body.Components ?? []],
            Attachments = [.. Body.Attachments ?? [], new OutgoingAttachment(Files.Length.ToString(CultureInfo.InvariantCulture), name, picture.Alt)],
        },
        [.. Files, new Upload(name, "image/png", picture.Png)]);

    /// <summary>The same with one button below.</summary>
    public Drawn WithButton(CustomId id, string label)
    {
        var button = new Component(ComponentTypes.Button, CustomId: id.ToString(), Style: ButtonStyles.Secondary, Label: label);
        return this with { Body = Body with { Components = [.. Body.Components ?? [], new Component(ComponentTypes.Row, Components: [button])] } };
    }
}

/// <summary>What surrounds the cards of a turn.</summary>
/// <param name="WordsButton">Whether a button offers the form for one's own words.</param>
/// <param name="Lead">A line above the first message, already in the platform's markup, such as a mention; or null.</param>
/// <param name="Mentions">Whom the lead may ping.</param>
/// <param name="Footer">A small line at the end of the last message, already in the platform's markup; or null.</param>
internal sealed record DrawContext(bool WordsButton, string? Lead, AllowedMentions Mentions, string? Footer)
{
    /// <summary>Nothing around the cards.</summary>
    public static DrawContext Bare { get; } = new(WordsButton: false, Lead: null, AllowedMentions.None, Footer: null);
}
