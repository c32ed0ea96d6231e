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

    /// <summary>Measured only from this many pieces of evidence on; one cannot clash.</summary>
    private const int LeastEvidence = 2;

    /// <summary>An answer may be the culprit when leaving it out frees nearly as much of the clash as the best candidate does.</summary>
    private const double NearlyTheCulprit = 0.8;

    public static Conflict? Measure(CaseView view) =>
        view.Evidence.Length >= LeastEvidence ? Conflict.Of(view.Model, view.Evidence) : null;

    /// <returns>The check to put again, or null when the answers fit or it was asked again already.</returns>
    public static string? ToAskAgain(CaseView view, Conflict? conflict)
    {
        if (conflict is not { IsContradiction: true } || conflict.Bits < Noticeable) return null;
        if (view.Standing.Count(e => e.Kind == EntryKind.AskedAgain) >= MostAskedAgain) return null;
        var most = conflict.Drops.Max();
        return view.EvidenceFrom
            .Select((entry, at) => (entry, Drop: conflict.Drops[at]))
            .Where(e => e.entry.Kind == EntryKind.Answer && e.Drop >= NearlyTheCulprit * most && !WasAskedAgain(view, e.entry.Subject))
            .OrderByDescending(e => e.Drop)
            .Select(e => e.entry.Subject)
            .FirstOrDefault();
    }

    /// <summary>True when the clash is left although its culprit was asked again.</summary>
    public static bool Stays(CaseView view, Conflict? conflict) =>
        conflict is { IsContradiction: true } && conflict.Bits >= Noticeable
        && conflict.Culprit is { } at && WasAskedAgain(view, view.EvidenceFrom[at].Subject);

    private static bool WasAskedAgain(CaseView view, string check) =>
        view.Standing.Any(e => e.Kind == EntryKind.AskedAgain && e.Subject == check);
}
