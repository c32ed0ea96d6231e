using System.Collections.Immutable;
using System.Text.RegularExpressions;
using ShedBot.Coaching.Speaking;
using ShedBot.Coaching.Teaching.Writing;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Coaching.Teaching;

/// <summary>Something that does not fit, in words for a mechanic.</summary>
/// <param name="Question">The question of the sheet that mends it; null when none does.</param>
/// <param name="Stops">True when nothing can be published with it.</param>
public sealed record PlainProblem(string Say, string? Question, bool Stops);

/// <summary>Puts what the linter says into words that a mechanic understands, tied to the question that mends it.</summary>
internal static partial class PlainProblems
{
    /// <summary>What each code is about, and the questions that can mend it, best first. Codes that are not listed keep the linter's own words.</summary>
    private static readonly ImmutableDictionary<string, (string Say, ImmutableArray<string> Questions)> ByCode = new Dictionary<string, (string, ImmutableArray<string>)>(StringComparer.Ordinal)
    {
        ["R017"] = ("A text is too long to be read beside a bike. Make it shorter, or split it into steps.", ["repair-steps", "answer", "text", "lines"]),
        ["R030"] = ("That is seen more often on sound bikes than you say it is seen with this cause, so it would speak against it. Choose a stronger word, or another sign.", ["sign-strength", "sign-2-strength", "sign-3-strength", "complaint-strength", "word"]),
        ["R031"] = ("Those strengths cannot all be so at once: one thing cannot be found in two ways nearly always. Weaken one of them.", ["word", "sign-strength", "sign-2-strength", "sign-3-strength", "complaint-strength"]),
        ["R033"] = ("That sign is found just as often on sound bikes, so it tells nothing. Choose a stronger word, or another sign.", ["sign-strength", "sign-2-strength", "sign-3-strength", "complaint-strength", "word"]),
        ["R034"] = ("That cannot be found nearly always: sound bikes often show something else there. Weaken the word.", ["word", "sign-strength", "sign-2-strength", "sign-3-strength"]),
        ["R035"] = ("With this cause the sign is hardly ever there, so looking for it finds next to nothing. Was that meant the other way round?", ["sign-strength", "sign-2-strength", "word"]),
        ["R040"] = ("Nothing that can be looked at shows this cause, so the coach can only guess it. Name a sign.", ["sign", "sign-2"]),
        ["R041"] = ("Nothing tells this cause from another one. Name a sign that only one of the two shows.", ["sign-2", "sign", "sign-3", "word"]),
        ["R044"] = ("No cause gives this trouble any more. Take the trouble out of use too, or leave the cause in.", ["rule", "complaint"]),
        ["R045"] = ("The coach would ask for it and learn nothing from the answer. Say which cause it makes likelier.", ["fact-moves-1", "fact"]),
        ["R047"] = ("That answer makes no difference to the cause. Choose a stronger word, or another answer.", ["fact-moves-1-times", "fact-moves-2-times"]),
        ["R048"] = ("Nothing lies behind it yet. Pick the checks and repairs that do, or write them next: they can pick it.", ["cover-behind"]),
        ["R050"] = ("Nothing mends this cause, so the coach hands it to a helper. That may be right.", ["repair"]),
        ["R051"] = ("The rider must be able to tell that the repair held. Say how to prove it.", ["repair-prove"]),
        ["R052"] = ("That is dangerous work, and no caution says how not to be hurt.", ["check-caution", "repair-caution", "how-to-caution", "task-caution"]),
        ["R053"] = ("You say that it can hurt a little, but not how. Add a caution, or choose no hazard.", ["repair-caution", "check-caution", "task-caution"]),
        ["R054"] = ("Hands go near the machine for it, so the question for that must come first. Say that it is hands-on.", ["check-how", "check-tools", "lines"]),
        ["R059"] = ("Another check of the same thing, or behind the same cover, warns of a danger, and this one does not. Give it the same caution if hands come near it.", ["check-caution", "check-hazard"]),
        ["R056"] = ("There is a size in it that may differ between engines. Say how to measure one's own, or name the standard.", ["repair-steps", "repair-parts", "check-how", "text", "lines", "answer"]),
        ["R060"] = ("Riders say the same words for something else, so the coach could not tell which is meant. Use fuller words.", ["complaint-phrases", "add", "asks"]),
        ["R061"] = ("There is a phrase in it without a word.", ["complaint-phrases", "add", "asks"]),
        ["R062"] = ("The same words stand there twice.", ["complaint-phrases", "add", "asks"]),
        ["R063"] = ("Nobody would ever find that answer: say how riders ask for it.", ["asks"]),
        ["R070"] = ("I cannot read how often. Write an amount and what it is counted in: 14 riding days, 10 hours, 50 km, 1 year.", ["lines", "task-every", "task-after"]),
        ["R072"] = ("That is so long that it would never be due. Choose a smaller number.", ["task-every", "task-after", "lines"]),
        ["R073"] = ("It is due again before that long after the event. Choose a smaller number after the event.", ["task-after", "lines"]),
        ["R074"] = ("Another task is called the same, so nobody could tell which is due. Give it another name.", ["task-called", "text"]),
        ["R078"] = ("Another time in the same measure comes sooner. Keep the sooner one.", ["task-latest", "task-every", "lines"]),
        ["R079"] = ("It would come after itself. Pick something else for it to come after.", ["task-event"]),
        ["R080"] = ("Every bike has one of those answers, so it leaves none out. Pick fewer, or skip the question.", ["task-only-is", "task-only"]),
        ["R097"] = ("Somebody else has changed that in the meantime. Look at it again.", ["text", "lines", "word", "common", "rule"]),
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <param name="sheet">The sheet on which it was written, or null for a file: then what to write there is told too.</param>
    /// <param name="changes">What the sheet came to, so that its own new rules are called so.</param>
    public static PlainProblem Of(Problem problem, SheetState? sheet, IEnumerable<RuleChange> changes, KnowledgeBase knowledge)
    {
        var known = ByCode.GetValueOrDefault(problem.Code);
        var names = changes.OfType<PutRule>().GroupBy(p => p.Key.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().Key, StringComparer.Ordinal);
        var own = Named($"{problem.What} {problem.Mend}".Trim(), names, knowledge);
        var stops = problem.Severity == Severity.Error;
        // Of a file the linter's own words say which key to write. Its line is not told: the changes were laid over the rules, and stand elsewhere there.
        if (sheet is null) return new PlainProblem(known.Say is null ? Say.Capital(own) : $"{known.Say} ({Say.Capital(own)})", null, stops);
        var question = known.Questions.IsDefaultOrEmpty ? null : StrengthNamed(problem, sheet, known.Questions) ?? known.Questions.FirstOrDefault(q => IsAsked(sheet, q));
        return new PlainProblem(known.Say is null ? Say.Capital(own) : $"{known.Say} ({Say.Capital(Named(problem.What, names, knowledge))})", question, stops);
    }

    /// <summary>Of several strengths on one sheet, the one of the sign that is complained of.</summary>
    private static string? StrengthNamed(Problem problem, SheetState sheet, ImmutableArray<string> questions) => questions
        .Where(q => q.EndsWith("-strength", StringComparison.Ordinal) && IsAsked(sheet, q))
        .FirstOrDefault(q => sheet.Context.One(q[..^"-strength".Length]) is { Length: > 0 } sign && problem.What.Contains($"'{sign}", StringComparison.Ordinal));

    private static bool IsAsked(SheetState sheet, string question) => sheet.Asked.Any(a => a.Id == question);

    /// <summary>Ids become what a mechanic calls them.</summary>
    private static string Named(string text, Dictionary<string, RuleKey> ours, KnowledgeBase knowledge) => Quoted().Replace(text, m =>
    {
        var id = m.Groups[1].Value;
        if (ours.TryGetValue(id, out var key) && !Known(knowledge, id)) return $"your new {RuleReading.Called(key.Kind)}";
        return knowledge.Faults.TryGetValue(id, out var fault) ? $"\"{fault.Is}\""
            : knowledge.Findings.TryGetValue(id, out var finding) ? $"\"{finding.Means}\""
            : knowledge.Complaints.TryGetValue(id, out var complaint) ? $"\"{complaint.Called}\""
            : knowledge.Checks.TryGetValue(id, out var check) ? $"\"{check.Ask}\""
            : knowledge.Repairs.TryGetValue(id, out var repair) ? $"\"{repair.Does}\""
            : knowledge.HowTos.TryGetValue(id, out var howTo) ? $"\"{howTo.Called}\""
            : knowledge.Covers.TryGetValue(id, out var cover) ? $"\"{cover.Called}\""
            : knowledge.Facts.TryGetValue(id, out var fact) ? $"\"{fact.Called}\""
            : knowledge.Service.TryGetValue(id, out var task) ? $"\"{task.Called}\""
            : m.Value;
    });

    private static bool Known(KnowledgeBase knowledge, string id) =>
        knowledge.Faults.ContainsKey(id) || knowledge.Findings.ContainsKey(id) || knowledge.Complaints.ContainsKey(id) || knowledge.Checks.ContainsKey(id) || knowledge.Repairs.ContainsKey(id)
        || knowledge.Covers.ContainsKey(id) || knowledge.Facts.ContainsKey(id) || knowledge.Service.ContainsKey(id);

    [GeneratedRegex("'([a-z0-9]+(?:-[a-z0-9]+)*)'", RegexOptions.CultureInvariant)]
    private static partial Regex Quoted();
}
