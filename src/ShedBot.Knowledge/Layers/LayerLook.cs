using ShedBot.Knowledge.Linting;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Problems;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Layers;

/// <summary>R059, R098, R099: the club's word beside the base's.</summary>
internal sealed class LayerLook(RuleBase under, Layer layer, ProblemList problems)
{
    public void Look(IReadOnlySet<LayerPart> without)
    {
        foreach (var mend in layer.Mends.Where(m => m.Now is not null && !without.Contains(m))) Mended(mend);
        foreach (var own in layer.Items.Where(i => !without.Contains(i)))
        {
            if (under.NodeOf(own.Key) is { } node) Anew(own, node);
            else Name(own);
            if (own.Key.Kind == RuleKind.Check) Beside(own);
        }
    }

    /// <summary>Hands that are behind a cover are behind it for whatever they do there.</summary>
    private void Beside(OwnRule own)
    {
        if (own.Node["cautions"] is ListNode { Items.IsEmpty: false }) return;
        var (cover, tells) = (own.Node["cover"] is { } c ? Word(c) : "", own.Node["tells"] is { } t ? Word(t) : "");
        var other = under.Knowledge!.Checks.Values.FirstOrDefault(o =>
            o.Id != own.Key.Id && o.Hazard is ("medium" or "high") && o.Cautions.Length > 0 && (o.Cover == cover || o.Tells == tells));
        if (other is not null)
            problems.Add(WorkRules.NoCautionBeside, layer.File, own.Node, $"the check '{own.Key.Id}' has no caution, and '{other.Id}' {(other.Cover == cover ? "behind the same cover" : "for the same finding")} warns: {other.Cautions[0].Hazard}.", "Give it the same caution, if hands come near the same thing.");
    }

    private void Mended(Mend mend)
    {
        if (mend.Path.Parts is [var list, ..] && IsStrength(mend.Key.Kind, list) && under.ValueAt(mend.Key, mend.Path) is { } stands)
            Compare(mend.Key, mend.Path, stands, mend.Now!, mend.Credit, mend.Node["now"]!);
    }

    private void Anew(OwnRule own, MapNode before)
    {
        foreach (var (path, word, _) in Strengths(own.Key.Kind, before))
        {
            var now = NodePath.At(own.Node, RuleKinds.Shape(own.Key.Kind), path) as Scalar;
            if (now is not null) Compare(own.Key, path, word, now.Text.Trim(), own.Credit, now);
        }
    }

    private static bool IsStrength(RuleKind kind, string list) => (kind, list) is (RuleKind.Fault, "shows as") or (RuleKind.Repair, "mends");

    private static IEnumerable<(RulePath Path, string Word, Node At)> Strengths(RuleKind kind, MapNode node) => kind switch
    {
        RuleKind.Fault when node["shows as"] is MapNode shows => shows.Entries.Where(e => e.Value is MapNode)
            .SelectMany(e => ((MapNode)e.Value).Entries.Select(s => (RulePath.Of("shows as", e.Key.Text, s.Key.Text), Word(s.Value), s.Value))),
        RuleKind.Repair when node["mends"] is MapNode mends => mends.Entries.Select(m => (RulePath.Of("mends", m.Key.Text), Word(m.Value), m.Value)),
        _ => [],
    };

    private static string Word(Node node) => (node as Scalar)?.Text.Trim() ?? "";

    /// <summary>On different sides of an even chance, where the base names what it has its word from and the club does not.</summary>
    private void Compare(RuleKey key, RulePath path, string before, string now, Credit credit, Node at)
    {
        if (SourceOf(key) is not { Length: > 0 } source || source == Credit.CommonPractice || credit.Source != Credit.CommonPractice) return;
        if (!ChanceWords.TryChance(before, out var one) || !ChanceWords.TryChance(now, out var other) || (one - 0.5) * (other - 0.5) >= 0) return;
        problems.Add(LayerRules.Contradiction, layer.File, at,
            $"the club says '{now}' where '{path}' of the {RuleKinds.Word(key.Kind)} '{key.Id}' is '{before}' from a named source ({source}).", "Is the source wrong? Name yours, or keep the base's word.");
    }

    private string? SourceOf(RuleKey key) => key.Kind switch
    {
        RuleKind.Fault => under.Knowledge!.Faults.GetValueOrDefault(key.Id)?.Origin.Source,
        RuleKind.Repair => under.Knowledge!.Repairs.GetValueOrDefault(key.Id)?.Origin.Source,
        _ => null,
    };

    private void Name(OwnRule own)
    {
        var bare = Bare(own.Key.Id);
        var like = under.Keys.Concat(layer.Items.Where(i => i.Line < own.Line).Select(i => i.Key)).FirstOrDefault(k => k.Kind == own.Key.Kind && k.Id != own.Key.Id && Bare(k.Id) == bare);
        if (like.Id is not null)
            problems.Add(LayerRules.LookAlike, layer.File, own.Node, $"the {RuleKinds.Word(own.Key.Kind)} '{own.Key.Id}' reads like '{like.Id}'.", "Give it a name that nobody takes for the other, or mend that one if it is meant.");
    }

    /// <summary>What a hasty reader sees: hyphens and a last 's' do not tell names apart, nor do 0 and o, 1 and l, rn and m.</summary>
    private static string Bare(string id) => string.Concat(id.Split('-').Select(w => w.TrimEnd('s')))
        .Replace('0', 'o').Replace('1', 'l').Replace("rn", "m", StringComparison.Ordinal);
}
