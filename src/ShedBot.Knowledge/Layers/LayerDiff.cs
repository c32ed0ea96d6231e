using System.Collections.Immutable;

namespace ShedBot.Knowledge.Layers;

/// <summary>The changes between two layers.</summary>
internal static class LayerDiff
{
    /// <summary>What goes first, then what comes: so that nothing stands in the way of what takes its place.</summary>
    public static ImmutableArray<RuleChange> Between(Layer from, Layer to)
    {
        var (old, young) = (Written(from), Written(to));
        return
        [
            .. from.Parts.Where(p => !young.TryGetValue((p.Key, p.Slot), out var now) || (p is not OwnRule && now != p.Text)).Select(Gone),
            .. to.Parts.Where(p => !old.TryGetValue((p.Key, p.Slot), out var was) || was != p.Text).Select(Come),
        ];
    }

    private static Dictionary<(RuleKey, string), string> Written(Layer layer) => layer.Parts.ToDictionary(p => (p.Key, p.Slot), p => p.Text);

    private static RuleChange Gone(LayerPart part) => part switch
    {
        OwnRule => new DropRule(part.Key),
        Mend mend => new Unmend(mend.Key, mend.Path, mend.Add, mend.Drop),
        _ => new Restore(part.Key),
    };

    private static RuleChange Come(LayerPart part) => part switch
    {
        OwnRule own => new PutRule(own.Key, own.Yaml, own.InsteadOf),
        Mend { Now: { } now } mend => new MendValue(mend.Key, mend.Path, mend.Was, now, mend.Credit),
        Mend mend => new MendList(mend.Key, mend.Path, mend.Add, mend.Drop, mend.Credit),
        Retirement retired => new Retire(retired.Key, retired.Because, retired.Credit),
        _ => throw new InvalidOperationException($"{part} is no part of a layer."),
    };
}
