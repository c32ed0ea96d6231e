using System.Collections.Immutable;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Tests.Samples;

namespace ShedBot.Knowledge.Tests.Layers;

/// <summary>Each thing that a club must not weaken on both sides of its limit, on the made-up lamp: what is told, of which rule, and what is left alone.</summary>
public class LayerGateTests
{
    private const string Smoke = "lamp-smokes", Wire = "follow-wire", Bulb = "look-at-bulb";

    private static readonly KnowledgeBase Lamp = LampRules.With("riders say: [smoke from the lamp]", "riders say: [smoke from the lamp, lamp on fire]").Knowledge!;

    private static readonly EitherRule Which = new(
        "which-lamp", "which lamp it is", [], ["light"], ["does nothing"], [], "Which?", "They look alike.", "In front?", null,
        Lamp.Emergencies[Smoke].Caution, ["Stop the wheel."], "Leave it.", [new EitherAnswer("This", [], [], "dark"), new EitherAnswer("That", [], [], Smoke)], Lamp.Triage.Origin);

    private static readonly RuleKey Run = new(RuleKind.Finding, "wire-run");

    /// <summary>What is less safe: the rule of the linter, and the change.</summary>
    public static TheoryData<string, Func<KnowledgeBase, KnowledgeBase>> Weaker => new()
    {
        { "R100", k => k with { Emergencies = k.Emergencies.Remove(Smoke) } },
        { "R100", k => Emergency(k, e => e with { RidersSay = e.RidersSay.RemoveAt(1) }) },
        { "R100", k => Emergency(k, e => e with { Caution = e.Caution with { Word = "CAUTION" } }) },
        { "R100", k => Emergency(k, e => e with { Caution = e.Caution with { Hazard = "Warm wire" } }) },
        { "R100", k => Emergency(k, e => e with { Caution = e.Caution with { Consequence = "may be felt" } }) },
        { "R100", k => Emergency(k, e => e with { Caution = e.Caution with { Avoid = "take care" } }) },
        { "R100", k => Emergency(k, e => e with { DoNow = e.DoNow.RemoveAt(0) }) },
        { "R100", k => Emergency(k, e => e with { DoNow = [e.DoNow[1], e.DoNow[0]] }) },
        { "R100", k => Emergency(k, e => e with { EndsCoaching = false }) },
        { "R101", k => k with { Triage = k.Triage with { Ask = "Ready?" } } },
        { "R101", k => k with { Triage = k.Triage with { Ready = "Go on" } } },
        { "R101", k => k with { Triage = k.Triage with { NotYet = "Later" } } },
        { "R101", k => k with { Triage = k.Triage with { Points = [] } } },
        { "R101", k => k with { Triage = k.Triage with { Dangers = [] } } },
        { "R101", k => k with { Eithers = [Which] } },
        { "R102", k => k with { Findings = k.Findings.Remove("wire-run") } },
        { "R102", k => Finding(k, f => f with { States = f.States.RemoveAt(1) }) },
        { "R102", k => Hanging(k, s => s with { StopRiding = null }) },
        { "R102", k => Hanging(k, s => s with { StopRiding = "Take care." }) },
        { "R102", k => Hanging(k, s => s with { Says = "Fine" }) },
        { "R102", k => Check(k, Wire, c => c with { Answers = c.Answers.SetItem("hanging", "It is fine") }) },
        { "R102", k => Check(k, Wire, c => c with { Answers = c.Answers.Remove("hanging") }) },
        { "R103", k => k with { Checks = k.Checks.Remove(Wire) } },
        { "R103", k => Check(k, Wire, c => c with { Hazard = "low" }) },
        // One minute at first: twice as long and five on top are seven.
        { "R103", k => Check(k, Wire, c => c with { Minutes = 7.1 }) },
        { "R103", k => Check(k, Wire, c => c with { Minutes = 4.1, Cover = "lamp-glass" }) },
        // A quick one that is more hazardous, beside a safe one that takes long: neither will do.
        { "R103", k => Added(Check(k, Wire, c => c with { Minutes = 60 }), c => c with { Hazard = "low" }) },
        { "R103", k => k with { Faults = k.Faults.Remove("wire-off") } },
        { "R103", k => Fault(k, f => f with { ShowsAs = f.ShowsAs.Remove("wire-run") }) },
        { "R103", k => Shown(k, "very unlikely") },
        { "R103", k => Fault(k, f => f with { MovedBy = [new ProfileCondition("bulb-age", "this-year", 0)] }) },
        { "R104", k => Repair(k, r => r with { Hazard = "low" }) },
        { "R104", k => Service(k, s => s with { Hazard = "none" }) },
        { "R105", k => Repair(k, r => r with { Cautions = [] }) },
        { "R105", k => Repair(k, r => r with { Cautions = [r.Cautions[0] with { Word = "NOTICE" }] }) },
        { "R105", k => Repair(k, r => r with { Cautions = [r.Cautions[0] with { Hazard = "Glass" }] }) },
        { "R105", k => Repair(k, r => r with { Cautions = [r.Cautions[0] with { Consequence = "may be felt" }] }) },
        { "R105", k => Repair(k, r => r with { Cautions = [r.Cautions[0] with { Avoid = "take care" }] }) },
        { "R105", k => Service(k, s => s with { Cautions = [] }) },
        { "R106", k => Check(k, Bulb, c => c with { HandsOn = false }) },
        { "R107", k => k with { Words = k.Words.Add(new WordRule("no lamp-smokes", ["in the film"], k.Words[0].Origin)) } },
        { "R107", k => k with { Words = k.Words.Add(new WordRule("riding now", ["off we go"], k.Words[0].Origin)) } },
    };

