using ShedBot.Knowledge.Layers;

namespace ShedBot.Knowledge.Tests.Layers;

public class LayerEditTests
{
    private static readonly RuleKey Loose = new(RuleKind.Fault, "bulb-loose"), Dark = new(RuleKind.Complaint, "dark"), Worn = new(RuleKind.Fault, "switch-worn");

    private static readonly RulePath Common = new("how common"), Says = new("riders say");

    private static readonly Credit Credit = LampClub.Credit;

    [Fact]
    public void Apply_ValueMended_StandsWithItsCredit()
    {
        var mend = Assert.Single(Made(Layer.Empty, new MendValue(Loose, Common, "common", "rare", Credit)).Mends);

        Assert.Equal(("common", "rare", Common, Credit), (mend.Was, mend.Now, mend.Path, mend.Credit));
    }

    [Fact]
    public void Apply_MendedAgain_KeepsWhatTheBaseSaid()
    {
        var once = Made(Layer.Empty, new MendValue(Loose, Common, "common", "rare", Credit));

        var mend = Assert.Single(Made(once, new MendValue(Loose, Common, "rare", "uncommon", Credit)).Mends);

        Assert.Equal(("common", "uncommon"), (mend.Was, mend.Now));
    }

    [Fact]
    public void Apply_MendedBack_IsNoMendAnyMore() =>
        Assert.True(Made(Layer.Empty, new MendValue(Loose, Common, "common", "rare", Credit), new MendValue(Loose, Common, "rare", "common", Credit)).IsEmpty);

    [Fact]
    public void Apply_TextAddedAndDroppedAgain_IsNoMendAnyMore()
    {
        Assert.True(Made(Layer.Empty, new MendList(Dark, Says, "pitch black", null, Credit), new MendList(Dark, Says, null, "pitch black", Credit)).IsEmpty);
        Assert.True(Made(Layer.Empty, new MendList(Dark, Says, null, "lamp is dead", Credit), new MendList(Dark, Says, "lamp is dead", null, Credit)).IsEmpty);
    }

    [Fact]
    public void Apply_ClubsOwnRuleMended_ChangesTheRuleItself()
    {
        var layer = Made(LampClub.Layer,
            new MendValue(Worn, Common, "uncommon", "rare", Credit),
            new MendValue(Worn, RulePath.Of("shows as", "flickers", "yes"), null, "likely", Credit),
            new MendValue(Worn, RulePath.Of("moved by", "bulb-age years-ago", "times"), null, "3", Credit),
            new MendList(new(RuleKind.Check, "press-switch"), new("how"), "Press it twice.", null, Credit));

        Assert.Equal(LampClub.Layer.Mends.Length, layer.Mends.Length);
        var knowledge = LayeredRules.Load(LampClub.Base, layer).Knowledge!;
        Assert.Equal("rare", knowledge.Faults["switch-worn"].HowCommon);
        Assert.Equal("likely", knowledge.Faults["switch-worn"].ShowsAs["flickers"]["yes"]);
        Assert.Equal(3, Assert.Single(knowledge.Faults["switch-worn"].MovedBy).Times);
        Assert.Equal("Press it twice.", Assert.Single(knowledge.Checks["press-switch"].How));
        Assert.Equal("Rider B", knowledge.Faults["switch-worn"].Origin.SaidBy);
    }

    [Fact]
    public void Apply_WholeRulePut_TakesThePlaceOfItsMendsAndRetirement()
    {
        var yaml = LampClub.Base.YamlOf(Loose)! + "source: common practice\nauthor: Mod A\ndate: 2026-05-01\n";

        Assert.Single(Made(Layer.Empty, new MendValue(Loose, Common, "common", "rare", Credit), new PutRule(Loose, yaml)).Items);
        Assert.Empty(Made(Layer.Empty, new MendValue(Loose, Common, "common", "rare", Credit), new PutRule(Loose, yaml)).Mends);
        Assert.Empty(Made(Layer.Empty, new Retire(Loose, "no bulbs", Credit), new PutRule(Loose, yaml)).Retires);
        Assert.True(Made(Layer.Empty, new PutRule(Loose, yaml), new DropRule(Loose)).IsEmpty);
    }

