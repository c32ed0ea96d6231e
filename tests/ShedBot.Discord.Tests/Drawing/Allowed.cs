using System.Text;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Drawing;

/// <summary>The published limits of a message made of components, written down here a second time: components reference and message resource, API version 10.</summary>
internal static class Allowed
{
    public static void Check(Drawn drawn)
    {
        var all = Seen.All(drawn).ToList();
        Assert.InRange(all.Count, 1, 40);
        Assert.Equal(32768, drawn.Body.Flags);
        Assert.Null(drawn.Body.Content);
        // The platform takes 4,000 characters; some 10,000 bytes have been seen to fail. 3,500 and 9,000 are ours.
        Assert.InRange(Seen.Texts(drawn).Sum(t => t.Length), 0, 3500);
        Assert.InRange(Seen.Texts(drawn).Sum(Encoding.UTF8.GetByteCount), 0, 9000);
        Assert.Empty(drawn.Body.AllowedMentions!.Parse);
        var ids = all.Where(c => c.CustomId is not null).Select(c => c.CustomId!).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
        Assert.All(ids, id => Assert.InRange(id.Length, 1, 100));
        foreach (var part in all) Check(part);
        Assert.InRange(drawn.Files.Length, 0, 10);
        Assert.Equal(drawn.Files.Select(f => f.Name), drawn.Body.Attachments!.Select(a => a.Filename));
        Assert.Equal(Enumerable.Range(0, drawn.Files.Length).Select(n => $"{n}"), drawn.Body.Attachments!.Select(a => a.Id));
        Assert.Equal(
            drawn.Files.Select(f => "attachment://" + f.Name), all.Where(c => c.Type == 12).SelectMany(c => c.Items!).Select(i => i.Media.Url));
        Assert.All(drawn.Body.Components!, c => Assert.Contains(c.Type, new[] { 10, 17 }));
    }

    private static void Check(Component part)
    {
        switch (part.Type)
        {
            case 1:
                var inside = part.Components!;
                Assert.True(inside is [{ Type: 3 }] || (inside.Count is >= 1 and <= 5 && inside.All(c => c.Type == 2)), "A row holds one list, or one to five buttons.");
                break;
            case 2:
                Assert.InRange(part.Label!.Length, 1, 80);
                Assert.InRange(part.Style!.Value, 1, 4);
                Assert.NotNull(part.CustomId);
                break;
            case 3:
                Assert.InRange(part.Options!.Count, 1, 25);
                Assert.All(part.Options, o => Assert.InRange(o.Label.Length, 1, 100));
                Assert.All(part.Options, o => Assert.InRange(o.Value.Length, 1, 100));
                Assert.Equal(part.Options.Count, part.Options.Select(o => o.Value).Distinct().Count());
                Assert.InRange(part.Placeholder!.Length, 1, 150);
                break;
            case 10:
                Assert.False(string.IsNullOrWhiteSpace(part.Content));
                break;
            case 12:
                Assert.InRange(part.Items!.Count, 1, 10);
                Assert.All(part.Items, i => Assert.InRange(i.Description!.Length, 1, 1024));
                break;
            case 14:
                break;
            case 17:
                Assert.NotEmpty(part.Components!);
                Assert.All(part.Components!, c => Assert.Contains(c.Type, new[] { 1, 10, 12, 14 }));
                break;
            default:
                Assert.Fail($"No component of type {part.Type} is used.");
                break;
        }
    }
}
