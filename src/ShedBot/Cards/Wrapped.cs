namespace ShedBot.Cards;

/// <summary>Text broken at blanks into lines of a width; a word longer than a line stays whole.</summary>
internal static class Wrapped
{
    /// <param name="first">What the first line begins with.</param>
    /// <param name="rest">What the lines after it begin with.</param>
    public static IEnumerable<string> Lines(string text, int width, string first = "", string rest = "")
    {
        foreach (var paragraph in text.Split('\n'))
        {
            var line = first;
            var empty = true;
            foreach (var word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                if (!empty && line.Length + 1 + word.Length > width)
                {
                    yield return line;
                    (line, empty) = (rest, true);
                }

                line += empty ? word : " " + word;
                empty = false;
            }

            yield return line.TrimEnd();
            first = rest;
        }
    }
}
