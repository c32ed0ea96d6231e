using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Thinking;
using ShedBot.Reasoning.Explaining;

namespace ShedBot.Coaching.Speaking;

/// <summary>Which answers speak for and against a cause, in words.</summary>
internal static class Reasons
{
    /// <summary>Weights in decibans from which a reason speaks strongly, or plainly: tenfold and twofold odds.</summary>
    private const double Strong = 10, Plain = 3;

    public static IEnumerable<CardBlock> Blocks(CaseView view, string fault, int mostFor, int mostAgainst)
    {
        if (view.Evidence.IsEmpty) yield break;
        var reasons = Explainer.Explain(view.Model, view.Evidence).For(fault);
        foreach (var block in Say.List("What speaks for it", reasons.For.Take(mostFor).Select(r => Line(view, r)))) yield return block;
        foreach (var block in Say.List("What speaks against it", reasons.Against.Take(mostAgainst).Select(r => Line(view, r)))) yield return block;
    }

    private static string Line(CaseView view, Reason reason)
    {
        var strength = Math.Abs(reason.Decibans) switch
        {
            >= Strong => "strongly",
            >= Plain => "clearly",
            _ => "a little",
        };
        return string.Create(CultureInfo.InvariantCulture, $"{Say.Capital(Told.Line(view, view.EvidenceFrom[reason.Evidence]))} ({strength})");
    }
}
