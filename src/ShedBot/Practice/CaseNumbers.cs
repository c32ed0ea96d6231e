using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Practice;

/// <summary>Names new cases by member and number, so that a script always meets the same names; the member's own name is not in it.</summary>
internal sealed class CaseNumbers(IShedStore store)
{
    private const int MostLooked = 100;
    private string prefix = "";
    private int last;

    /// <summary>To be called before each turn: finds out which number comes next for this member.</summary>
    public async Task PrepareAsync(MemberId member, CancellationToken ct)
    {
        prefix = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(member.Value)).AsSpan(0, 5)) + "-";
        var cases = await store.CasesOfAsync(member, MostLooked, ct);
        last = cases.Select(c => Number(c.Id)).DefaultIfEmpty(0).Max();
    }

    public string Next() => string.Create(CultureInfo.InvariantCulture, $"{prefix}{++last:D3}");

    private int Number(CaseId id) => id.Value.StartsWith(prefix, StringComparison.Ordinal)
        && int.TryParse(id.Value.AsSpan(prefix.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0;
}
