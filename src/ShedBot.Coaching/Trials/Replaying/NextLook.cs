using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Thinking;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Trials.Replaying;

/// <summary>What the coach would do right after the complaint. A decision takes some hundredths of a second, so only the commonest situations are looked at.</summary>
internal sealed class NextLook(RulesPair rules, CoachOptions options)
{
    private const int MostSituations = 40, MostSwaps = 6;

    /// <param name="moments">After the complaint, one a case.</param>
    public NextSteps Of(IReadOnlyList<Moment> moments, CancellationToken ct)
    {
        var situations = moments
            .GroupBy(m => (BeliefQuestion.Of(View(m, rules.Old)), BeliefQuestion.Of(View(m, rules.New))))
            .Select(g => (First: g.First(), Cases: g.Count()))
            .OrderByDescending(s => s.Cases).ThenBy(s => s.First.Case.Id.Value, StringComparer.Ordinal)
            .Take(MostSituations)
            .ToList();
        var swaps = new Swap[situations.Count];
        Parallel.For(0, swaps.Length, new ParallelOptions { CancellationToken = ct, MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
            swaps[i] = new Swap(Step(situations[i].First, rules.Old), Step(situations[i].First, rules.New), situations[i].Cases));
        var changed = swaps.Where(s => s.Old != s.New).ToList();
        return new NextSteps(
            swaps.Length, swaps.Sum(s => s.Count), changed.Sum(s => s.Count), Swaps.Commonest(changed.Select(s => (s.Old, s.New, s.Count)), MostSwaps));
    }

    private static CaseView View(Moment moment, KnowledgeBase knowledge) => CaseView.Of(moment.Case, moment.Bike, knowledge, moment.At);

    /// <summary>The step by name. Where the bike must be made safe first, what comes right after that.</summary>
    private string Step(Moment moment, KnowledgeBase knowledge)
    {
        var move = new NextMove(View(moment, knowledge), options).Choose();
        if (move is AskReady)
        {
            var ready = new CaseEntry(moment.Case.Turn, EntryKind.Ready, "", null, 1, moment.At);
            move = new NextMove(View(moment with { Case = moment.Case with { Entries = moment.Case.Entries.Add(ready) } }, knowledge), options).Choose();
        }

        return move switch
        {
            AskFact fact => $"fact:{fact.Fact}",
            AskCheck check => $"check:{check.Check}",
            AskAgain again => $"check:{again.Check}",
            ShowRepair repair => $"repair:{repair.Repair}",
            _ => "helper:",
        };
    }
}
