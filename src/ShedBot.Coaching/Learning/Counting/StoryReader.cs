using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Thinking;
using ShedBot.Knowledge;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching.Learning.Counting;

/// <summary>Reads a closed case through the rules: its entries as evidence, as the coach reads them, cut at the trials of repairs.</summary>
internal static class StoryReader
{
    /// <returns>Null when the case tells nothing of these rules: no complaint that they know was told.</returns>
    public static CaseStory? Read(ClosedCase closed, KnowledgeBase knowledge)
    {
        var (model, counting) = (knowledge.Model, Counting(closed.Case.Entries));
        var complaints = ImmutableArray.CreateBuilder<ToldComplaint>();
        var hints = new Dictionary<int, double[]>();
        var stretches = ImmutableArray.CreateBuilder<ImmutableArray<SaidOf>>();
        var trials = ImmutableArray.CreateBuilder<TrialTold>();
        var answers = new List<CaseEntry>();
        foreach (var entry in counting)
        {
            if (Trial(entry, knowledge) is { } trial)
            {
                if (entry.Kind == EntryKind.CameBack && trials is [.., { Said: TrialSaid.Held } held] && held.Repair == trial.Repair)
                {
                    trials[^1] = trial;
                    continue;
                }

                stretches.Add(Stretch(answers, knowledge));
                trials.Add(trial);
                answers.Clear();
                continue;
            }

            switch (EntryEvidence.Of(entry, knowledge))
            {
                case FindingTold told when trials.Count == 0 && told.State == Finding.Yes:
                    var at = model.FindingAt(told.Finding);
                    if (complaints.All(c => c.Finding != at)) complaints.Add(new ToldComplaint(at, told.Error.FalsePositive, told.Error.FalseNegative));
                    break;
                case FindingTold told when trials.Count == 0:
                    Hint(hints, model.FindingAt(told.Finding), AnswerChance.Column(told.Error, 2, 0));
                    break;
                case FindingHinted hinted when trials.Count == 0:
                    Hint(hints, model.FindingAt(hinted.Finding), [.. hinted.Weights]);
                    break;
                case CheckAnswered:
                    answers.Add(entry);
                    break;
            }
        }

        if (complaints.Count == 0) return null;
        stretches.Add(Stretch(answers, knowledge));
        return new CaseStory(
            closed.Case.Id,
            closed.Case.Member,
            closed.Outcome.At,
            IsMended(closed) && trials is [.., { Said: TrialSaid.Held }],
            Facts(closed, knowledge),
            [.. complaints.OrderBy(c => c.Finding)],
            [.. hints.OrderBy(h => h.Key).Select(h => new SaidOf(h.Key, [.. h.Value]))],
            stretches.ToImmutable(),
            trials.ToImmutable());
    }

    /// <summary>Closed as solved, and not come back since.</summary>
    public static bool IsMended(ClosedCase closed) =>
        closed.Outcome is { Phase: CasePhase.Solved, Repair: { } repair } && closed.Case.Phase == CasePhase.Solved
        && closed.Case.Standing.LastOrDefault(e => e.Subject == repair && e.Kind is EntryKind.RepairHeld or EntryKind.CameBack) is { Kind: EntryKind.RepairHeld };

    /// <summary>
    /// The lines that stand, and answers that were asked for once more because they did not fit: the coach goes by the second one alone, but picking out
    /// answers that do not fit and forgetting them would make all counts fit too well.
    /// </summary>
    private static IEnumerable<CaseEntry> Counting(ImmutableArray<CaseEntry> entries)
    {
        var doubted = new HashSet<int>();
        for (var at = 0; at < entries.Length; at++)
        {
            if (entries[at].Kind != EntryKind.AskedAgain) continue;
            for (var before = at - 1; before >= 0; before--)
            {
                if (entries[before] is not { Kind: EntryKind.Answer } answer || answer.Subject != entries[at].Subject) continue;
                doubted.Add(before);
                break;
            }
        }

        return entries.Where((e, at) => !e.Struck || doubted.Contains(at));
    }

    private static TrialTold? Trial(CaseEntry entry, KnowledgeBase knowledge)
    {
        TrialSaid? said = entry.Kind switch
        {
            EntryKind.RepairHeld => TrialSaid.Held,
            EntryKind.RepairBetter => TrialSaid.Better,
            EntryKind.RepairFailed => TrialSaid.NoChange,
            EntryKind.CameBack => TrialSaid.CameBack,
            _ => null,
        };
        return said is { } how && knowledge.Repairs.ContainsKey(entry.Subject) ? new TrialTold(entry.Subject, how) : null;
    }

    private static ImmutableArray<SaidOf> Stretch(List<CaseEntry> answers, KnowledgeBase knowledge)
    {
        var (model, said) = (knowledge.Model, new SortedDictionary<int, double[]>());
        foreach (var answer in answers)
        {
            var check = model.Checks[model.CheckAt(answer.Subject)];
            var finding = model.FindingAt(check.Finding);
            var column = AnswerChance.Column(check.Error, model.Findings[finding].States.Length, model.StateAt(finding, answer.Value!));
            Hint(said, finding, column);
        }

        return [.. said.Select(s => new SaidOf(s.Key, [.. s.Value]))];
    }

    private static void Hint(IDictionary<int, double[]> said, int finding, double[] column)
    {
        if (said.TryGetValue(finding, out var known)) column = [.. column.Zip(known, (a, b) => a * b)];
        said[finding] = column;
    }

    private static ImmutableSortedDictionary<string, string> Facts(ClosedCase closed, KnowledgeBase knowledge)
    {
        var facts = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        // What was learnt of the bike later is not held against what was asked then.
        var bike = closed.Bike is { } kept ? kept with { Facts = kept.Facts.RemoveRange(kept.Facts.Where(f => f.Value.Learnt > closed.Outcome.At).Select(f => f.Key)) } : null;
        if (bike is not null) facts.AddRange(BikeFacts.Fresh(bike, knowledge, closed.Case.OpenedAt));
        foreach (var entry in closed.Case.Standing.Where(e => e is { Kind: EntryKind.Fact, Value: not null })) facts[entry.Subject] = entry.Value!;
        return facts.ToImmutable();
    }
}
