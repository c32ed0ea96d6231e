using System.Text;

namespace ShedBot.Terminal;

/// <summary>Lines of any length, of which only the start is kept: a line of a gigabyte costs no more memory than a short one.</summary>
/// <param name="most">Characters of a line that are kept; the rest is read and dropped.</param>
internal sealed class BoundedLines(TextReader reader, int most)
{
    private readonly char[] buffer = new char[4096];
    private int at, length;

    /// <returns>The next line without its end, or null after the last.</returns>
    public async ValueTask<string?> ReadAsync(CancellationToken ct)
    {
        StringBuilder? line = null;
        while (true)
        {
            if (at == length)
            {
                length = await reader.ReadAsync(buffer, ct);
                at = 0;
                if (length == 0) return line?.ToString().TrimEnd('\r');
            }

            line ??= new StringBuilder();
            var end = Array.IndexOf(buffer, '\n', at, length - at);
            var until = end < 0 ? length : end;
            line.Append(buffer, at, Math.Min(until - at, most - line.Length));
            at = end < 0 ? length : end + 1;
            if (end >= 0) return line.ToString().TrimEnd('\r');
        }
    }
}
