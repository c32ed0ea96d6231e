using System.Collections.Concurrent;
using System.Collections.Immutable;
using ShedBot.Coaching.Thinking;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;
using ShedBot.Reasoning.Inference;

namespace ShedBot.Coaching.Trials.Replaying;

/// <summary>The beliefs of many cases under one set of rules, each question worked out once, several at a time.</summary>
internal sealed class BeliefBook(KnowledgeBase knowledge)
{
    private const int Few = 64;

    private readonly Dictionary<BeliefQuestion, CaseView> asked = [];
    private readonly ConcurrentDictionary<BeliefQuestion, ImmutableArray<double>> answers = [];

    public KnowledgeBase Knowledge => knowledge;

    public BeliefQuestion Ask(Moment moment)
    {
        var view = CaseView.Of(moment.Case, moment.Bike, knowledge, moment.At);
        var question = BeliefQuestion.Of(view);
        asked.TryAdd(question, view);
        return question;
    }

    /// <summary>The view that first asked it.</summary>
    public CaseView ViewOf(BeliefQuestion question) => asked[question];

    /// <returns>P(fault) by the rules' order of faults, 0 for one that this bike cannot have; empty where nothing can give what was heard.</returns>
    public ImmutableArray<double> this[BeliefQuestion question] => answers[question];

    /// <param name="done">Told of each question that is worked out.</param>
    public void WorkOut(Action done, CancellationToken ct)
    {
        var options = new ParallelOptions { CancellationToken = ct, MaxDegreeOfParallelism = Environment.ProcessorCount };
        var kinds = asked.GroupBy(a => a.Key.Bike, StringComparer.Ordinal).Select(g => g.ToList()).ToLookup(g => g.Count <= Few);
        // Bikes of one kind share a prepared model, which is let go with them.
        Parallel.ForEach(kinds[true], options, kind =>
        {
            var model = MachineProfile.ModelFor(knowledge, kind[0].Value.Facts);
            foreach (var (question, view) in kind)
            {
                ct.ThrowIfCancellationRequested();
                Answer(question, view, model);
                done();
            }
        });
        foreach (var kind in kinds[false])
        {
            var model = MachineProfile.ModelFor(knowledge, kind[0].Value.Facts);
            Parallel.ForEach(kind, options, q =>
            {
                Answer(q.Key, q.Value, model);
                done();
            });
        }
    }

    public int Questions => asked.Count;

    private void Answer(BeliefQuestion question, CaseView view, Reasoning.Modelling.DiagnosticModel model)
    {
        try
        {
            var belief = Inferrer.Infer(model, view.Evidence, CaseView.Bounds);
            var at = model.Faults.Select((f, i) => (f.Id, i)).ToDictionary(f => f.Id, f => f.i, StringComparer.Ordinal);
            answers[question] = [.. knowledge.Model.Faults.Select(f => at.TryGetValue(f.Id, out var i) ? Math.Clamp(belief.Marginal(i), 0, 1) : 0)];
        }
        catch (ImpossibleEvidenceException)
        {
            answers[question] = [];
        }
    }
}
