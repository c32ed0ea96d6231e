using System.Collections.Immutable;

namespace ShedBot.Reasoning.Modelling;

/// <summary>
/// Something that can be seen: one normal state (index 0) and one or more abnormal states that faults, or the leak, produce.
/// </summary>
/// <remarks>
/// <para>With two states this is the leaky noisy-OR: P(abnormal | S) = 1 - (1 - leak) * prod over f in S of (1 - s_f)
/// (Pearl 1988, section 4.3.2; Henrion 1989).</para>
/// <para>With more than two states the causes compete: each cause adds a hazard h_fv = -ln(1 - s_f) * s_fv / s_f to state v, with
/// s_f = sum over v of s_fv; P(normal | S) = exp(-H), P(v | S) = (1 - exp(-H)) * H_v / H, where H_v sums the hazards of the leak and
/// of every present cause. One abnormal state gives back the noisy-OR to the last digit.</para>
/// </remarks>
/// <param name="Id">A name that is unique among the findings of a model.</param>
/// <param name="States">Two or more state ids; the first is the normal one.</param>
/// <param name="Leak">P(state | no listed cause present), aligned with <paramref name="States"/>; the normal entry is ignored. Each in [0, 1), sum below 1.</param>
/// <param name="Links">What each fault adds; a fault without a link adds nothing.</param>
public sealed record Finding(
    string Id, ImmutableArray<string> States, ImmutableArray<double> Leak, ImmutableArray<Link> Links)
{
    public const string No = "no", Yes = "yes";

    /// <summary>A finding that is there or not, with net links (cause alone, leak excluded; Diez 1993).</summary>
    public static Finding YesNo(string id, double leak, params IEnumerable<(string Fault, double Net)> links) => new(
        id, [No, Yes], [1 - leak, leak], [.. links.Select(l => Link.FromNet(l.Fault, 1 - l.Net, l.Net))]);
}

/// <summary>How strongly one fault produces each state of a finding, as net strengths: the cause alone, leak excluded.</summary>
/// <param name="Fault">The id of the fault.</param>
/// <param name="Net">Aligned with the finding's states; the normal entry is ignored. Each in [0, 1], sum at most 1.</param>
public sealed record Link(string Fault, ImmutableArray<double> Net)
{
    public static Link FromNet(string fault, params ImmutableArray<double> net) => new(fault, net);
}
