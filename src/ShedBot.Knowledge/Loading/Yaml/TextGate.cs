using System.Buffers;
using System.Text;
using ShedBot.Knowledge.Linting;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Loading.Yaml;

/// <summary>Lets only plain, readable text of a sensible size through to the YAML reader.</summary>
internal static class TextGate
{
    /// <summary>The largest rule file, in bytes: about forty times the largest that a club is likely to write.</summary>
    public const int MaxBytes = 2 * 1024 * 1024;

    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Marks that make text show in another order than it is read: what a reviewer sees would not be what is loaded.</summary>
    private static readonly SearchValues<char> DirectionMarks =
        SearchValues.Create("\u200E\u200F\u202A\u202B\u202C\u202D\u202E\u2066\u2067\u2068\u2069");

    /// <returns>The text, or null when it was refused.</returns>
    public static string? Read(RuleText file, ProblemList problems, int maxBytes = MaxBytes)
    {
        if (file.Bytes.Length > maxBytes)
        {
            problems.Add(TextRules.TooBig, file.Name, 1, 1, $"the file has {file.Bytes.Length:N0} bytes; at most {maxBytes:N0} are read.",
                "Split it by subject: every *.yaml file in the folder is read.");
            return null;
        }

        string text;
        try
        {
            text = StrictUtf8.GetString(file.Bytes.Span);
        }
        catch (DecoderFallbackException e)
        {
            var before = file.Bytes.Span[..Math.Clamp(e.Index, 0, file.Bytes.Length)];
            problems.Add(TextRules.NotText, file.Name, 1 + before.Count((byte)'\n'), 1, "the file is not UTF-8 text.", "Save it as UTF-8.");
            return null;
        }

        if (text.StartsWith('\uFEFF')) text = text[1..];
        return AllReadable(file.Name, text, problems) ? text : null;
    }

    private static bool AllReadable(string file, string text, ProblemList problems)
    {
        var bad = 0;
        var line = 0;
        foreach (var span in text.AsSpan().EnumerateLines())
        {
            line++;
            for (var i = 0; i < span.Length && bad < 20; i++)
            {
                var c = span[i];
                if (c == '\t')
                    problems.Add(TextRules.Tab, file, line, i + 1, "a tab stands here.", "Use spaces: YAML takes no tabs in front of a line.");
                else if (char.IsControl(c))
                    problems.Add(TextRules.NotText, file, line, i + 1, $"the control character U+{(int)c:X4} stands here.", "Take it out; is this a rule file?");
                else if (DirectionMarks.Contains(c))
                    problems.Add(TextRules.NotText, file, line, i + 1, $"the hidden direction mark U+{(int)c:X4} stands here.", "Take it out: it makes text look other than it is.");
                else continue;
                bad++;
                break;
            }
        }

        return bad == 0;
    }
}
