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
        ["R031"] = ("Those strengths cannot all be so at once: one thing cannot be found in two ways nearly always. Weaken one of them.", ["word", "sign-strength", "sign-2-strength"]),
        ["R033"] = ("That sign is found just as often on sound bikes, so it tells nothing. Choose a stronger word, or another sign.", ["sign-strength", "sign-2-strength", "sign-3-strength", "complaint-strength", "word"]),
        ["R034"] = ("That cannot be found nearly always: sound bikes often show something else there. Weaken the word.", ["word", "sign-strength", "sign-2-strength", "sign-3-strength"]),
        ["R040"] = ("Nothing that can be looked at shows this cause, so the coach can only guess it. Name a sign.", ["sign", "sign-2"]),
        ["R041"] = ("Nothing tells this cause from another one. Name a sign that only one of the two shows.", ["sign-2", "sign", "sign-3", "word"]),
        ["R044"] = ("No cause gives this trouble any more. Take the trouble out of use too, or leave the cause in.", ["rule", "complaint"]),
        ["R050"] = ("Nothing mends this cause, so the coach hands it to a helper. That may be right.", ["repair"]),
        ["R051"] = ("The rider must be able to tell that the repair held. Say how to prove it.", ["repair-prove"]),
        ["R052"] = ("That is dangerous work, and no caution says how not to be hurt.", ["check-caution", "repair-caution", "how-to-caution"]),
        ["R053"] = ("You say that it can hurt a little, but not how. Add a caution, or choose no hazard.", ["repair-caution", "check-caution"]),
        ["R056"] = ("There is a size in it that may differ between engines. Say how to measure one's own, or name the standard.", ["repair-steps", "repair-parts", "check-how", "text", "lines", "answer"]),
        ["R060"] = ("Riders say the same words for something else, so the coach could not tell which is meant. Use fuller words.", ["complaint-phrases", "add", "asks"]),
        ["R061"] = ("There is a phrase in it without a word.", ["complaint-phrases", "add", "asks"]),
        ["R062"] = ("The same words stand there twice.", ["complaint-phrases", "add", "asks"]),
        ["R063"] = ("Nobody would ever find that answer: say how riders ask for it.", ["asks"]),
        ["R097"] = ("Somebody else has changed that in the meantime. Look at it again.", ["text", "lines", "word", "common", "rule"]),
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <param name="sheet">The sheet on which it was written, or null for a file: then the line is told too.</param>
    /// <param name="changes">What the sheet came to, so that its own new rules are called so.</param>
    public static PlainProblem Of(Problem problem, SheetState? sheet, IEnumerable<RuleChange> changes, KnowledgeBase knowledge)
    {
        var known = ByCode.GetValueOrDefault(problem.Code);
        var names = changes.OfType<PutRule>().GroupBy(p => p.Key.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().Key, StringComparer.Ordinal);
        var own = Named($"{problem.What} {problem.Mend}".Trim(), names, knowledge);
        if (sheet is null) return new PlainProblem($"Line {problem.Line}: {own}", null, problem.Severity == Severity.Error);
        var question = known.Questions.IsDefaultOrEmpty ? null : known.Questions.FirstOrDefault(q => sheet.Asked.Any(a => a.Id == q) && (sheet.Context.Has(q) || q is "sign-2"));
        return new PlainProblem(known.Say is null ? Say.Capital(own) : $"{known.Say} ({Say.Capital(Named(problem.What, names, knowledge))})", question, problem.Severity == Severity.Error);
    }

    /// <summary>Ids become what a mechanic calls them.</summary>
    private static string Named(string text, Dictionary<string, RuleKey> ours, KnowledgeBase knowledge) => Quoted().Replace(text, m =>
    {
        var id = m.Groups[1].Value;
        if (ours.TryGetValue(id, out var key) && !Known(knowledge, id)) return $"your new {WordOf(key.Kind)}";
        return knowledge.Faults.TryGetValue(id, out var fault) ? $"\"{fault.Is}\""
            : knowledge.Findings.TryGetValue(id, out var finding) ? $"\"{finding.Means}\""
            : knowledge.Complaints.TryGetValue(id, out var complaint) ? $"\"{complaint.Called}\""
            : knowledge.Checks.TryGetValue(id, out var check) ? $"\"{check.Ask}\""
            : knowledge.Repairs.TryGetValue(id, out var repair) ? $"\"{repair.Does}\""
            : knowledge.HowTos.TryGetValue(id, out var howTo) ? $"\"{howTo.Called}\""
            : m.Value;
    });

    private static bool Known(KnowledgeBase knowledge, string id) =>
        knowledge.Faults.ContainsKey(id) || knowledge.Findings.ContainsKey(id) || knowledge.Complaints.ContainsKey(id) || knowledge.Checks.ContainsKey(id) || knowledge.Repairs.ContainsKey(id);

    private static string WordOf(RuleKind kind) => kind switch
    {
        RuleKind.Fault => "cause",
        RuleKind.Finding => "sign",
        RuleKind.Complaint => "trouble",
        RuleKind.HowTo => "answer",
        _ => RuleKinds.Word(kind),
    };

    [GeneratedRegex("'([a-z0-9]+(?:-[a-z0-9]+)*)'", RegexOptions.CultureInvariant)]
    private static partial Regex Quoted();
}
