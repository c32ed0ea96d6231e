using static ShedBot.Knowledge.Tests.Samples.LampRules;

namespace ShedBot.Knowledge.Tests.Linting;

/// <summary>One rule of the linter at its boundary.</summary>
/// <param name="Bad">Rules on which it must fire.</param>
/// <param name="At">A piece of the line on which it must fire; empty where any line will do.</param>
/// <param name="Good">Rules as near to the bad ones as can be, on which it must be silent.</param>
internal sealed record LintCase(string Code, string Bad, string At, string Good)
{
    /// <summary>Bends the same piece of the good rules twice.</summary>
    public static LintCase Of(string code, string piece, string bad, string at, string good) => new(code, Bent(piece, bad), at, Bent(piece, good));
}
