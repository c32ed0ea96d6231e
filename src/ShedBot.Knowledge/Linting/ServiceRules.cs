using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Linting;

/// <summary>R070 to R089: service tasks.</summary>
internal static class ServiceRules
{
    public static readonly LintRule NoInterval = new("R070", Severity.Error, "an interval that cannot be read",
        "An interval is an amount and what it is counted in: riding days (days on which the bike was ridden), hours with the engine running, km, or days, weeks, months and years of the calendar. After an event it may also be 'before the next ride'.");
}
