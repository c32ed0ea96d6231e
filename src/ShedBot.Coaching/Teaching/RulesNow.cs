using System.Collections.Concurrent;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching;

/// <summary>A club's rules as they stand: the project's, the club's own newest edition, and both together.</summary>
/// <param name="Edition">0 before the first.</param>
/// <param name="Learnt">What was learnt, as its own text; empty for nothing.</param>
/// <param name="Load">What came of laying the one over the other; parts that no longer fit are set aside.</param>
internal sealed record RulesNow(RuleBase Base, int Edition, Layer Layer, string Learnt, LayeredLoad Load)
{
    /// <summary>Of a club's proposals, those that were looked at last stay laid.</summary>
    private const int MostLaid = 8;

    private readonly ConcurrentDictionary<string, Laid> laid = new();

    public KnowledgeBase Knowledge => Load.Knowledge!;

    /// <summary>What was learnt, as numbers.</summary>
    public Learnt LearntNumbers => LearntText.Read(Learnt).Learnt ?? ShedBot.Knowledge.Compiling.Learnt.Nothing;

    public string BaseVersion => Base.Knowledge!.Version;

    public static CompileOptions Options(string learnt) =>
        LearntText.Read(learnt).Learnt is { IsNothing: false } numbers ? CompileOptions.Default with { Learnt = numbers } : CompileOptions.Default;

    /// <summary>Changes laid over these rules. Looking at a proposal, trying and publishing it ask for the same.</summary>
    /// <param name="changes">As text.</param>
    public Laid Lay(string changes, string learnt)
    {
        var mark = changes + "\n" + learnt;
        if (laid.TryGetValue(mark, out var known)) return known;
        if (laid.Count >= MostLaid) laid.Clear();
        return laid[mark] = Laid.Of(this, ChangesText.Read(changes), Options(learnt));
    }
}

/// <summary>Reads clubs' rules, and keeps those that were read last: laying rules takes a part of a second.</summary>
/// <param name="rules">The project's rules, asked each time.</param>
internal sealed class RulesNowReader(ITeachingStore store, Func<RuleBase> rules)
{
    private const int MostKept = 16;

    private readonly ConcurrentDictionary<ClubId, RulesNow> kept = new();

    public async Task<RulesNow> OfAsync(ClubId club, CancellationToken ct)
    {
        var (under, newest) = (rules(), await store.NewestEditionAsync(club, ct));
        if (kept.TryGetValue(club, out var known) && known.Edition == newest && ReferenceEquals(known.Base, under)) return known;
        var edition = newest == 0 ? null : await store.FindEditionAsync(club, newest, ct);
        var (layer, learnt) = (edition is null ? Layer.Empty : edition.ReadLayer(), edition?.Learnt ?? "");
        var read = new RulesNow(under, newest, layer, learnt, LayeredRules.LoadKept(under, layer, RulesNow.Options(learnt)));
        if (kept.Count >= MostKept) kept.Clear();
        kept[club] = read;
        return read;
    }
}
