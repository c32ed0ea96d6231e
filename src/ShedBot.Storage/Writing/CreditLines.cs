using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace ShedBot.Storage.Writing;

/// <summary>
/// Takes a name out of the credit lines of a rule file: <c>author: Wren</c> and <c>said by: Wren</c>. Nothing else of the text changes, not even where the
/// same name stands in a question or in a drawing. Meant for files as they are written here, one value a line.
/// </summary>
internal static partial class CreditLines
{
    /// <summary>What stands there afterwards: a rule has to say whose word it is.</summary>
    public const string Nobody = "somebody who has left";

    /// <summary>Letters after a backslash, and what each means, in the same order.</summary>
    private const string Letters = "0abtnvfre \"/\\N_LP", Meanings = "\0\a\b\t\n\v\f\r\e \"/\\\u0085\u00a0\u2028\u2029";

    /// <returns>The text without those names, or the very same text where they do not stand.</returns>
    public static string Without(string text, IReadOnlySet<string> names)
    {
        StringBuilder? changed = null;
        // Lines of a block, such as a drawing, are deeper than this; -1 outside of blocks.
        var block = -1;
        var from = 0;
        while (from < text.Length)
        {
            var feed = text.IndexOf('\n', from);
            var end = feed < 0 ? text.Length : feed;
            var line = text[from..end];
            var depth = line.Length - line.TrimStart(' ').Length;
            if (block >= 0 && (depth > block || depth == line.Length))
            {
                changed?.Append(line);
            }
            else
            {
                block = BlockLine().Match(line) is { Success: true } b ? b.Groups["in"].Length - (b.Groups["key"].Success ? 0 : 2) : -1;
                var credit = CreditLine().Match(line);
                if (credit.Success && names.Contains(Read(credit.Groups["value"].Value)))
                {
                    changed ??= new StringBuilder(text, 0, from, text.Length);
                    changed.Append(credit.Groups["key"].ValueSpan).Append(Nobody).Append(credit.Groups["tail"].ValueSpan);
                }
                else
                {
                    changed?.Append(line);
                }
            }

            if (feed >= 0)
            {
                changed?.Append('\n');
            }

            from = end + 1;
        }

        return changed?.ToString() ?? text;
    }

    /// <summary>A value as YAML 1.2 means it: plain (7.3.3), in single quotes (7.3.2) or in double quotes (7.3.1).</summary>
    private static string Read(string value) => value switch
    {
        ['\'', .. var inner, '\''] => inner.Replace("''", "'", StringComparison.Ordinal),
        ['"', .. var inner, '"'] => Escape().Replace(inner, e => e.Groups["hex"] is { Success: true } hex
            ? FromHex(hex.Value[1..])
            : Letters.IndexOf(e.Value[1], StringComparison.Ordinal) is >= 0 and var at ? Meanings[at].ToString() : e.Value),
        _ => value,
    };

    private static string FromHex(string hex)
    {
        var number = int.Parse(hex, NumberStyles.HexNumber, CultureInfo.InvariantCulture);
        return number <= char.MaxValue ? ((char)number).ToString() : number <= 0x10ffff ? char.ConvertFromUtf32(number) : "";
    }

    [GeneratedRegex(@"^(?<key> *(?:- )*(?:author|said by): +)(?<value>\S.*?)(?<tail> *\r?)$", RegexOptions.CultureInvariant)]
    private static partial Regex CreditLine();

    [GeneratedRegex(@"^(?<in> *(?:- )*)(?<key>[^ '""#-][^'""]*?: +)?[|>][0-9+-]* *\r?$", RegexOptions.CultureInvariant)]
    private static partial Regex BlockLine();

    [GeneratedRegex(@"\\(?<hex>x[0-9A-Fa-f]{2}|u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8})|\\.", RegexOptions.CultureInvariant)]
    private static partial Regex Escape();
}