    /// <summary>What is as safe as before, or safer: the other side of each limit.</summary>
    public static TheoryData<string, Func<KnowledgeBase, KnowledgeBase>> AsSafe => new()
    {
        { "a copy", k => Emergency(k, e => e with { DoNow = [.. e.DoNow] }) },
        { "one more phrase", k => Emergency(k, e => e with { RidersSay = e.RidersSay.Add("the lamp is smoking") }) },
        { "a louder word", k => Emergency(k, e => e with { Caution = e.Caution with { Word = "DANGER" } }) },
        { "something to do in between", k => Emergency(k, e => e with { DoNow = e.DoNow.Insert(1, "Call out.") }) },
        { "something to do at the end", k => Emergency(k, e => e with { DoNow = e.DoNow.Add("Call the club.") }) },
        { "an emergency more", k => k with { Emergencies = k.Emergencies.Add("other", k.Emergencies[Smoke] with { Id = "other", RidersSay = ["the mast falls"] }) } },
        { "the question, copied", k => k with { Triage = k.Triage with { Points = [.. k.Triage.Points], Dangers = [.. k.Triage.Dangers] } } },
        { "the questions that tell apart, copied", k => k with { Eithers = [.. k.Eithers] } },
        { "a phrase for the stop", k => Hanging(k, s => s with { RidersSay = s.RidersSay.Add("the wire swings about") }) },
        { "another answer to the check", k => Check(k, Wire, c => c with { Answers = c.Answers.SetItem("firm", "Tight") }) },
        { "just not too long", k => Check(k, Wire, c => c with { Minutes = 7 }) },
        { "just not too long, cover and all", k => Check(k, Wire, c => c with { Minutes = 4, Cover = "lamp-glass" }) },
        { "a cover that is not known", k => Check(k, Wire, c => c with { Minutes = 7, Cover = "no such" }) },
        { "another check for it", k => Added(k, c => c) with { Checks = Added(k, c => c).Checks.Remove(Wire) } },
        { "a more hazardous one beside it", k => Added(k, c => c with { Hazard = "high" }) },
        { "shown just often enough", k => Shown(k, "unlikely") },
        { "moved, not taken out", k => Fault(k, f => f with { MovedBy = [new ProfileCondition("bulb-age", "this-year", 2)] }) },
        { "more hazardous", k => Repair(k, r => r with { Hazard = "high" }) },
        { "for a helper", k => Repair(k, r => r with { ForHelper = "an old hand" }) },
        { "a caution more", k => Repair(k, r => r with { Cautions = r.Cautions.Insert(0, r.Cautions[0] with { Hazard = "Damp" }) }) },
        { "a louder caution", k => Repair(k, r => r with { Cautions = [r.Cautions[0] with { Word = "WARNING" }] }) },
        { "hands on", k => Check(k, Wire, c => c with { HandsOn = true }) },
        { "a repair retired", k => k with { Repairs = k.Repairs.Remove("fit-bulb") } },
        { "a plain word more", k => k with { Words = k.Words.Add(new WordRule("bell", ["ringer"], k.Words[0].Origin)) } },
        { "the same words", k => k with { Words = [.. k.Words] } },
    };

