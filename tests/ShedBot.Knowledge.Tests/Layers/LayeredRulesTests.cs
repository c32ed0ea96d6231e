using System.Globalization;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Tests.Samples;

namespace ShedBot.Knowledge.Tests.Layers;

public class LayeredRulesTests
{
    /// <summary>The club's own rules laid over the base are what the same rules in a file beside it would be: another way round to the same sums.</summary>
    [Fact]
    public void Load_OwnRules_AreAsIfTheyStoodInAFile()
    {
        var club = LampClub.Text.ReplaceLineEndings("\n").Split("\nmends:")[0];
        var asFile = KnowledgeLoader.Load([RuleText.FromText(LampRules.File, LampRules.Text), RuleText.FromText("z.yaml", club.Replace("  edition: 3\n", "", StringComparison.Ordinal))]);

        Assert.Equal(Dump(asFile.Knowledge!), Dump(LayeredRules.Load(LampClub.Base, LampClub.Of(club)).Knowledge!));
    }

    /// <summary>A mend does what the same change in the base would do.</summary>
    [Theory]
    [InlineData("{of: fault, id: bulb-burnt, key: how common, was: very common, now: rare}", "how common: very common", "how common: rare")]
    [InlineData("{of: fault, id: bulb-burnt, key: shows as / bulb-look / black, was: likely, now: unlikely}", "{black: likely}", "{black: unlikely}")]
    [InlineData("{of: fault, id: bulb-burnt, key: moved by / bulb-age years-ago / times, was: '6', now: 3}", "times: 6", "times: 3")]
    [InlineData("{of: fault, id: wire-off, key: moved by / bulb-age this-year / times, now: 3}", "wire-run: {hanging: very likely}", "wire-run: {hanging: very likely}\n    moved by: [{fact: bulb-age, is: this-year, times: 3}]")]
    [InlineData("{of: fault, id: bulb-burnt, key: shows as / flickers / yes, now: unlikely}", "dark: {yes: almost certain}", "dark: {yes: almost certain}\n      flickers: {yes: unlikely}")]
    [InlineData("{of: finding, id: bulb-look, key: states / cracked / says, now: It is cracked}", "{id: loose, says: It wobbles in its socket}", "{id: loose, says: It wobbles in its socket}\n      - {id: cracked, says: It is cracked}")]
    [InlineData("{of: finding, id: bulb-look, key: states / loose / riders say, add: bulb wobbles}", "{id: loose, says: It wobbles in its socket}", "{id: loose, says: It wobbles in its socket, riders say: [bulb wobbles]}")]
    [InlineData("{of: check, id: look-at-bulb, key: minutes, was: 2, now: 4.5}", "minutes: 2\n", "minutes: 4.5\n")]
    [InlineData("{of: check, id: look-at-bulb, key: how, drop: Open the lamp glass}", "[Open the lamp glass, Look at the bulb against the sky]", "[Look at the bulb against the sky]")]
    [InlineData("{of: repair, id: fit-bulb, key: mends / bulb-burnt, was: almost certain, now: likely}", "{bulb-burnt: almost certain}", "{bulb-burnt: likely}")]
    [InlineData("{of: service task, id: wipe-glass, key: every, drop: 300 km}", "[14 riding days, 300 km]", "[14 riding days]")]
    [InlineData("{of: word, id: lamp, key: riders say, add: beam}", "[headlight, light]", "[headlight, light, beam]")]
    public void Load_Mend_IsAsIfTheBaseSaidSo(string mend, string piece, string instead)
    {
        var load = LayeredRules.Load(LampClub.Base, LampClub.Of(LayerCase.About + "mends:\n  - " + mend + "\n"));

        Assert.Empty(load.Problems.Select(p => p.ToString()));
        Assert.Empty(load.Conflicts);
        Assert.Equal(Dump(LampRules.With(piece, instead).Knowledge!), Dump(load.Knowledge!));
    }

    [Fact]
    public void Load_LearntNumbers_CountForSharedRulesToo()
    {
        var options = new CompileOptions { Learnt = Learnt.Of([new("wire-off", 4)], [new("bulb-loose", "flickers", "yes", 0.4)], [new("join-wire", "wire-off", 0.5)]) };
        var text = LayerCase.About + "words:\n  - {concept: bulb, riders say: [pear]}\n";
        var asFile = KnowledgeLoader.Load([RuleText.FromText(LampRules.File, LampRules.Text), RuleText.FromText("z.yaml", text)], options).Knowledge!;

        var load = LayeredRules.LoadKept(LampClub.Base, LampClub.Of(text), options).Knowledge!;

        Assert.Equal(Dump(asFile), Dump(load));
        Assert.NotEqual(Dump(load), Dump(LayeredRules.LoadKept(LampClub.Base, LampClub.Of(text)).Knowledge!));
        Assert.NotEqual(load.Version, LayeredRules.LoadKept(LampClub.Base, LampClub.Of(text)).Knowledge!.Version);
        Assert.Equal(
            Dump(KnowledgeLoader.Load([RuleText.FromText(LampRules.File, LampRules.Text), RuleText.FromText("z.yaml", text)], new CompileOptions(HelpCost: 50, StateLeak: 0.02)).Knowledge!),
            Dump(LayeredRules.LoadKept(LampClub.Base, LampClub.Of(text), new CompileOptions(HelpCost: 50, StateLeak: 0.02)).Knowledge!));
    }

    [Fact]
    public void LoadKept_EmptyLayer_IsTheBaseItself()
    {
        Assert.Same(LampClub.Base.Knowledge, LayeredRules.LoadKept(LampClub.Base, Layer.Empty).Knowledge);
        Assert.Equal(LampRules.Knowledge().Version, LampClub.Base.Knowledge!.Version);
        Assert.True(Layer.Read(RuleText.FromText("x.yaml", "")).Layer!.IsEmpty);
    }