    [Fact]
    public void Apply_RetiredAndRestored_IsAsBefore()
    {
        var layer = Made(LampClub.Layer, new Retire(Loose, "no bulbs", Credit));

        Assert.DoesNotContain(layer.Mends, m => m.Key == Loose);
        Assert.Equal("no bulbs", layer.Retires.Single(r => r.Key == Loose).Because);
        Assert.DoesNotContain(Made(layer, new Restore(Loose)).Retires, r => r.Key == Loose);
    }

    public static TheoryData<string, RuleChange> Refused => new()
    {
        { "there is no fault 'bulb-loose' of the club's own to drop.", new DropRule(Loose) },
        { "'how common' of the fault 'wire-frayed' is not mended that way.", new Unmend(new(RuleKind.Fault, "wire-frayed"), Common) },
        { "the fault 'bulb-loose' is not retired.", new Restore(Loose) },
        { "the fault 'switch-worn' is the club's own: drop it.", new Retire(Worn, "x", Credit) },
        { "'very common' stands under 'how common' by now.", new MendValue(new(RuleKind.Fault, "wire-off"), Common, "rare", "uncommon", Credit) },
        { "'uncommon' stands under 'how common' by now.", new MendValue(Worn, Common, "common", "rare", Credit) },
        { "nothing stands under 'shows as / flickers / yes' by now.", new MendValue(Worn, RulePath.Of("shows as", "flickers", "yes"), "likely", "rare", Credit) },
        { "'id' of a fault is no single value.", new MendValue(Loose, new("id"), "bulb-loose", "x", Credit) },
        { "'riders say' of a complaint is no single value.", new MendValue(Dark, Says, null, "x", Credit) },
        { "'how common' of a fault is no list of texts.", new MendList(Loose, Common, "x", null, Credit) },
        { "one text is added or dropped at a time.", new MendList(Dark, Says, "x", "y", Credit) },
        { "one text is added or dropped at a time.", new MendList(Dark, Says, null, null, Credit) },
        { "the fault 'bulb-burnt' is retired.", new MendValue(new(RuleKind.Fault, "bulb-burnt"), Common, "very common", "rare", Credit) },
        { "the change names no rule.", new DropRule(default) },
        { "half a character (U+D800) stands here.", new MendValue(Loose, Common, "common", "x\uD800", Credit) },
        { "the hidden character U+202E stands here.", new MendList(Dark, Says, "da\u202Erk", null, Credit) },
        { "the hidden character U+0000 stands here.", new Retire(Loose, "\0", Credit) },
    };

    /// <summary>R097 and R002: the number of the change is told, and nothing at all is changed.</summary>
    [Theory]
    [MemberData(nameof(Refused))]
    public void Apply_ChangeThatDoesNotFit_IsToldAndNothingIsMade(string says, RuleChange change)
    {
        var result = LampClub.Layer.Apply([new MendList(Dark, Says, "no shine", null, Credit), change]);

        Assert.Null(result.Layer);
        var problem = Assert.Single(result.Problems);
        Assert.Equal((says, 2), (problem.What, problem.Line));
        Assert.Contains(problem.Code, new[] { "R097", "R002" });
    }

    [Fact]
    public void Apply_TextThatIsNoRule_IsToldAtItsLine()
    {
        var result = Layer.Empty.Apply([new PutRule(Worn, "id: switch-worn\nis: worn\nbecause: x\nhow common: usual\nshows as: {dark: {yes: likely}}\n")]);

        var problem = Assert.Single(result.Problems);
        Assert.Equal(("fault switch-worn", 4, "R013"), (problem.File, problem.Line, problem.Code));
        Assert.Equal("R097", Assert.Single(Layer.Empty.Apply([new PutRule(Worn, LampClub.Base.YamlOf(Loose)!)]).Problems).Code);
        Assert.Equal("R004", Assert.Single(Layer.Empty.Apply([new PutRule(Worn, "- a list")]).Problems).Code);
    }

    private static Layer Made(Layer layer, params RuleChange[] changes)
    {
        var result = layer.Apply(changes);
        Assert.Empty(result.Problems.Select(p => p.ToString()));
        return result.Layer!;
    }
}
