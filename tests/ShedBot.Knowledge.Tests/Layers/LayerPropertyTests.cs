using CsCheck;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Knowledge.Tests.Layers;

/// <summary>What holds of every layer, tried on some hundreds drawn at random.</summary>
public class LayerPropertyTests
{
    private static readonly Gen<string> Text = Gen.OneOf(
        Gen.OneOf<string>("@everyone", "<@123>", "<@&5> hi", "yes", "no", "~", "null", "1.5", "- a", "a: b", "x # y", "#x", "'", "\"", "[a, b]", "{a}", "*a", "&a", "!x", "%", "`", "|", ">", "two\nlines", "\n lead", "a\n\n  b", "trail \n x",
            "?", "? x", "---", "...", "=", "<<", "2026-05-01", "0x1F", "é", "\U0001F600", "a\\n", "\\", "a\tb", "\u200Bx", "\u202E", "\uD800", "\0", "\u0085", "\u2028", " pad ", "key:", ":x", "a,b", "ends with :", "\uFEFFx", "-", "--- x", "\rx\r\ny"),
        Gen.String[1, 40], Gen.Char.AlphaNumeric.Array[1, 60].Select(c => new string(c)));

    private static readonly Gen<Credit> Credits = Gen.Select(Text, Text.Null(), Text, Gen.Date, (a, s, o, d) => new Credit(a, s, o, DateOnly.FromDateTime(d)));

    private static readonly Gen<RuleKey> Keys = Gen.OneOf<string>(
            "fault bulb-loose", "fault wire-off", "check follow-wire", "complaint dark", "word lamp", "how to which-bulb", "fault switch-worn")
        .Select(name => RuleKey.TryRead(name, out var key) ? key : throw new InvalidOperationException(name));

    private static readonly Gen<RuleChange> Changes = Gen.OneOf<RuleChange>(
        Gen.Select(Keys, Gen.OneOf<string>("is", "because", "ask", "called", "shows as / dark / yes", "moved by / bulb-age years-ago / times"), Text.Null(), Text, Credits, (k, p, w, n, c) => (RuleChange)new MendValue(k, new(p), w, n, c)),
        Gen.Select(Keys, Gen.OneOf<string>("riders say", "how", "answer"), Text, Gen.Bool, Credits, (k, p, t, b, c) => (RuleChange)new MendList(k, new(p), b ? t : null, b ? null : t, c)),
        Gen.Select(Keys, Text, Credits, (k, b, c) => (RuleChange)new Retire(k, b, c)),
        Keys.Select(k => (RuleChange)new Restore(k)),
        Keys.Select(k => (RuleChange)new PutRule(k, LampClub.Base.YamlOf(k) is { } yaml ? yaml + "author: A\nsource: b\ndate: 2026-05-01\n" : "id: x")),
        Keys.Select(k => (RuleChange)new DropRule(k)));

    private static readonly Gen<Layer> Layers = Changes.Array[0, 12].Select(changes => changes.Aggregate(LampClub.Layer, (layer, change) => layer.Apply([change]).Layer ?? layer));

    [Fact]
    public void Read_WhatAnyLayerWrites_IsThatLayer() => Layers.Sample(
        layer =>
        {
            var again = LampClub.Of(layer.Write());
            return again.Equals(layer) && again.Write() == layer.Write() && again.As(9).Edition == 9 && again.As(9).As(layer.Edition).Equals(layer);
        }, iter: 300);

    [Fact]
    public void ChangesTo_AnyOtherLayer_LeadThere() => Gen.Select(Layers, Layers).Sample(
        (one, other) => one.Apply(one.ChangesTo(other)).Layer?.As(other.Edition).Equals(other) == true && one.ChangesTo(one).IsEmpty, iter: 200);

    /// <summary>Whatever is typed: refused in words, or kept to the letter, blanks around it aside.</summary>
    [Fact]
    public void Apply_AnyText_IsRefusedOrKeptToTheLetter() => Gen.Select(Text, Credits).Sample(
        (text, credit) =>
        {
            var result = Layer.Empty.Apply([new MendValue(new(RuleKind.Check, "follow-wire"), new("ask"), null, text, credit)]);
            return result.Layer is null
                ? result.Problems.Length > 0
                : result.Layer.Mends[0].Now == text.ReplaceLineEndings("\n").Trim() && result.Layer.Mends[0].Credit.Author == credit.Author.ReplaceLineEndings("\n").Trim();
        }, iter: 1000);

    /// <summary>A published edition never stops a club, whatever is in it, and whatever the base has become.</summary>
    [Fact]
    public void LoadKept_AnyLayerOverAnyBase_GivesKnowledge()
    {
        string[][] upgrades =
        [
            [], ["id: bulb-loose", "id: bulb-slack", "{bulb-loose: almost certain}", "{bulb-slack: almost certain}"], ["concept: lamp", "concept: torch"], ["how common: very common", "how common: rare"],
            ["{id: firm, says: Firm}", "{id: firm, says: Firm, stop riding: no}"], ["id: follow-wire", "id: trace-wire"],
        ];
        var bases = upgrades.Select(u => new LayerCase("", "", "", "", u).Base).ToList();
        Assert.All(bases, b => Assert.NotNull(b.Knowledge));

        Gen.Select(Layers, Gen.Int[0, bases.Count - 1]).Sample(
            (layer, at) =>
            {
                var load = LayeredRules.LoadKept(bases[at], layer);
                return load.Knowledge is not null && LayerSafety.Shape(bases[at].Knowledge!, load.Knowledge).IsEmpty
                    && load.Conflicts.Select(c => c.ToString()).Concat(load.SetAside.Select(s => s.ToString())).All(s => s.Length > 10);
            }, iter: 150);
    }
}
