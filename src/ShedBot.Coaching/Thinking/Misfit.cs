using ShedBot.Coaching.Cases;
using ShedBot.Reasoning.Judging;

namespace ShedBot.Coaching.Thinking;

/// <summary>An answer that does not fit the others, and is worth asking for once more.</summary>
internal static class Misfit
{
    /// <summary>Bits of conflict below which a clash is no more than chance; a rule of thumb, no source.</summary>
    private const double Noticeable = 1.5;

    /// <summary>The most answers that one case asks again: a rider who is asked everything twice stops answering.</summary>
    private const int MostAskedAgain = 2;

    /// <summary>Measured only from this many pieces of evidence on; fewer cannot tell who is wrong.</summary>
    private const int LeastEvidence = 3;

    public static Conflict? Measure(CaseView view) =>
        view.Evidence.Length >= LeastEvidence ? Conflict.Of(view.Model, view.Evidence) : null;

    /// <returns>The check to put again, or null when the answers fit or it was asked again already.</returns>
    public static string? ToAskAgain(CaseView view, Conflict? conflict)
    {
        if (conflict is not { IsContradiction: true } || conflict.Bits < Noticeable) return null;
        if (view.Standing.Count(e => e.Kind == EntryKind.AskedAgain) >= MostAskedAgain) return null;
        var culprit = conflict.Culprit is { } at ? view.EvidenceFrom[at] : null;
        return culprit?.Kind == EntryKind.Answer && !WasAskedAgain(view, culprit.Subject) ? culprit.Subject : null;
    }

    /// <summary>True when the clash is left although its culprit was asked again.</summary>
    public static bool Stays(CaseView view, Conflict? conflict) =>
        conflict is { IsContradiction: true } && conflict.Bits >= Noticeable
        && conflict.Culprit is { } at && WasAskedAgain(view, view.EvidenceFrom[at].Subject);

    private static bool WasAskedAgain(CaseView view, string check) =>
        view.Standing.Any(e => e.Kind == EntryKind.AskedAgain && e.Subject == check);
}
