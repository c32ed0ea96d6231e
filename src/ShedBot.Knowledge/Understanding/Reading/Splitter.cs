namespace ShedBot.Knowledge.Understanding.Reading;

/// <summary>Splits plain text into words and marks. A mark is one character that ends or joins statements.</summary>
internal static class Splitter
{
    private const string HardMarks = ".!?;:\n\r|", SoftMarks = ",()[]\"/–—-";

    public static List<string> Split(string letters)
    {
        var parts = new List<string>();
        for (var i = 0; i < letters.Length;)
        {
            if (IsWord(letters, i))
            {
                var start = i;
                while (i < letters.Length && (IsWord(letters, i) || IsInside(letters, i)))
                    i++;
                parts.Add(Shortened(letters[start..i]));
            }
            else
            {
                if (HardMarks.Contains(letters[i]))
                    parts.Add(".");
                else if (SoftMarks.Contains(letters[i]))
                    parts.Add(IsHyphen(letters, i) ? "-" : ",");
                i++;
            }
        }
        parts.RemoveAll(p => p == "-");
        return parts;
    }

    private static bool IsWord(string text, int i) => char.IsLetterOrDigit(text[i]);

    /// <summary>The apostrophe of "won't", the point of "0.8": inside a word.</summary>
    private static bool IsInside(string text, int i) =>
        i + 1 < text.Length && (text[i] == '\'' && char.IsLetter(text[i + 1])
            || text[i] == '.' && char.IsDigit(text[i - 1]) && char.IsDigit(text[i + 1]));

    /// <summary>"half-way" is two words of one statement, "slips - then grabs" is two statements.</summary>
    private static bool IsHyphen(string text, int i) =>
        text[i] == '-' && i > 0 && i + 1 < text.Length && IsWord(text, i - 1) && IsWord(text, i + 1);

    /// <summary>"sooooo" to "soo": English has no letter three times in a row.</summary>
    private static string Shortened(string word)
    {
        if (word.Length < 3)
            return word;
        var kept = new System.Text.StringBuilder(word.Length);
        foreach (var c in word)
        {
            var n = kept.Length;
            if (n < 2 || kept[n - 1] != c || kept[n - 2] != c || char.IsDigit(c))
                kept.Append(c);
        }
        return kept.ToString();
    }
}
