using System.Security.Cryptography;

namespace ShedBot.Knowledge.Loading;

/// <summary>A short name for exactly these rule texts.</summary>
internal static class RulesVersion
{
    /// <summary>The first 12 hex digits of SHA-256 over every file's length and bytes, in the order of their names.</summary>
    /// <remarks>48 bits: among a million versions of a club's rules the chance that any two share one is below 0.2 %.</remarks>
    public static string Of(IEnumerable<RuleText> inOrder)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var file in inOrder)
        {
            hash.AppendData(BitConverter.GetBytes((long)file.Bytes.Length));
            hash.AppendData(file.Bytes.Span);
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset())[..12];
    }
}
