using System.Collections.Immutable;
using System.Text.Json;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Problems;
using ShedBot.Knowledge.Tests.Loading;
using ShedBot.Knowledge.Tests.Samples;
using ShedBot.Knowledge.Understanding;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Tests.Layers;

/// <summary>What no club can weaken, tried on everything that the shipped rules hold of it.</summary>
public class LayerSafetyTests
{
    private static readonly RuleBase Shipped = RuleBase.Of(KnowledgeFolder.Read(Path.Combine(ShippedRulesTests.Root(), "knowledge")));

    private static readonly KnowledgeBase Knowledge = Shipped.Knowledge!;

    /// <summary>Something learnt, so that the rules are others than the base's.</summary>
    private static readonly CompileOptions Moved = CompileOptions.Default with { Learnt = Learnt.Of([new LearntOdds("cable-kinked", 2)], [], []) };

    /// <summary>R101 guards against a layer of another making: the format has no way to touch the question.</summary>
    [Fact]
    public void Check_QuestionBeforeHandsOnChanged_IsTold()
    {
        var lamp = LampRules.Knowledge();

        Assert.Equal("R101", Assert.Single(LayerSafety.Check(lamp, lamp with { Triage = lamp.Triage with { Points = [] } })).Rule.Code);
        Assert.Equal("R101", Assert.Single(LayerSafety.Check(lamp, lamp with { Triage = lamp.Triage with { Ready = "Go on" } })).Rule.Code);
        Assert.Empty(LayerSafety.Check(lamp, lamp with { Triage = lamp.Triage with { Points = [.. lamp.Triage.Points] } }));
    }

    /// <summary>Listening takes the better part of a second, and looking at a proposal, trying and publishing it each ask.</summary>
    [Fact]
    public void Check_AfterAStrictLoad_IsKnownOfTheseTwoAndOfNoOthers()
    {
        var strict = LayeredRules.Load(Shipped, Layer.Empty, Moved).Knowledge!;
        Assert.True(LayerSafety.Knows(Knowledge, strict));
        Assert.Empty(LayerSafety.Check(Knowledge, strict));
        // The same rules made once more, or held against others, are looked at anew.
        Assert.False(LayerSafety.Knows(Knowledge, LayeredRules.LoadKept(Shipped, Layer.Empty, Moved).Knowledge!));
        Assert.False(LayerSafety.Knows(Knowledge with { Version = "again" }, strict));
        Assert.False(LayerSafety.Knows(Knowledge, strict with { Version = "again" }));
    }

    [Fact]
    public void Check_OneAgainstTwoBases_EachHasItsOwnAnswer()
    {
        var (lamp, weaker) = (LampRules.Knowledge(), LampRules.Knowledge() with { Triage = LampRules.Knowledge().Triage with { Points = [] } });
        for (var again = 0; again < 2; again++)
        {
            Assert.Equal("R101", Assert.Single(LayerSafety.Check(lamp, weaker)).Rule.Code);
            Assert.Empty(LayerSafety.Check(weaker with { Version = "again" }, weaker));
        }
    }

    [Fact]
    public void Load_TroubleThatTellsADangerApartRetired_IsRefusedAndSaysWhy()
    {
        var retired = LayerReader.Read(RuleText.FromText("our-rules.yaml", LayerCase.About + "retires:\n  - {of: complaint, id: drags, because: we never have it}\n")).Layer!;
        var load = LayeredRules.Load(Shipped, retired);
        var told = Assert.Single(load.Problems, p => p.Severity == Severity.Error);
        Assert.Equal(("R095", "our-rules.yaml"), (told.Code, told.File));
        Assert.Equal(["drags"], LayeredRules.LoadKept(Shipped, retired).SetAside.Select(a => a.Part.Key.Id));
    }

    [Fact]
    public void Check_BaseByItself_IsAsSafeAsTheBase() => Assert.Empty(LayerSafety.Check(Knowledge, Knowledge with { Version = "again" }));

    [Fact]
    public void Load_AnyShippedEmergencyRetiredOrCutShort_IsRefused() => Assert.All(Knowledge.Emergencies.Values, rule =>
    {
        var key = new RuleKey(RuleKind.Emergency, rule.Id);
        Refused("R100", new Retire(key, "x", LampClub.Credit));
        Refused("R100", new MendList(key, new("do now"), null, rule.DoNow[0], LampClub.Credit));
        if (rule.Caution.Word != "NOTICE") Refused("R100", new MendValue(key, new("caution / word"), rule.Caution.Word, "NOTICE", LampClub.Credit));
        Refused("R100", new MendValue(key, new("caution / avoid"), rule.Caution.Avoid, "x", LampClub.Credit));
    });