    [Fact]
    public void Load_SameWord_HasTheSameVersionWhateverItsNumber()
    {
        var version = LayeredRules.LoadKept(LampClub.Base, LampClub.Layer).Knowledge!.Version;

        Assert.Equal(version, LayeredRules.LoadKept(LampClub.Base, LampClub.Layer.As(17)).Knowledge!.Version);
        Assert.Matches("^[0-9a-f]{12}$", version);
        Assert.NotEqual(version, LampClub.Base.Knowledge!.Version);
        Assert.NotEqual(version, LayeredRules.LoadKept(LampClub.Base, LampClub.Layer.Apply([new Restore(new(RuleKind.Fault, "bulb-burnt"))]).Layer!).Knowledge!.Version);
    }

    [Fact]
    public void Load_RuleRetired_TakesWhatHungOnItAndSaysSo()
    {
        var load = LayeredRules.Load(LampClub.Base, LampClub.Of(LayerCase.About + "retires: [{of: fault, id: bulb-burnt, because: diodes}]\n"));

        Assert.Equal(
            ["The repair 'fit-bulb' went with the fault 'bulb-burnt'.", "'done by / fit-bulb' of the service task 'wipe-glass' went with the repair 'fit-bulb'.", "'after / fit-bulb' of the service task 'wipe-glass' went with the repair 'fit-bulb'."],
            load.AlsoGone.Select(g => g.ToString()));
        Assert.DoesNotContain("fit-bulb", load.Knowledge!.Repairs.Keys);
        Assert.Equal(["fitted", "look-at-clip"], load.Knowledge.Service["wipe-glass"].After.SelectMany(a => a.Events));
    }

    [Theory]
    [InlineData("{of: cover, id: lamp-glass, because: open}", "'cover' of the check 'look-at-bulb' went with the cover 'lamp-glass'.")]
    [InlineData("{of: fact, id: glass-kind, because: x}", "'only if / glass-kind' of the service task 'wipe-glass' went with the fact 'glass-kind'.")]
    [InlineData("{of: fact, id: bulb-age, because: x}", "'moved by / bulb-age' of the fault 'bulb-burnt' went with the fact 'bulb-age'.")]
    [InlineData("{of: complaint, id: flickers, because: x}", "'shows as / flickers' of the fault 'bulb-loose' went with the complaint 'flickers'.")]
    [InlineData("{of: finding, id: bulb-look, because: x}", "The check 'look-at-bulb' went with the finding 'bulb-look'.")]
    [InlineData("{of: service task, id: look-at-clip, because: x}", "'after / look-at-clip' of the service task 'wipe-glass' went with the service task 'look-at-clip'.")]
    public void Load_AnythingRetired_LeavesNothingHanging(string retired, string says)
    {
        var load = LayeredRules.Load(LampClub.Base, LampClub.Of(LayerCase.About + "retires: [" + retired + "]\n"));

        Assert.DoesNotContain(load.Problems, p => p.Severity == Problems.Severity.Error);
        Assert.Contains(says, load.AlsoGone.Select(g => g.ToString()));
    }

    [Fact]
    public void Load_CreditOfATip_IsWithTheRule() =>
        Assert.Equal(("Rider B", "Mod A"), LayeredRules.Load(LampClub.Base, LampClub.Layer).Knowledge!.Faults["switch-worn"].Origin is var o ? (o.SaidBy, o.Author) : default);

    [Fact]
    public void Load_BrokenBase_TellsTheBasesProblems()
    {
        var broken = RuleBase.Of([RuleText.FromText(LampRules.File, LampRules.Bent("tells: bulb-look", "tells: bulb-lok"))]);

        Assert.Null(LayeredRules.LoadKept(broken, LampClub.Layer).Knowledge);
        Assert.Equal(broken.Problems, LayeredRules.Load(broken, LampClub.Layer).Problems);
    }

    /// <summary>Everything that the coach reckons with, in full.</summary>
    private static string Dump(KnowledgeBase k) => string.Join('\n',
    [
        .. k.Model.Faults.Select(f => $"{f.Id} {N(f.Prior)}"),
        .. k.Model.Findings.Select(f => $"{f.Id} {string.Join(',', f.States)} {string.Join(',', f.Leak.Select(N))} | {string.Join(' ', f.Links.Select(l => l.Fault + "=" + string.Join(',', l.Net.Select(N))))}"),
        .. k.Model.Checks.Select(c => c.ToString()),
        .. k.Model.Repairs.Select(r => $"{r.Id} {r.Cost} {r.Cover} {r.Hazard} {string.Join(' ', r.Fixes)}"),
        .. k.Model.Covers.Select(c => c.ToString()),
        .. k.Findings.Values.SelectMany(f => f.States.Select(s => $"{f.Id} {s.Id} {s.Says} {string.Join('|', s.RidersSay)} {s.StopRiding}")),
        .. k.Faults.Values.SelectMany(f => f.MovedBy.Select(m => $"{f.Id} {m}")),
        .. k.Checks.Values.Select(c => $"{c.Id} {c.Ask} {string.Join('|', c.How)}"),
        .. k.Service.Values.Select(s => $"{s.Id} {string.Join('|', s.Every)}"),
        .. k.Words.Select(w => $"{w.Concept} {string.Join('|', w.RidersSay)}"),
    ]);

    /// <summary>Sums over faults in another order differ in the last digits.</summary>
    private static string N(double number) => number.ToString("G12", CultureInfo.InvariantCulture);
}
