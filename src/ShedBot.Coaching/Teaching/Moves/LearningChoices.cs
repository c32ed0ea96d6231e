using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Teaching.Moves;

/// <summary>What a club has chosen about learning, in lines and options.</summary>
internal static class LearningChoices
{
    /// <summary>Numbers that are told by name; of more it is told how many.</summary>
    private const int MostNamed = 10;

    /// <summary>Always the same number of lines, for comparing.</summary>
    public static ImmutableArray<string> Lines(TeachingSettings settings) =>
    [
        $"Learning from mended cases: {Mode(settings.Learning)}.",
        string.Create(CultureInfo.InvariantCulture, $"Learning moves the odds of a cause by {settings.MostFactor:0.##} times at most, and one member's cases count for {settings.MemberShare * 100:0.#} % of all at most."),
        settings.Off.IsEmpty ? "Any number of the rules may be learnt." : string.Create(CultureInfo.InvariantCulture, $"Numbers that are never learnt: {settings.Off.Count}."),
    ];

    /// <summary>How many numbers are learnt, as the end of a sentence about a club's own rules; empty for none.</summary>
    public static string Learnt(RulesNow rules) => LearntSteps.ByKey(rules.LearntNumbers).Count switch
    {
        0 => "",
        1 => " One number is learnt from its own cases.",
        var count => string.Create(CultureInfo.InvariantCulture, $" {count} numbers are learnt from its own cases."),
    };

    public static string Mode(LearningMode mode) => mode switch
    {
        LearningMode.Off => "it is only counted, and only when somebody asks",
        LearningMode.Proposals => "what is new becomes a proposal",
        _ => "what is new goes live by itself within the limits, and is told",
    };

    public static IEnumerable<CardOption> Options(TeachingSettings settings, KnowledgeBase rules) =>
    [
        .. Enum.GetValues<LearningMode>().Where(m => m != settings.Learning).Select(m => new TeachPress(TeachVerb.Learning, m.ToString()).Option($"Learning: {Short(m)}")),
        .. settings.Off.Take(MostNamed).Select(key => new TeachPress(TeachVerb.Never, TargetWords.Mark(key), "off").Option($"Learn again {TargetWords.Called(rules, key)}")),
        new TeachPress(TeachVerb.Learn).Option("what could be learnt", OptionRole.Help),
    ];

    public static CardOption NeverOption(string mark, bool never) => new TeachPress(TeachVerb.Never, mark, never ? "on" : "off").Option(never ? "Never learn this one" : "Learn this one again");

    private static string Short(LearningMode mode) => mode switch
    {
        LearningMode.Off => "only count",
        LearningMode.Proposals => "make proposals",
        _ => "by itself within the limits",
    };
}
