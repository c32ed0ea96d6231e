using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Tests.Samples;

namespace ShedBot.Knowledge.Tests.Layers;

/// <summary>One rule of the linter at its boundary, in a club's file over the made-up lamp.</summary>
/// <param name="Bad">A club's file, without 'about', on which it must fire.</param>
/// <param name="At">A piece of the line on which it must fire.</param>
/// <param name="Good">A file as near to the bad one as can be, on which it must be silent.</param>
/// <param name="Swaps">What is other in the base than in the sample; pieces and what stands instead.</param>
internal sealed record LayerCase(string Code, string Bad, string At, string Good, params string[] Swaps)
{
    public const string About = "about: {covers: x, author: Mod A, source: common practice, date: 2026-05-01}\n";

    public RuleBase Base => Swaps.Length == 0 ? LampClub.Base : RuleBase.Of([RuleText.FromText(LampRules.File, LampRules.Bent(Swaps))]);

    /// <summary>Everything that is told about a club's file: when it is read, and when it is laid over the base.</summary>
    public (LayeredLoad? Load, List<Problems.Problem> Problems) Run(string club)
    {
        var read = Layer.Read(RuleText.FromText(LampClub.File, About + club));
        if (read.Layer is null) return (null, [.. read.Problems]);
        var load = LayeredRules.Load(Base, read.Layer);
        return (load, [.. read.Problems, .. load.Problems]);
    }
}
