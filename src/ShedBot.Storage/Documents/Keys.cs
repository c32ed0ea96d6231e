using System.Buffers;
using System.Globalization;
using System.Text;

namespace ShedBot.Storage.Documents;

/// <summary>Texts that are looked up by. The file format refuses an index key above 1,023 bytes, so the length is checked at the door.</summary>
internal static class Keys
{
    public const int MaxBytes = 300;

    /// <summary>Below every digit and above nothing that a checked text may hold, so that "a" and "ab" never mix.</summary>
    private const char Gap = '\n';

    /// <summary>After every digit.</summary>
    private const char AfterDigits = ':';

    /// <exception cref="ArgumentException">The text is empty, too long, not well-formed, or holds control characters.</exception>
    public static string Checked(string text, string what)
    {
        if (string.IsNullOrEmpty(text) || Encoding.UTF8.GetByteCount(text) > MaxBytes || text.Any(char.IsControl) || !IsWellFormed(text))
        {
            throw new ArgumentException($"The {what} must be 1 to {MaxBytes} bytes of ordinary text, without control characters.", what);
        }

        return text;
    }

    /// <summary>A key that sorts first by the text, then by the digits.</summary>
    public static string Join(string text, string digits) => text + Gap + digits;

    public static string Number(long number) => number.ToString("D19", CultureInfo.InvariantCulture);

    /// <summary>The least key made from this text.</summary>
    public static string First(string text) => text + Gap;

    /// <summary>Above every key made from this text.</summary>
    public static string Last(string text) => text + Gap + AfterDigits;

    /// <summary>The text and the digits that <see cref="Join"/> made a key from.</summary>
    public static (string Text, string Digits) Parted(string key)
    {
        var gap = key.LastIndexOf(Gap);
        return (key[..gap], key[(gap + 1)..]);
    }

    private static bool IsWellFormed(ReadOnlySpan<char> text)
    {
        while (!text.IsEmpty)
        {
            if (Rune.DecodeFromUtf16(text, out _, out var used) != OperationStatus.Done)
            {
                return false;
            }

            text = text[used..];
        }

        return true;
    }
}
