using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace ShedBot.Discord.Drawing;

/// <summary>A short name that is always the same for the same text: 22 letters, digits, dashes and underscores, of the first 128 bits of SHA-256.</summary>
internal static class ShortName
{
    public static string Of(string text)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(Encoding.UTF8.GetBytes(text), hash);
        return Base64Url.EncodeToString(hash[..16]);
    }
}
