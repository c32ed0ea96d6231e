using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;

namespace ShedBot.Coaching.Teaching;

/// <summary>One published state of a club's own rules. Never changed, and followed only by the next number.</summary>
/// <param name="Number">From 1, without a gap. Before the first a club goes by the project's rules alone.</param>
/// <param name="Layer">The club's layer as a rule file; empty for none.</param>
/// <param name="Learnt">What was learnt from mended cases, as its own text; empty for nothing.</param>
/// <param name="What">What it changed, in one line.</param>
/// <param name="Proposal">The proposal that it published; null for one that was learnt or taken back to.</param>
/// <param name="By">Who published it; null for one that was learnt by itself, or when they have left.</param>
/// <param name="ByName">What they were called; empty when there is nobody to call.</param>
/// <param name="Base">The version of the project's rules under which it was tried.</param>
public sealed record RulesEdition(
    ClubId Club, int Number, string Layer, string Learnt, string What, string? Proposal, MemberId? By, string ByName, string Base, DateTimeOffset At)
{
    /// <summary>How the club's layer is called in reports.</summary>
    public const string LayerFile = "club.yaml";

    public EditionHead Head => new(Club, Number, What, ByName, At);

    /// <exception cref="FormatException">The text is none that was ever published.</exception>
    public Layer ReadLayer()
    {
        var read = Knowledge.Layers.Layer.Read(RuleText.FromText(LayerFile, Layer));
        return read.Layer ?? throw new FormatException($"Edition {Number} of club {Club} cannot be read: {string.Join(' ', read.Problems.Take(1))}");
    }

    /// <exception cref="FormatException">The text is none that was ever published.</exception>
    public Learnt ReadLearnt()
    {
        if (Learnt.Length == 0) return Knowledge.Compiling.Learnt.Nothing;
        var read = LearntText.Read(Learnt);
        return read.Learnt ?? throw new FormatException($"What edition {Number} of club {Club} has learnt cannot be read: {read.Wrong}");
    }
}

/// <summary>An edition without its text.</summary>
public sealed record EditionHead(ClubId Club, int Number, string What, string ByName, DateTimeOffset At);
