using ShedBot.DiscordStandIn.Checks;

namespace ShedBot.Discord.Tests.Checks;

internal static class Holds
{
    public static readonly LimitsCheck Ours = new(Strictness.Strict), Theirs = new(Strictness.Lenient);

    public static void Clean(CheckedRequest request, IRequestCheck? check = null) => Assert.Empty((check ?? Ours).Violations(request));

    /// <summary>Exactly one thing is wrong, and it is this.</summary>
    public static void Refuses(string start, CheckedRequest request, IRequestCheck? check = null) =>
        Assert.StartsWith(start, Assert.Single((check ?? Ours).Violations(request)), StringComparison.Ordinal);
}