    [Theory]
    [MemberData(nameof(Weaker))]
    public void Check_ThingWeakened_IsToldByItsRuleAlone(string code, Func<KnowledgeBase, KnowledgeBase> change)
    {
        var told = Assert.Single(LayerSafety.Check(Lamp, change(Lamp)));
        Assert.Equal(code, told.Rule.Code);
        Assert.Equal($"{told.What} {told.Mend}", told.ToString());
    }

    [Theory]
    [MemberData(nameof(AsSafe))]
    public void Check_ThingLeftOrMadeSafer_IsSilent(string what, Func<KnowledgeBase, KnowledgeBase> change) =>
        Assert.True(LayerSafety.Check(Lamp, change(Lamp)) is { IsEmpty: true }, what);

    /// <summary>What a line says of safety stays in every kind of work, as a step, as its note, and as an answer; another line may go.</summary>
    [Theory]
    [InlineData("how: [Follow the wire with your eyes from the hub to the lamp]", "how: [Follow the wire, Keep fingers off]", "check")]
    [InlineData("how: [Undo the screw, Lift the glass off]", "how: [Undo the screw, Never pull at the glass]", "cover")]
    [InlineData("      - do: Turn the bulb until it stops.", "      - do: Turn the bulb until it stops.\n      - do: Let it get cold.", "repair")]
    [InlineData("      - do: Turn the bulb until it stops.", "      - do: Turn the bulb until it stops.\n        note: Gloves on.", "repair")]
    [InlineData("      - do: Look at the clip.", "      - do: Look at the clip.\n        note: Wheel still.", "service task")]
    [InlineData("answer: [Read the figures on the base of the old one.]", "answer: [Read the figures on the base of the old one., Do not touch the glass.]", "how to")]
    public void Check_SafeLineDropped_IsTold(string from, string to, string kind)
    {
        var (plain, safe) = (LampRules.Knowledge(), LampRules.With(from, to).Knowledge!);
        var told = Assert.Single(LayerSafety.Check(safe, plain));
        Assert.Equal("R108", told.Rule.Code);
        Assert.Equal(kind, RuleKinds.Word(told.Key.Kind));
        Assert.Empty(LayerSafety.Check(plain, safe));
    }

    [Fact]
    public void Check_ForHelperDroppedOrReworded_IsTold()
    {
        var held = Repair(Lamp, r => r with { ForHelper = "an old hand" });
        Assert.Equal("R104", Assert.Single(LayerSafety.Check(held, Lamp)).Rule.Code);
        Assert.Equal("R104", Assert.Single(LayerSafety.Check(held, Repair(held, r => r with { ForHelper = "anybody" }))).Rule.Code);
        Assert.Empty(LayerSafety.Check(held, Repair(held, r => r with { Minutes = 9 })));
    }

    /// <summary>A phrase of a stop is kept like its words.</summary>
    [Fact]
    public void Check_PhraseOfAStopDropped_IsTold()
    {
        var said = Hanging(Lamp, s => s with { RidersSay = ["the wire swings about", "wire in the spokes"] });
        Assert.Contains("wire in the spokes", Assert.Single(LayerSafety.Check(said, Hanging(said, s => s with { RidersSay = ["the wire swings about"] }))).What, StringComparison.Ordinal);
    }

