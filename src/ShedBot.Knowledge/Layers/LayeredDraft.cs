using System.Collections.Frozen;
using System.Collections.Immutable;
using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Loading.Yaml;

namespace ShedBot.Knowledge.Layers;

/// <summary>Puts changed and new rules beside those of the base that stay as they are. What is not changed is shared, not copied.</summary>
/// <param name="changed">Rules of the base as they are to be, and the club's own; null for what goes.</param>
/// <param name="own">Which of them are the club's own, whole.</param>
internal sealed class LayeredDraft(RuleBase under, string clubFile, IReadOnlyDictionary<RuleKey, MapNode?> changed, IReadOnlySet<RuleKey> own)
{
    public Draft Build()
    {
        var draft = under.Draft;
        return draft with
        {
            Complaints = Of(draft.Complaints, RuleKind.Complaint, r => r.Id, ReadCauses.Complaint),
            Findings = Of(draft.Findings, RuleKind.Finding, r => r.Id, ReadCauses.Finding),
            Facts = Of(draft.Facts, RuleKind.Fact, r => r.Id, ReadCauses.Fact),
            Faults = Of(draft.Faults, RuleKind.Fault, r => r.Id, ReadCauses.Fault),
            Checks = Of(draft.Checks, RuleKind.Check, r => r.Id, ReadWork.Check),
            Covers = Of(draft.Covers, RuleKind.Cover, r => r.Id, ReadWork.Cover),
            Repairs = Of(draft.Repairs, RuleKind.Repair, r => r.Id, ReadWork.Repair),
            Service = Of(draft.Service, RuleKind.Service, r => r.Id, ReadService.Task),
            HowTos = Of(draft.HowTos, RuleKind.HowTo, r => r.Id, ReadAdvice.HowTo),
            Emergencies = Of(draft.Emergencies, RuleKind.Emergency, r => r.Id, ReadAdvice.Emergency),
            Words = Of(draft.Words, RuleKind.Word, r => r.Concept, ReadAdvice.Word),
        };
    }

    /// <summary>Every rule by its key; where a concept stands twice among the words, the first.</summary>
    public static FrozenDictionary<RuleKey, MapNode> Nodes(Draft draft)
    {
        var nodes = new Dictionary<RuleKey, MapNode>();
        Add(draft.Complaints, RuleKind.Complaint, r => r.Id);
        Add(draft.Findings, RuleKind.Finding, r => r.Id);
        Add(draft.Facts, RuleKind.Fact, r => r.Id);
        Add(draft.Faults, RuleKind.Fault, r => r.Id);
        Add(draft.Checks, RuleKind.Check, r => r.Id);
        Add(draft.Covers, RuleKind.Cover, r => r.Id);
        Add(draft.Repairs, RuleKind.Repair, r => r.Id);
        Add(draft.Service, RuleKind.Service, r => r.Id);
        Add(draft.HowTos, RuleKind.HowTo, r => r.Id);
        Add(draft.Emergencies, RuleKind.Emergency, r => r.Id);
        Add(draft.Words, RuleKind.Word, r => r.Concept);
        return nodes.ToFrozenDictionary();

        void Add<T>(ImmutableArray<Written<T>> rules, RuleKind kind, Func<T, string> id)
        {
            foreach (var rule in rules) nodes.TryAdd(new RuleKey(kind, id(rule.Rule)), rule.Node);
        }
    }

    /// <summary>Changed rules come after those that stay, and the club's own last: of two that clash, the later one is told, and that is the
    /// club's. Words keep their places: of two that claim a term, the earlier has it.</summary>
    private ImmutableArray<Written<T>> Of<T>(ImmutableArray<Written<T>> rules, RuleKind kind, Func<T, string> id, Func<Fields, T> read)
    {
        var mine = changed.Where(c => c.Key.Kind == kind).OrderBy(c => c.Key).ToList();
        if (mine.Count == 0) return rules;
        var list = ImmutableArray.CreateBuilder<Written<T>>(rules.Length + mine.Count);
        var mended = ImmutableArray.CreateBuilder<Written<T>>();
        foreach (var rule in rules)
        {
            var key = new RuleKey(kind, id(rule.Rule));
            if (!changed.TryGetValue(key, out var node)) list.Add(rule);
            else if (node is not null && !own.Contains(key)) (kind == RuleKind.Word ? list : mended).Add(new(read(new Fields(node, rule.File, under.Abouts[rule.File])), node, rule.File));
        }

        list.AddRange(mended.ToImmutable());
        foreach (var (key, node) in mine)
        {
            if (node is not null && own.Contains(key)) list.Add(new(read(new Fields(node, clubFile, null)), node, clubFile));
        }

        return list.ToImmutable();
    }
}
