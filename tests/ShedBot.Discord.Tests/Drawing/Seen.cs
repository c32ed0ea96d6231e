using System.Text;
using System.Text.RegularExpressions;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Drawing;

/// <summary>A message as a reader would see it, worked out from the published rules and not from our own code.</summary>
internal static partial class Seen
{
    public static IEnumerable<Component> All(IEnumerable<Component>? components) =>
        (components ?? []).SelectMany(c => All(c.Components).Concat(c.Inner is { } inner ? All([inner]) : []).Prepend(c));

    public static IEnumerable<Component> All(Drawn drawn) => All(drawn.Body.Components);

    public static IEnumerable<string> Texts(Drawn drawn) => All(drawn).Where(c => c.Type == 10).Select(c => c.Content ?? "");

    public static IEnumerable<Component> Buttons(Drawn drawn) => All(drawn).Where(c => c.Type == 2);

    public static IEnumerable<Component> Lists(Drawn drawn) => All(drawn).Where(c => c.Type == 3);

    /// <summary>Every id of an option that a press could send, in order.</summary>
    public static IEnumerable<string> OptionIds(Drawn drawn) => All(drawn).SelectMany<Component, string>(c => c.Type switch
    {
        2 when CustomId.Read(c.CustomId) is { Verb: CustomId.Answer } id => [id.Rest],
        3 => c.Options!.Select(o => o.Value),
        _ => [],
    });

    /// <summary>All words in order of reading: texts, pictures by their description, labels. Marks are taken away as CommonMark 0.31.2 (2.4, backslash escapes) reads them.</summary>
    public static string Words(Drawn drawn) => string.Join('\n', All(drawn).SelectMany<Component, string>(c => c.Type switch
    {
        10 => [Unmarked(c.Content!)],
        12 => c.Items!.Select(i => i.Description!),
        2 => [c.Label!],
        3 => c.Options!.Select(o => o.Label),
        _ => [],
    }));

    /// <summary>Only letters, figures and signs: no blanks, and none of the marks that a message may add.</summary>
    public static string Bare(string text)
    {
        var bare = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            if (Rune.IsLetterOrDigit(rune) || (Rune.IsSymbol(rune) && rune.Value is > 0x7F and not (0x2588 or 0x2591 or 0x26A0))) bare.Append(rune.ToString().ToUpperInvariant());
        }

        return bare.ToString();
    }

    private static string Unmarked(string text) => Escape().Replace(text.Replace("\u200B", "", StringComparison.Ordinal), "$1");

    [GeneratedRegex(@"\\([!-/:-@\[-`{-~])")]
    private static partial Regex Escape();
}
