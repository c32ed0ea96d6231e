namespace ShedBot.Reasoning.Words;

/// <summary>Numbers to words and back, by the bands of <see cref="LikelihoodWord"/>.</summary>
/// <remarks>
/// The directive's bands share their end points; here each takes its lower end in and leaves its upper end to the next. It has no word under 1 %
/// or over 99 %: those get the outermost words too, never 'impossible' or 'certain'. It also says not to mix its two rows of words, nor to put
/// a confidence level and a likelihood in one sentence.
/// </remarks>
public static class LikelihoodWords
{
    private static readonly (LikelihoodWord Word, string Text, double From, double To)[] Bands =
    [
        (LikelihoodWord.AlmostNoChance, "almost no chance", 0.01, 0.05),
        (LikelihoodWord.VeryUnlikely, "very unlikely", 0.05, 0.20),
        (LikelihoodWord.Unlikely, "unlikely", 0.20, 0.45),
        (LikelihoodWord.RoughlyEvenChance, "roughly even chance", 0.45, 0.55),
        (LikelihoodWord.Likely, "likely", 0.55, 0.80),
        (LikelihoodWord.VeryLikely, "very likely", 0.80, 0.95),
        (LikelihoodWord.AlmostCertain, "almost certain", 0.95, 0.99),
    ];

    /// <param name="probability">In [0, 1].</param>
    public static LikelihoodWord For(double probability) => probability is >= 0 and <= 1
        ? Bands.Last(b => b.Word == LikelihoodWord.AlmostNoChance || probability >= b.From).Word
        : throw new ArgumentOutOfRangeException(nameof(probability), probability, "A probability lies between 0 and 1.");

    /// <summary>The words, in small letters.</summary>
    public static string Text(LikelihoodWord word) => Bands[(int)word].Text;

    /// <summary>The middle of the band: 3, 12.5, 32.5, 50, 67.5, 87.5 or 97 %. A starting value for a rule that is given in words, to be learnt from then on.</summary>
    public static double Start(LikelihoodWord word) => (Bands[(int)word].From + Bands[(int)word].To) / 2;

    /// <summary>Both ends of the band; the lower one belongs to it.</summary>
    public static (double From, double To) Range(LikelihoodWord word) => (Bands[(int)word].From, Bands[(int)word].To);

    /// <summary>Reads the words of <see cref="Text"/>, whatever the case and the spaces around.</summary>
    public static bool TryRead(string text, out LikelihoodWord word)
    {
        foreach (var band in Bands)
        {
            word = band.Word;
            if (string.Equals(band.Text, text.Trim(), StringComparison.OrdinalIgnoreCase)) return true;
        }

        word = default;
        return false;
    }
}
