using ShedBot.Serving;

namespace ShedBot.Tests.Serving;

public sealed class CaseIdsTests
{
    /// <summary>What is said is named case.turn.number, and the chat takes 25 characters for that.</summary>
    [Fact]
    public void Next_InTheLongestNameOfSomethingSaid_FitsTheChat() => Assert.True($"{CaseIds.Next()}.9999.999".Length <= 25);

    /// <summary>Source: the base 32 that D. Crockford published ("Base 32 Encoding"): 0 to 9 and A to Z without I, L, O, U; from memory.</summary>
    [Fact]
    public void Alphabet_IsThePublishedOne() =>
        Assert.Equal(CaseIds.Alphabet, string.Concat("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ".Where(c => !"ILOU".Contains(c, StringComparison.Ordinal))));

    [Fact]
    public void Next_AThousandTimes_IsOfTheAlphabetAndNeverTheSame()
    {
        var ids = Enumerable.Range(0, 1000).Select(_ => CaseIds.Next()).ToList();
        Assert.Equal(1000, ids.Distinct(StringComparer.Ordinal).Count());
        Assert.All(ids, id => Assert.True(id.Length == CaseIds.Length && id.All(c => CaseIds.Alphabet.Contains(c, StringComparison.Ordinal)), id));
        // Each of the 32 is as likely as another: none missing in 12,000 draws, since that is a chance below 1e-160.
        Assert.Equal(32, ids.SelectMany(id => id).Distinct().Count());
    }
}
