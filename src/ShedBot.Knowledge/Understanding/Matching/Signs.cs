using System.Collections.Frozen;
using System.Collections.Immutable;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>
/// What is read over a whole message: that the rider is on the road now or asks to ride home, and words beside which an emergency is not
/// meant ("smells of petrol when filling up"). Their word rules are reserved: <see cref="RidingNow"/> and "no " + the emergency's id.
/// </summary>
internal sealed class Signs
{
    public const string RidingNow = "riding now";

    private const string No = "no ";

    private readonly PlainTerms ridingNow;
    private readonly ImmutableArray<(string Emergency, PlainTerms Terms)> against;

    public Signs(KnowledgeBase knowledge)
    {
        ridingNow = new PlainTerms(knowledge.Words.Where(w => w.Concept == RidingNow).SelectMany(w => w.RidersSay));
        against = [.. knowledge.Words.Where(w => IsAgainst(w, knowledge)).Select(w => (w.Concept[No.Length..], new PlainTerms(w.RidersSay)))];
    }

    public static bool IsSign(WordRule rule, KnowledgeBase knowledge) => rule.Concept == RidingNow || IsAgainst(rule, knowledge);

    /// <summary>The features with the sign among them where the words hold it.</summary>
    public ImmutableArray<Feature> With(ImmutableArray<Feature> features, string letters) =>
        ridingNow.OccurIn(letters) ? features.Add(new Feature(RidingNow, false)) : features;

    public ImmutableArray<Statement> With(ImmutableArray<Statement> statements, string letters) =>
        ridingNow.OccurIn(letters)
            ? [.. statements.Select(s => s with { Features = s.Features.Add(new Feature(RidingNow, false)) })]
            : statements;

    /// <summary>The emergencies that the words speak against.</summary>
    public FrozenSet<string> Excluded(string letters) => against.Where(a => a.Terms.OccurIn(letters)).Select(a => a.Emergency).ToFrozenSet();

    private static bool IsAgainst(WordRule rule, KnowledgeBase knowledge) =>
        rule.Concept.StartsWith(No, StringComparison.Ordinal) && knowledge.Emergencies.ContainsKey(rule.Concept[No.Length..]);
}
