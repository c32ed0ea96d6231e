using System.Text;

namespace ShedBot.Terminal;

/// <summary>Standard output as plain bytes: UTF-8 without a mark, one kind of line end on every system.</summary>
internal static class TextOut
{
    public static StreamWriter Standard() => new(Console.OpenStandardOutput(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false))
    {
        NewLine = "\n",
        AutoFlush = false,
    };
}