    [Fact]
    public void Load_AnyShippedStopRidingPutOutOfReach_IsRefused()
    {
        var stops = Knowledge.Findings.Values.SelectMany(f => f.States.Where(s => s.StopRiding is not null).Select(s => (Finding: f, State: s))).ToList();
        Assert.NotEmpty(stops);
        Assert.All(stops, stop =>
        {
            var key = new RuleKey(RuleKind.Finding, stop.Finding.Id);
            var path = $"states / {stop.State.Id} / ";
            Refused("R102", new Retire(key, "x", LampClub.Credit));
            Refused("R102", new MendValue(key, new(path + "stop riding"), stop.State.StopRiding, "Take care.", LampClub.Credit));
            Refused("R102", new MendValue(key, new(path + "says"), stop.State.Says, "Fine", LampClub.Credit));
            foreach (var phrase in stop.State.RidersSay.Take(1)) Refused("R102", new MendList(key, new(path + "riders say"), null, phrase, LampClub.Credit));
            var checks = Knowledge.Checks.Values.Where(c => c.Tells == stop.Finding.Id).ToList();
            if (checks.Count == 0) return;
            Refused("R103 R055", [.. checks.Select(c => new Retire(new(RuleKind.Check, c.Id), "x", LampClub.Credit))]);
            Refused("R103 R055", [.. checks.Select(c => new MendValue(new(RuleKind.Check, c.Id), new("minutes"), Shipped.ValueAt(new(RuleKind.Check, c.Id), new("minutes")), "600", LampClub.Credit))]);
        });
    }

    [Fact]
    public void Load_AnyShippedHazardLowered_IsRefused()
    {
        var work = Knowledge.Checks.Values.Select(c => (new RuleKey(RuleKind.Check, c.Id), c.Hazard))
            .Concat(Knowledge.Repairs.Values.Select(r => (new RuleKey(RuleKind.Repair, r.Id), r.Hazard)))
            .Concat(Knowledge.Service.Values.Select(s => (new RuleKey(RuleKind.Service, s.Id), s.Hazard)))
            .Where(w => HazardWords.Levels[w.Hazard] > Reasoning.Modelling.Hazard.None).ToList();
        Assert.True(work.Count > 50);
        var lowered = Layer.Empty.Apply(work.Select(w => new MendValue(w.Item1, new("hazard"), w.Hazard, "none", LampClub.Credit))).Layer!;

        var told = LayeredRules.Load(Shipped, lowered).Problems.Where(p => p.Code == "R104").ToList();

        Assert.Equal(work.Count, told.Count);
    }

    [Fact]
    public void Load_AnyShippedHandsOnCalledHandsOff_IsRefused()
    {
        var work = Knowledge.Checks.Values.Where(c => c.HandsOn).ToList();
        var changed = Layer.Empty.Apply(work.Select(c => new MendValue(new(RuleKind.Check, c.Id), new("hands on"), "yes", "no", LampClub.Credit))).Layer!;

        Assert.Equal(work.Count, LayeredRules.Load(Shipped, changed).Problems.Count(p => p.Code == "R106"));
    }

    /// <summary>Every shipped caution, its rule written anew without it.</summary>
    [Fact]
    public void Load_AnyShippedCautionLeftOut_IsRefused()
    {
        var keys = Knowledge.Repairs.Values.Where(r => !r.Cautions.IsEmpty).Select(r => new RuleKey(RuleKind.Repair, r.Id))
            .Concat(Knowledge.Service.Values.Where(s => !s.Cautions.IsEmpty).Select(s => new RuleKey(RuleKind.Service, s.Id)))
            .Concat(Knowledge.HowTos.Values.Where(h => !h.Cautions.IsEmpty).Select(h => new RuleKey(RuleKind.HowTo, h.Id))).ToList();
        Assert.True(keys.Count > 90);

        Assert.All(keys, key => Refused("R105 R052", new PutRule(key, WithoutCautions(Shipped.YamlOf(key)!))));
    }

