using System.Security.Cryptography;

namespace ShedBot.Serving;

/// <summary>Names new cases by chance alone: nothing of member, club or time can be read off them. 60 bits: among a million cases two of one name are a chance of 1 in 2 million.</summary>
internal static class CaseIds
{
    public const int Length = 12;

    /// <summary>Base 32 as Crockford published it: the digits and the letters without I, L, O and U, so that nobody mistakes one for another.</summary>
    public const string Alphabet = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

    public static string Next() => RandomNumberGenerator.GetString(Alphabet, Length);
}
