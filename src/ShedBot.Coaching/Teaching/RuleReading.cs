using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Speaking;
using ShedBot.Coaching.Teaching.Writing;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Wording;

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
        MendList mend => [PhraseReading.Of(mend, now) ?? $"{Named(mend.Key, now)}, {Part(mend.Path)}: {(mend.Add is { } add ? $"\"{add}\" comes to it." : $"\"{mend.Drop}\" goes.")}"],
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
        RuleKind.Cover when now.Covers.TryGetValue(key.Id, out var cover) => [$"To open first: {cover.Called}; {Minutes(cover.Minutes)}, {cover.How.Length} {(cover.How.Length == 1 ? "step" : "steps")}."],
        RuleKind.Fact when now.Facts.TryGetValue(key.Id, out var fact) => [$"A fact of the bike: {fact.Called}. {fact.Ask} {Say.Join([.. fact.Values.Select(v => $"\"{v.Says}\" ({v.HowOften})")])}."],
        RuleKind.Service when now.Service.TryGetValue(key.Id, out var task) => [Service(task)],
        _ when after is null && Named(key, now).Contains($"'{key.Id}'", StringComparison.Ordinal) => [$"A new {Called(key.Kind)}; it is read aloud once it fits."],
        _ => [$"{Named(key, now)}, written anew."],
    };

    /// <summary>What a mechanic calls that kind of rule.</summary>
    public static string Called(RuleKind kind) => kind switch
    {
        RuleKind.Fault => "cause",
        RuleKind.Finding => "sign",
        RuleKind.Complaint => "trouble",
        RuleKind.HowTo => "answer",
        RuleKind.Fact => "fact of the bike",
        RuleKind.Check => "question",
        _ => RuleKinds.Word(kind),
    };

    private IEnumerable<string> Cause(FaultRule fault)
    {
        yield return $"A cause: {fault.Is}. How common it is: {fault.HowCommon}.";
        foreach (var (sign, states) in fault.ShowsAs.OrderByDescending(s => now.Complaints.ContainsKey(s.Key)).ThenBy(s => s.Key, StringComparer.Ordinal))
        {
            foreach (var (state, word) in states.OrderBy(s => s.Key, StringComparer.Ordinal)) yield return Shows(fault, sign, state, word);
        }

        foreach (var move in fault.MovedBy) yield return Moves(fault, move);
    }

    /// <summary>"With "another one" (which lever is fitted) it has 3 times the odds."</summary>
    private string Moves(FaultRule fault, ProfileCondition move)
    {
        var said = now.Facts.TryGetValue(move.Fact, out var fact) ? $"\"{fact.Values.FirstOrDefault(v => v.Id == move.Value)?.Says ?? move.Value}\" ({fact.Called})" : move.Fact;
        return move.Times == 0 ? $"With {said} it cannot be that {fault.Is}." : FormattableString.Invariant($"With {said} it has {move.Times:0.##} times the odds that {fault.Is}.");
    }

    private string Service(ServiceRule task)
    {
        ImmutableArray<string> due =
        [
            .. task.BeforeEachRide ? ["before every ride"] : Array.Empty<string>(),
            .. task.After.Select(a => $"{Say.Join([.. a.At.Select(IntervalWords.Text)])} after {Say.Join([.. a.Events.Select(Event)])}"),
            .. task.Every.IsEmpty ? [] : new[] { $"every {string.Join(" or ", task.Every.Select(IntervalWords.Text))}, whichever comes first" },
        ];
        return $"A service task: {Say.Sentence(task.Does)} Due {(due.IsEmpty ? "never" : Say.Join(due))}; {Minutes(task.Minutes)}, {(task.Hazard == "none" ? "no hazard" : $"hazard {task.Hazard}")}.";
    }

    private string Event(string id) => id == ServiceAfter.Fitted ? "the kit was fitted"
        : now.Repairs.TryGetValue(id, out var repair) ? $"\"{repair.Does}\""
        : now.Service.TryGetValue(id, out var task) ? $"\"{task.Called}\"" : id;

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
            case (_, ["cover"]) when now.Covers.TryGetValue(mend.Now, out var cover):
                return $"{Named(mend.Key, before)} lies behind {cover.Called}.{(mend.Was is not null && before.Covers.TryGetValue(mend.Was, out var old) ? $" Before it was: {old.Called}." : "")}";
            case (_, ["hands on"]):
                return $"{Named(mend.Key, before)}: {(mend.Now == "yes" ? "hands go near the machine, so the question for that comes first." : "hands stay away from the machine.")}";
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
        (RuleKind.Cover, var id) when knowledge.Covers.TryGetValue(id, out var r) => $"What is opened first, \"{r.Called}\"",
        (RuleKind.Fact, var id) when knowledge.Facts.TryGetValue(id, out var r) => $"The fact of the bike \"{r.Called}\"",
        (RuleKind.Word, var id) => $"The word \"{id}\"",
        _ => $"The {RuleKinds.Word(key.Kind)} '{key.Id}'",
    };

    private static string Part(RulePath path) => path.Parts is ["states" or "values", _, var last] ? $"an answer, {Part(new RulePath(last))}" : path.Text switch
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
