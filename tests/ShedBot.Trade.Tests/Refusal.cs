namespace ShedBot.Trade.Tests;

/// <summary>A refused argument must be named, with the limit and with what was given.</summary>
internal static class Refusal
{
    public static void Says(string parameter, string message, Action call)
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(call);
        Assert.Equal(parameter, refused.ParamName);
        Assert.StartsWith(message, refused.Message, StringComparison.Ordinal);
        Assert.NotNull(refused.ActualValue);
    }
}
