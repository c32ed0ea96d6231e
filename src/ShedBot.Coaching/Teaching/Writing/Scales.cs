using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Knowledge.Wording;
using ShedBot.Reasoning.Words;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>The fixed words of the rules as things to pick, each with what it means.</summary>
public static class Scales
{
    /// <summary>Strongest first, each with its band.</summary>
    public static ImmutableArray<Choice> Chance { get; } =
    [
        .. Enum.GetValues<LikelihoodWord>().OrderDescending().Select(w => new Choice(LikelihoodWords.Text(w), $"{LikelihoodWords.Text(w)} ({Band(w)})", OutOfTen(w))),
    ];

    /// <summary>Commonest first; each word is about half the one before.</summary>
    public static ImmutableArray<Choice> Frequency { get; } =
    [
        .. FrequencyWords.Priors.OrderByDescending(p => p.Value).Select(p =>
            new Choice(p.Key, string.Create(CultureInfo.InvariantCulture, $"{p.Key} (on about 1 of {Math.Round(1 / p.Value)} bikes that come with a trouble)"))),
    ];

    /// <summary>What a fact of the bike does to the odds of a cause, most first.</summary>
    /// <remarks>Common practice, no source: steps that are far enough apart to tell by feel.</remarks>
    public static ImmutableArray<Choice> Times { get; } =
    [
        new("5", "far likelier (five times the odds)"),
        new("3", "much likelier (three times the odds)"),
        new("2", "likelier (twice the odds)"),
        new("0.5", "less likely (half the odds)"),
        new("0.2", "far less likely (a fifth of the odds)"),
        new("0", "it cannot be this cause then"),
    ];

    public static ImmutableArray<Choice> Hazard { get; } =
    [
        new("none", "none: nobody can be hurt"),
        new("low", "low: a scratch or a pinch"),
        new("medium", "medium: it can hurt, with engine parts, heat, chemicals or springs"),
        new("high", "high: it can maim or kill"),
    ];

    public static ImmutableArray<Choice> Reliability { get; } =
    [
        new("plain to see", "plain to see: a beginner is hardly ever wrong"),
        new("easy to misread", "easy to misread: a beginner is wrong about 1 time in 12"),
        new("takes a practised eye", "takes a practised eye: a beginner is wrong about 1 time in 7"),
    ];

    /// <remarks>ANSI Z535.6, from memory.</remarks>
    public static ImmutableArray<Choice> Signal { get; } =
    [
        new("DANGER", "DANGER: will kill or maim"),
        new("WARNING", "WARNING: could kill or maim"),
        new("CAUTION", "CAUTION: could hurt a little"),
        new("NOTICE", "NOTICE: breaks things, not people"),
    ];

    public static ImmutableArray<Choice> YesNo { get; } = [new("yes", "yes"), new("no", "no")];

    /// <summary>"95 to 99 %".</summary>
    /// <param name="word">A chance word of the rules.</param>
    public static string BandOf(string word) => LikelihoodWords.TryRead(word, out var read) ? Band(read) : "";

    /// <summary>How a chance word reads in a sentence: "almost always".</summary>
    public static string Adverb(string word) => word switch
    {
        "almost certain" => "almost always",
        "very likely" => "very often",
        "likely" => "often",
        "roughly even chance" => "about every other time",
        "unlikely" => "now and then",
        "very unlikely" => "seldom",
        "almost no chance" => "hardly ever",
        _ => word,
    };

    private static string Band(LikelihoodWord word)
    {
        var (from, to) = LikelihoodWords.Range(word);
        return string.Create(CultureInfo.InvariantCulture, $"{Math.Round(from * 100)} to {Math.Round(to * 100)} %");
    }

    private static string OutOfTen(LikelihoodWord word) => word switch
    {
        LikelihoodWord.AlmostCertain => "you can hardly have one without the other",
        LikelihoodWord.VeryLikely => "nine times in ten",
        LikelihoodWord.Likely => "two times in three",
        LikelihoodWord.RoughlyEvenChance => "every other time",
        LikelihoodWord.Unlikely => "one time in three",
        LikelihoodWord.VeryUnlikely => "one time in eight",
        _ => "once in a blue moon",
    };
}