    /// <summary>Of several checks the quickest of the safest is the measure: a quicker one that is more hazardous is not.</summary>
    [Fact]
    public void Check_QuickestOfTheSafest_IsTheMeasure()
    {
        var two = Added(Check(Lamp, Wire, c => c with { Minutes = 10 }), c => c with { Hazard = "low", Minutes = 0.5 });
        Assert.Empty(LayerSafety.Check(two, Check(two, Wire, c => c with { Minutes = 25 })));
        Assert.Equal("R103", Assert.Single(LayerSafety.Check(two, Check(two, Wire, c => c with { Minutes = 25.1 }))).Rule.Code);
        var both = Added(Check(Lamp, Wire, c => c with { Minutes = 10 }), c => c with { Minutes = 2 });
        Assert.Contains("Stay within 9 minutes", Assert.Single(LayerSafety.Check(both, both with { Checks = both.Checks.Remove("tug-wire") })).Mend, StringComparison.Ordinal);
    }

    /// <summary>The cover of the project's own check counts as well, and is among what may be the reason.</summary>
    [Fact]
    public void Check_StopBehindACover_CountsTheCoverAndNamesIt()
    {
        var behind = Check(Lamp, Wire, c => c with { Cover = "lamp-glass" });
        var slow = behind with { Covers = behind.Covers.SetItem("lamp-glass", behind.Covers["lamp-glass"] with { Minutes = 12.1 }) };
        var told = Assert.Single(LayerSafety.Check(behind, slow));
        Assert.Equal((Run, "R103"), (told.Key, told.Rule.Code));
        Assert.Equal<RuleKey>([new RuleKey(RuleKind.Check, Wire), new RuleKey(RuleKind.Cover, "lamp-glass")], told.Suspects);
        Assert.Empty(LayerSafety.Check(behind, behind with { Covers = behind.Covers.SetItem("lamp-glass", behind.Covers["lamp-glass"] with { Minutes = 12 }) }));
    }

    /// <summary>A stop that no check of the project's tells, or that no fault of its shows as, is asked of nobody.</summary>
    [Fact]
    public void Check_StopThatTheProjectNeverReached_IsAskedOfNobody()
    {
        var unasked = Lamp with { Checks = Lamp.Checks.Remove(Wire) };
        Assert.Empty(LayerSafety.Check(unasked, unasked with { Version = "again" }));
        Assert.Equal("R103", Assert.Single(LayerSafety.Check(unasked, Shown(unasked, "very unlikely"))).Rule.Code);
        var seldom = Shown(Lamp, "very unlikely");
        Assert.Empty(LayerSafety.Check(seldom, seldom with { Version = "again" }));
        Assert.Equal("R103", Assert.Single(LayerSafety.Check(seldom, Shown(seldom, "almost no chance"))).Rule.Code);
        var never = Fault(Lamp, f => f with { ShowsAs = f.ShowsAs.Remove("wire-run") });
        Assert.Empty(LayerSafety.Check(never, never with { Faults = never.Faults.Remove("wire-off") }));
    }

    /// <summary>What takes a fault out is told where the club says it, and not where the project does.</summary>
    [Fact]
    public void Check_FaultThatTheProjectTakesOut_IsTheProjectsWord()
    {
        var gone = Fault(Lamp, f => f with { MovedBy = [new ProfileCondition("bulb-age", "this-year", 0)] });
        Assert.Empty(LayerSafety.Check(gone, gone with { Version = "again" }));
        var told = Assert.Single(LayerSafety.Check(Lamp, gone));
        Assert.Equal<RuleKey>([new RuleKey(RuleKind.Fault, "wire-off")], told.Suspects);
    }

