using System.Security.Cryptography;
using System.Text;
using ShedBot.Knowledge.Compiling;

namespace ShedBot.Knowledge.Loading;

/// <summary>A short name for exactly these rule texts and what was learnt beside them.</summary>
internal static class RulesVersion
{
    /// <summary>The first 12 hex digits of SHA-256 over every file's length and bytes, in the order of their names.</summary>
    /// <remarks>48 bits: among a million versions of a club's rules the chance that any two share one is below 0.2 %.</remarks>
    /// <param name="learnt">Laid over the rules; null or nothing gives the version of the rules alone.</param>
    public static string Of(IEnumerable<RuleText> inOrder, Learnt? learnt = null)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var file in inOrder)
        {
            hash.AppendData(BitConverter.GetBytes((long)file.Bytes.Length));
            hash.AppendData(file.Bytes.Span);
        }

        if (learnt is { IsNothing: false }) hash.AppendData(Encoding.UTF8.GetBytes(LearntText.Write(learnt)));
        return Convert.ToHexStringLower(hash.GetHashAndReset())[..12];
    }
}
