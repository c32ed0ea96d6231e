namespace ShedBot.Trade.Tests;

/// <summary>Compares a result with a value as it stands in a table.</summary>
internal static class Printed
{
    /// <summary>Half a unit in the last printed decimal: the tightest a printed value can ask for.</summary>
    public static void Matches(double printed, int decimals, double actual) =>
        Assert.InRange(actual - printed, -Slack(decimals), Slack(decimals));

    /// <summary>A share of the expected value, 0.5 % unless told.</summary>
    public static void Within(double expected, double actual, double share = 0.005) =>
        Assert.InRange(actual, expected * (1 - share), expected * (1 + share));

    private static double Slack(int decimals) => (0.5 * Math.Pow(10, -decimals)) + 1e-9;
}
