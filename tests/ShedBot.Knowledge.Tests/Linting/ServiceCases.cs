using static ShedBot.Knowledge.Tests.Linting.LintCase;

namespace ShedBot.Knowledge.Tests.Linting;

/// <summary>R070 to R089: service tasks.</summary>
internal static class ServiceCases
{
    public static LintCase[] All { get; } =
    [
        Of("R070", "14 riding days", "14 ridingdays", "every:", "1 riding day"),
        Of("R070", "14 riding days", "riding days", "every:", "1 year"),
        Of("R070", "at: [1 riding day]", "at: [after the next ride]", "at:", "at: [before the next ride]"),
    ];
}