    /// <summary>The reserved words that tell an emergency from talk of one: a club that could add to 'no fire' could silence it.</summary>
    [Theory]
    [InlineData("no fire", "it is burning", null)]
    [InlineData("sure fire", null, "flames")]
    [InlineData("riding now", null, "riding now")]
    public void Load_WordThatTellsAnEmergencyChanged_IsRefused(string concept, string? add, string? drop) =>
        Refused("R107", new MendList(new(RuleKind.Word, concept), new("riders say"), add, drop, LampClub.Credit));

    [Fact]
    public void Load_NewWordThatSilencesAnEmergency_IsRefused()
    {
        var layer = LampClub.Of(LayerCase.About + "words:\n  - {concept: no lamp-smokes, riders say: [help]}\n");

        var load = LayeredRules.Load(LampClub.Base, layer);

        Assert.Null(load.Knowledge);
        Assert.Equal("R107", Assert.Single(load.Problems).Code);
        Assert.Single(LayeredRules.LoadKept(LampClub.Base, layer).SetAside);
    }

    /// <summary>A cause with what belongs to it changes nothing of how riders are heard; a phrase does.</summary>
    [Fact]
    public void For_RulesOfTheSameWords_IsTheSameListener()
    {
        var lamp = LampClub.Base.Knowledge!;
        var listener = Listener.For(lamp);
        var cause = LampClub.Of(LampClub.Text.ReplaceLineEndings("\n").Split("\nmends:")[0]);
        var phrase = Layer.Empty.Apply([new MendList(new(RuleKind.Complaint, "dark"), new("riders say"), "no shine", null, LampClub.Credit)]).Layer!;
        var word = Layer.Empty.Apply([new MendList(new(RuleKind.Word, "lamp"), new("riders say"), "beam", null, LampClub.Credit)]).Layer!;

        Assert.Same(listener, Listener.For(LayeredRules.Load(LampClub.Base, cause).Knowledge!, listener));
        Assert.NotSame(listener, Listener.For(LayeredRules.Load(LampClub.Base, phrase).Knowledge!, listener));
        Assert.NotSame(listener, Listener.For(LayeredRules.Load(LampClub.Base, word).Knowledge!, listener));
    }

    /// <summary>The messages of danger that are in the test data are heard as before with a club's own words and complaint beside the project's.</summary>
    [Fact]
    public void Load_HarmlessWords_LeaveDangerHeard()
    {
        var layer = Layer.Empty.Apply(
        [
            new PutRule(new(RuleKind.Word, "frame bag"), "concept: frame bag\nriders say: [pouch, saddle sack]\nsource: common practice\nauthor: A\ndate: 2026-05-01\n"),
            new MendList(new(RuleKind.Complaint, "drags"), new("riders say"), "it creeps along at the lights", null, LampClub.Credit),
        ]).Layer!;
        var (before, now) = (Listener.For(Knowledge), Listener.For(LayeredRules.Load(Shipped, layer).Knowledge!));

        foreach (var line in File.ReadLines(Path.Combine(ShippedRulesTests.Root(), "tests", "ShedBot.Knowledge.Tests", "Understanding", "messages.danger.jsonl")).Where(l => l.Length > 0))
        {
            var text = JsonDocument.Parse(line).RootElement.GetProperty("text").GetString()!;
            Assert.Equal(before.Understand(text).Emergency, now.Understand(text).Emergency);
        }
    }

    private static string WithoutCautions(string yaml)
    {
        var lines = yaml.Split('\n').ToList();
        var at = lines.IndexOf("cautions:");
        lines.RemoveRange(at, 1 + lines.Skip(at + 1).TakeWhile(l => l.StartsWith(' ')).Count());
        return string.Join('\n', lines.Where(l => !l.StartsWith("source:", StringComparison.Ordinal) && !l.StartsWith("author:", StringComparison.Ordinal) && !l.StartsWith("date:", StringComparison.Ordinal)))
            + "source: common practice\nauthor: Mod A\ndate: 2026-05-01\n";
    }

    private static void Refused(string code, params ImmutableArray<RuleChange> changes)
    {
        var result = Layer.Empty.Apply(changes);
        Assert.Empty(result.Problems);
        var load = LayeredRules.Load(Shipped, result.Layer!);
        Assert.Null(load.Knowledge);
        Assert.True(load.Problems.Any(p => code.Contains(p.Code, StringComparison.Ordinal)), $"{code} is silent on {changes[0].Key}: {string.Join('\n', load.Problems)}");
    }
}
