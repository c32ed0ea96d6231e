using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Coaching.Learning.Counting;

/// <summary>A link or a repair's chance that moves.</summary>
/// <param name="Counted">How often it was so.</param>
/// <param name="All">Of how many.</param>
internal sealed record PartCounted(LearningTarget Target, double Before, double After, double Counted, double All, int Cases, int Mended, int Members)
{
    /// <summary>The chances of the words so many steps down and up the scale from a word.</summary>
    public static (double Low, double High) Band(string word, int steps)
    {
        var scale = ChanceWords.Scale;
        var at = Enumerable.Range(0, scale.Length).First(i => scale[i].Word == word);
        return (Math.Max(Learnt.LeastChance, scale[Math.Max(0, at - steps)].Chance), Math.Min(Learnt.MostChance, scale[Math.Min(scale.Length - 1, at + steps)].Chance));
    }
}
