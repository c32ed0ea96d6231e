using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>One text of a rule that can be put in other words.</summary>
/// <param name="Key">Where it stands in the rule.</param>
/// <param name="Says">What it is called.</param>
/// <param name="Text">What stands there now; of several texts, one a line; empty for nothing.</param>
/// <param name="Many">True for a list.</param>
/// <param name="Anew">Of a list: the whole rule with another list in its place.</param>
internal sealed record WordingPart(string Key, string Says, string Text, bool Many = false, Func<ImmutableArray<string>, Credit, RuleItem>? Anew = null)
{
    public ImmutableArray<string> Lines => Text.Length == 0 ? [] : [.. Text.Split('\n')];
}

/// <summary>What of each kind of rule can be put in other words.</summary>
internal static class WordingParts
{
    public static ImmutableArray<WordingPart> Of(KnowledgeBase knowledge, RuleKey key) => key.Kind switch
    {
        RuleKind.Check when knowledge.Checks.TryGetValue(key.Id, out var rule) => Check(rule),
        RuleKind.Repair when knowledge.Repairs.TryGetValue(key.Id, out var rule) => Repair(rule),
        RuleKind.Fault when knowledge.Faults.TryGetValue(key.Id, out var rule) => [new("is", "What is wrong", rule.Is), new("because", "Why it gives the trouble", rule.Because)],
        RuleKind.Complaint when knowledge.Complaints.TryGetValue(key.Id, out var rule) => [new("called", "What it is called", rule.Called), new("in short", "What tells it from its neighbours", rule.InShort)],
        RuleKind.Finding when knowledge.Findings.TryGetValue(key.Id, out var rule) =>
            [new("means", "What is looked at", rule.Means), .. rule.States.Select(s => new WordingPart($"states / {s.Id} / says", $"The answer: {s.Says}", s.Says))],
        RuleKind.HowTo when knowledge.HowTos.TryGetValue(key.Id, out var rule) =>
            [new("called", "What it is about", rule.Called), Many("answer", "The answer", rule.Answer, (lines, credit) => RuleItems.Of(rule with { Answer = lines }, credit))],
        RuleKind.Cover when knowledge.Covers.TryGetValue(key.Id, out var rule) =>
        [
            new("called", "What it is called", rule.Called), Many("how", "How it is opened, step by step", rule.How, (lines, credit) => RuleItems.Of(rule with { How = lines }, credit)),
            Many("tools", "Tools", rule.Tools, (lines, credit) => RuleItems.Of(rule with { Tools = lines }, credit)), new("minutes", "Minutes for a beginner", Number(rule.Minutes)),
        ],
        RuleKind.Fact when knowledge.Facts.TryGetValue(key.Id, out var rule) =>
        [
            new("called", "What it is called", rule.Called), new("ask", "The question", rule.Ask), .. rule.Values.Select(v => new WordingPart($"values / {v.Id} / says", $"The answer: {v.Says}", v.Says)),
            new("keeps for days", "Days until it is asked again", Number(rule.KeepsForDays)),
        ],
        RuleKind.Service when knowledge.Service.TryGetValue(key.Id, out var rule) => Service(rule),
        _ => [],
    };

    private static ImmutableArray<WordingPart> Service(ServiceRule rule) =>
    [
        new("called", "What it is called", rule.Called), new("does", "What is done, in one line", rule.Does), new("why", "What it prevents", rule.Why),
        Many("steps", "The steps", [.. rule.Steps.Select(Line)], (lines, credit) => RuleItems.Of(rule with { Steps = [.. lines.Select(Step)] }, credit)),
        Many("tools", "Tools", rule.Tools, (lines, credit) => RuleItems.Of(rule with { Tools = lines }, credit)),
        Many("every", "How often: 14 riding days, 10 hours, 50 km, 1 year", [.. rule.Every.Select(IntervalWords.Text)], (lines, credit) => RuleItems.Of(rule with { Every = [] }, credit).Add("every", lines)),
        new("minutes", "Minutes for a beginner", Number(rule.Minutes)),
    ];

    private static ImmutableArray<WordingPart> Check(CheckRule rule) =>
    [
        new("ask", "The question", rule.Ask), new("why", "Why it is asked", rule.Why),
        Many("how", "How to look, step by step", rule.How, (lines, credit) => RuleItems.Of(rule with { How = lines }, credit)),
        new("other words", "The question in other words, for a second try", rule.OtherWords ?? ""), new("show me", "Fuller help for a newcomer", rule.ShowMe ?? ""),
        Many("tools", "Tools", rule.Tools, (lines, credit) => RuleItems.Of(rule with { Tools = lines }, credit)), new("minutes", "Minutes for a beginner", Number(rule.Minutes)),
    ];

    private static ImmutableArray<WordingPart> Repair(RepairRule rule) =>
    [
        new("does", "What it does, in one line", rule.Does),
        Many("steps", "The steps", [.. rule.Steps.Select(Line)], (lines, credit) => RuleItems.Of(rule with { Steps = [.. lines.Select(Step)] }, credit)),
        Many("prove", "How to prove that it held", rule.Prove, (lines, credit) => RuleItems.Of(rule with { Prove = lines }, credit)),
        Many("watch", "What to watch afterwards", rule.Watch, (lines, credit) => RuleItems.Of(rule with { Watch = lines }, credit)),
        Many("prevent", "What keeps it from coming back", rule.Prevent, (lines, credit) => RuleItems.Of(rule with { Prevent = lines }, credit)),
        Many("tools", "Tools", rule.Tools, (lines, credit) => RuleItems.Of(rule with { Tools = lines }, credit)),
        new("minutes", "Minutes for a beginner", Number(rule.Minutes)), new("money", "What the parts cost", Number(rule.Money)),
        new("for helper", "Why a helper should do it", rule.ForHelper ?? ""),
    ];

    private static string Line(RepairStep step) => step.Note is null ? step.Do : $"{step.Do} -- {step.Note}";

    private static RepairStep Step(string line) => line.Split(" -- ", 2) is [var work, var note] ? new RepairStep(work, note) : new RepairStep(line, null);

    private static WordingPart Many(string key, string says, ImmutableArray<string> lines, Func<ImmutableArray<string>, Credit, RuleItem> anew) =>
        new(key, says, string.Join('\n', lines.Select(l => l.ReplaceLineEndings(" "))), Many: true, anew);

    private static string Number(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);
}