    /// <summary>What the club changed of words and phrases is named beside an emergency that is not understood any more; what is as it was is not.</summary>
    [Fact]
    public void Check_EmergencyUnheard_NamesWhatWasChanged()
    {
        var dark = Lamp.Complaints["dark"];
        var club = Lamp with
        {
            Complaints = Lamp.Complaints.SetItem("dark", dark with { RidersSay = dark.RidersSay.Add("smoke from the lamp") }).Remove("flickers"),
            Words = [.. Lamp.Words.Select(w => w with { RidersSay = w.RidersSay.Add("smoke from the lamp") })],
        };
        var told = Assert.Single(LayerSafety.Check(Lamp, club));
        Assert.Equal("R107", told.Rule.Code);
        Assert.Equal(new RuleKey(RuleKind.Emergency, Smoke), told.Key);
        Assert.Equal<RuleKey>([new RuleKey(RuleKind.Word, "lamp"), new RuleKey(RuleKind.Complaint, "dark"), new RuleKey(RuleKind.Complaint, "flickers")], told.Suspects);
    }

    /// <summary>A word that was dropped may be the reason as well as one that came; one that is as it was may not.</summary>
    [Fact]
    public void Check_EmergencyUnheard_NamesWordsThatCameAndWentAlone()
    {
        WordRule bell = new("bell", ["ringer"], Lamp.Words[0].Origin), mast = bell with { Concept = "mast", RidersSay = ["pole"] };
        var told = Assert.Single(LayerSafety.Check(
            Lamp with { Words = [.. Lamp.Words, bell, mast] },
            Lamp with { Words = [Lamp.Words[0] with { RidersSay = ["smoke from the lamp"] }, bell] }));
        Assert.Equal<RuleKey>([new RuleKey(RuleKind.Word, "lamp"), new RuleKey(RuleKind.Word, "mast")], told.Suspects);
    }

    [Fact]
    public void Check_SeveralReservedWordsChanged_AreToldInTheOrderOfTheAlphabet() => Assert.Equal(
        ["no lamp-smokes", "riding now"],
        LayerSafety.Check(Lamp, Lamp with { Words = [new WordRule("riding now", ["off we go"], Lamp.Words[0].Origin), .. Lamp.Words, new WordRule("no lamp-smokes", ["in the film"], Lamp.Words[0].Origin)] }).Select(w => w.Key.Id));

    private static KnowledgeBase Emergency(KnowledgeBase k, Func<EmergencyRule, EmergencyRule> change) => k with { Emergencies = k.Emergencies.SetItem(Smoke, change(k.Emergencies[Smoke])) };

    private static KnowledgeBase Finding(KnowledgeBase k, Func<FindingRule, FindingRule> change) => k with { Findings = k.Findings.SetItem("wire-run", change(k.Findings["wire-run"])) };

    private static KnowledgeBase Hanging(KnowledgeBase k, Func<StateRule, StateRule> change) => Finding(k, f => f with { States = f.States.SetItem(1, change(f.States[1])) });

    private static KnowledgeBase Check(KnowledgeBase k, string id, Func<CheckRule, CheckRule> change) => k with { Checks = k.Checks.SetItem(id, change(k.Checks[id])) };

    /// <summary>A second check for the wire.</summary>
    private static KnowledgeBase Added(KnowledgeBase k, Func<CheckRule, CheckRule> change) => k with { Checks = k.Checks.Add("tug-wire", change(Lamp.Checks[Wire] with { Id = "tug-wire" })) };

    private static KnowledgeBase Fault(KnowledgeBase k, Func<FaultRule, FaultRule> change) => k with { Faults = k.Faults.SetItem("wire-off", change(k.Faults["wire-off"])) };

    private static KnowledgeBase Shown(KnowledgeBase k, string word) => Fault(k, f => f with { ShowsAs = f.ShowsAs.SetItem("wire-run", ImmutableDictionary<string, string>.Empty.Add("hanging", word)) });

    private static KnowledgeBase Repair(KnowledgeBase k, Func<RepairRule, RepairRule> change) => k with { Repairs = k.Repairs.SetItem("fit-bulb", change(k.Repairs["fit-bulb"])) };

    private static KnowledgeBase Service(KnowledgeBase k, Func<ServiceRule, ServiceRule> change) => k with { Service = k.Service.SetItem("wipe-glass", change(k.Service["wipe-glass"])) };
}
