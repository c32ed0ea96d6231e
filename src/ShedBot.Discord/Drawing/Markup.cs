using System.Text.RegularExpressions;
using ShedBot.Coaching.Cards;

namespace ShedBot.Discord.Drawing;

/// <summary>Text of members and rules, made so that it is shown as it was written: nothing in it formats, links or calls anybody.</summary>
/// <remarks>The meaning of the marks is the platform's; a backslash before punctuation is CommonMark's way to take it literally.</remarks>
internal static partial class Markup
{
    // An empty letter: keeps apart what would be read as one mark. A backslash does not stop a call to everybody.
    private const char Apart = '\u200B';

    /// <summary>Escaped for a text; line ends stay.</summary>
    public static string Safe(string text) => Escaped(Clean(text));

    /// <summary>Escaped, on one line.</summary>
    public static string SafeLine(string text) => Escaped(OneLine(text));

    /// <summary>As a fenced block, where nothing but the end of the fence and a call means anything.</summary>
    public static string Fenced(string text) => $"```\n{Uncalled(Clean(text).Replace("``", $"`{Apart}`{Apart}", StringComparison.Ordinal))}\n```";

    /// <summary>On one line and without marks taken out, for labels, where no markup is read.</summary>
    public static string OneLine(string text) => Gaps().Replace(Clean(text), " ").Trim();

    /// <summary>Without what steers a reader's screen or turns the order of letters round; a tab becomes a blank, half a character U+FFFD.</summary>
    public static string Clean(string text) => CleanText.Of(text.ReplaceLineEndings("\n"));

    private static string Escaped(string text) => Uncalled(Marks().Replace(text, @"\$0"));

    private static string Uncalled(string text) => Calls().Replace(text, $"@{Apart}");

    // Marks anywhere; marks that mean something at the start of a line; the dot of "1." there; the colon of a link or of an emoji's name.
    [GeneratedRegex(@"[\\*_~|`\[\]<]|(?<=^\s*)[#>+-]|(?<=^\s*\d+)[.)]|:(?=//|[\w+-]+:)", RegexOptions.CultureInvariant | RegexOptions.Multiline)]
    private static partial Regex Marks();

    [GeneratedRegex(@"@(?=everyone|here)|(?<=<)@", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Calls();

    [GeneratedRegex(@"\s*\n\s*", RegexOptions.CultureInvariant)]
    private static partial Regex Gaps();
}
