namespace ShedBot.Tests.Serving;

/// <summary>An invented token, of the shape that real ones have: three parts of letters and digits with dots between.</summary>
internal static class Secret
{
    public const string Token = "SW52ZW50ZWRSaWRlck9mTm93aGVyZQ.GnotAt.ThisIsNoTokenOfAnyBotInTheWholeWorld00";

    /// <summary>Neither whole nor in part, nor turned around as some logs do with secrets.</summary>
    public static void AssertNotIn(string text)
    {
        foreach (var part in Token.Split('.')) Assert.DoesNotContain(part, text, StringComparison.OrdinalIgnoreCase);
    }
}
