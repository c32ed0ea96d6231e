using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Speaking;
using ShedBot.Coaching.Teaching.Writing;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Teaching;

/// <summary>Changes read aloud, as a mechanic would say them.</summary>
/// <param name="before">The club's rules as they stand.</param>
/// <param name="after">The club's rules with the changes; null when they do not fit together yet.</param>
public sealed class RuleReading(KnowledgeBase before, KnowledgeBase? after)
{
    private readonly KnowledgeBase now = after ?? before;

    public ImmutableArray<string> Of(IEnumerable<RuleChange> changes) => [.. changes.SelectMany(Of)];

    private IEnumerable<string> Of(RuleChange change) => change switch
    {
        PutRule put => Whole(put.Key),
        DropRule drop => [$"{Named(drop.Key, before)} goes."],
        MendValue mend => [Mended(mend)],
        MendList mend => [$"{Named(mend.Key, now)}, {Part(mend.Path)}: {(mend.Add is { } add ? $"\"{add}\" comes to it." : $"\"{mend.Drop}\" goes.")}"],
        Unmend unmend => [$"{Named(unmend.Key, now)}, {Part(unmend.Path)}: as the project has it."],
        Retire retire => [$"{Named(retire.Key, before)} is out of use: {retire.Because}"],
        Restore restore => [$"{Named(restore.Key, now)} is back in use."],
        _ => [],
    };

    private IEnumerable<string> Whole(RuleKey key) => key.Kind switch
    {
        RuleKind.Fault when now.Faults.TryGetValue(key.Id, out var fault) => Cause(fault),
        RuleKind.Check when now.Checks.TryGetValue(key.Id, out var check) => [Check(check)],
        RuleKind.Finding when now.Findings.TryGetValue(key.Id, out var finding) =>
            [$"Something to look at: {finding.Means}. It is {Say.Join([.. finding.States.Select(s => $"\"{s.Says}\"")])}.{Stops(finding)}"],
        RuleKind.Repair when now.Repairs.TryGetValue(key.Id, out var repair) => Repair(repair),
        RuleKind.Complaint when now.Complaints.TryGetValue(key.Id, out var complaint) => [$"A trouble: {complaint.Called}. {Say.Sentence(complaint.InShort)}"],
        RuleKind.HowTo when now.HowTos.TryGetValue(key.Id, out var howTo) => [$"An answer: {howTo.Called}."],
        _ => [$"{Named(key, now)}, written anew."],
    };

    private IEnumerable<string> Cause(FaultRule fault)
    {
        yield return $"A cause: {fault.Is}. It is {fault.HowCommon}.";
        foreach (var (sign, states) in fault.ShowsAs.OrderByDescending(s => now.Complaints.ContainsKey(s.Key)).ThenBy(s => s.Key, StringComparer.Ordinal))
        {
            foreach (var (state, word) in states.OrderBy(s => s.Key, StringComparer.Ordinal)) yield return Shows(fault, sign, state, word);
        }
    }

    private string Check(CheckRule check) =>
        $"A question: {check.Ask} It tells {Means(check.Tells)}; {Minutes(check.Minutes)}, {(check.Hazard == "none" ? "no hazard" : $"hazard {check.Hazard}")}{Behind(check.Cover)}.";

    private IEnumerable<string> Repair(RepairRule repair)
    {
        yield return $"A repair: {Say.Sentence(repair.Does)} {repair.Steps.Length} {(repair.Steps.Length == 1 ? "step" : "steps")}, {Minutes(repair.Minutes)}, hazard {repair.Hazard}{Behind(repair.Cover)}.{(repair.ForHelper is null ? "" : " For a practised hand or a licensed shop.")}";
        foreach (var (fault, word) in repair.Mends.OrderBy(m => m.Key, StringComparer.Ordinal)) yield return Mends(fault, repair, word);
    }

    private string Mended(MendValue mend)
    {
        var was = mend.Was is null ? "" : $" Before it was: {Word(mend.Was)}.";
        switch (mend.Key.Kind, mend.Path.Parts)
        {
            case (RuleKind.Fault, ["shows as", var sign, var state]) when now.Faults.TryGetValue(mend.Key.Id, out var fault):
                return Shows(fault, sign, state, mend.Now) + was;
            case (RuleKind.Repair, ["mends", var fault]) when now.Repairs.TryGetValue(mend.Key.Id, out var repair):
                return Mends(fault, repair, mend.Now) + was;
            case (RuleKind.Fault, ["how common"]) when now.Faults.TryGetValue(mend.Key.Id, out var fault):
                return $"{Say.Sentence(fault.Is)} That is {mend.Now}.{was}";
            default:
                return $"{Named(mend.Key, before)}, {Part(mend.Path)}: {(mend.Was is null ? "" : $"was \"{CleanText.OneLine(mend.Was, 200)}\", ")}is \"{CleanText.OneLine(mend.Now, 200)}\".";
        }
    }

    /// <summary>"If the small ball is missing, riders almost always (95 to 99 %) say: the clutch drags."</summary>
    private string Shows(FaultRule fault, string sign, string state, string word) =>
        now.Complaints.TryGetValue(sign, out var complaint) ? $"If {fault.Is}, riders {HowOften(word)} say: {complaint.Called.TrimEnd('.')}."
        : now.Findings.TryGetValue(sign, out var finding) ? $"If {fault.Is}, you {HowOften(word)} find: \"{finding.States.FirstOrDefault(s => s.Id == state)?.Says ?? state}\" ({finding.Means})."
        : $"If {fault.Is}: {sign} {HowOften(word)}.";

    private string Mends(string fault, RepairRule repair, string word) =>
        $"If {(now.Faults.TryGetValue(fault, out var rule) ? rule.Is : fault)}, it is {HowOften(word)} mended when you {repair.Does.TrimEnd('.')}.";

    private string Means(string finding) =>
        now.Findings.TryGetValue(finding, out var rule) ? rule.Means : now.Complaints.TryGetValue(finding, out var complaint) ? $"whether {complaint.Called}" : finding;

    private string Behind(string? cover) => cover is not null && now.Covers.TryGetValue(cover, out var rule) ? $", behind {rule.Called}" : "";

    private static string HowOften(string word) => Scales.BandOf(word) is { Length: > 0 } band ? $"{Scales.Adverb(word)} ({band})" : word;

    private static string Word(string text) => Scales.BandOf(text) is { Length: > 0 } band ? $"{text} ({band})" : text;

    private static string Minutes(double minutes) => FormattableString.Invariant($"{minutes:0.##} {(minutes == 1 ? "minute" : "minutes")}");

    private static string Stops(FindingRule finding) =>
        finding.States.FirstOrDefault(s => s.StopRiding is not null) is { } state ? $" \"{state.Says}\" means: do not ride. {state.StopRiding}" : "";

    /// <summary>The rule by what it says of itself, never by its id alone.</summary>
    private static string Named(RuleKey key, KnowledgeBase knowledge) => (key.Kind, key.Id) switch
    {
        (RuleKind.Fault, var id) when knowledge.Faults.TryGetValue(id, out var r) => $"The cause \"{r.Is}\"",
        (RuleKind.Check, var id) when knowledge.Checks.TryGetValue(id, out var r) => $"The question \"{r.Ask}\"",
        (RuleKind.Repair, var id) when knowledge.Repairs.TryGetValue(id, out var r) => $"The repair \"{r.Does}\"",
        (RuleKind.Complaint, var id) when knowledge.Complaints.TryGetValue(id, out var r) => $"The trouble \"{r.Called}\"",
        (RuleKind.Finding, var id) when knowledge.Findings.TryGetValue(id, out var r) => $"What is looked at, \"{r.Means}\"",
        (RuleKind.HowTo, var id) when knowledge.HowTos.TryGetValue(id, out var r) => $"The answer \"{r.Called}\"",
        (RuleKind.Service, var id) when knowledge.Service.TryGetValue(id, out var r) => $"The service task \"{r.Called}\"",
        (RuleKind.Word, var id) => $"The word \"{id}\"",
        _ => $"The {RuleKinds.Word(key.Kind)} '{key.Id}'",
    };

    private static string Part(RulePath path) => path.Parts is ["states", _, var last] ? $"an answer, {Part(new RulePath(last))}" : path.Text switch
    {
        "ask" => "the question",
        "riders say" or "riders ask" => "what riders say",
        "why" => "why it is asked",
        "how" => "how to look",
        "because" => "why it gives the trouble",
        "is" => "what is wrong",
        "does" => "what it does",
        var other => other,
    };
}
