using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Learning.Counting;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Learning.Reports;

/// <summary>Tells cases anew, one after the other. The coach asks riders with the same trouble the same first questions, so much of what is believed is worked out once for many.</summary>
/// <param name="cases">How many there are to tell.</param>
/// <param name="progress">How far it is, 0 to 1; or null.</param>
internal sealed class Retelling(KnowledgeBase knowledge, int cases, IProgress<double>? progress, CancellationToken ct)
{
    /// <summary>Beliefs that are kept; each takes some hundreds of bytes.</summary>
    private const int MostKept = 20_000;

    private readonly CaseWeigher weigher = CaseWeigher.AsCoach(new RuleSheet(knowledge));
    private readonly Dictionary<string, ImmutableArray<double>> believed = new(StringComparer.Ordinal);
    private readonly HashSet<CaseId> begun = [];

    public RetoldCase Tell(ClosedCase closed) => new(
        closed,
        StoryReader.IsMended(closed),
        [.. closed.Case.Standing.Where(e => e.Kind == EntryKind.Complaint && knowledge.Complaints.ContainsKey(e.Subject)).Select(e => e.Subject).Distinct()],
        this);

    public bool Knows(string check) => knowledge.Checks.ContainsKey(check);

    /// <summary>What a repair is for, by id.</summary>
    public ImmutableArray<string> Mendable(string repair) => knowledge.Repairs.TryGetValue(repair, out var rule)
        ? [.. rule.Mends.Keys.Where(f => knowledge.Faults.ContainsKey(f)).Order(StringComparer.Ordinal)]
        : [];

    public string? Likeliest(ImmutableArray<string> faults, ClosedCase closed) => Believed(closed, closed.Case.Entries.Length) is { } chances
        ? faults.MaxBy(f => chances[knowledge.Model.FaultAt(f)])
        : null;

    /// <summary>By fault, after so many lines of the case; null while they tell nothing.</summary>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public ImmutableArray<double>? Believed(ClosedCase closed, int lines)
    {
        ct.ThrowIfCancellationRequested();
        if (begun.Add(closed.Case.Id)) progress?.Report((double)begun.Count / cases);
        if (lines <= 0) return null;
        var part = closed with { Case = closed.Case with { Entries = closed.Case.Entries[..lines] } };
        if (StoryReader.Read(part, knowledge) is not { } story) return null;
        var key = KeyOf(story);
        if (believed.TryGetValue(key, out var known)) return known;
        ImmutableArray<double> chances = [.. weigher.Chances(story)];
        if (believed.Count >= MostKept) believed.Clear();
        return believed[key] = chances;
    }

    /// <summary>All of a story that what is believed hangs on.</summary>
    private static string KeyOf(CaseStory story)
    {
        var key = new StringBuilder(story.Opening);
        for (var at = 0; at < story.Stretches.Length; at++)
        {
            key.Append('#');
            foreach (var said in story.Stretches[at])
            {
                key.Append(said.Finding).Append(':');
                foreach (var weight in said.Weights) key.Append(weight.ToString("R", CultureInfo.InvariantCulture)).Append('/');
            }

            if (at < story.Trials.Length) key.Append(story.Trials[at].Repair).Append('=').Append((int)story.Trials[at].Said);
        }

        return key.ToString();
    }
}
