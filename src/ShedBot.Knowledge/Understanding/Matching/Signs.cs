using System.Collections.Frozen;
using System.Collections.Immutable;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>
/// What is read over a whole message: that the rider is on the road now or asks to ride home, and words beside which an emergency is not
/// meant ("smells of petrol when filling up"). Their word rules are reserved: <see cref="RidingNow"/>,
/// "no " + the emergency's id, and "sure " + its id for words that outweigh those.
/// </summary>
internal sealed class Signs
{
    public const string RidingNow = "riding now";

    private const string No = "no ", Sure = "sure ";

    private readonly PlainTerms ridingNow;
    private readonly ImmutableArray<(string Emergency, PlainTerms Terms)> against, certain;

    public Signs(KnowledgeBase knowledge)
    {
        ridingNow = new PlainTerms(knowledge.Words.Where(w => w.Concept == RidingNow).SelectMany(w => w.RidersSay));
        against = Of(No, knowledge);
        certain = Of(Sure, knowledge);
    }

    public static bool IsSign(WordRule rule, KnowledgeBase knowledge) => rule.Concept == RidingNow || IsFor(No, rule, knowledge) || IsFor(Sure, rule, knowledge);

    /// <summary>A phrase with the sign as one feature in the place of the words that tell it.</summary>
    public Phrase With(string meaning, string letters, Func<string, ImmutableArray<Feature>> read) =>
        ridingNow.Without(letters) is { } rest ? new Phrase(meaning, read(rest).Add(new Feature(RidingNow, false))) : new Phrase(meaning, read(letters));

    public ImmutableArray<Statement> With(ImmutableArray<Statement> statements, string letters) =>
        ridingNow.OccurIn(letters)
            ? [.. statements.Select(s => s with { Features = s.Features.Add(new Feature(RidingNow, false)) })]
            : statements;

    /// <summary>The emergencies that the words speak against, and that no surer words bring back: "my wrist hurts", but "I fell off and".</summary>
    public FrozenSet<string> Excluded(string letters) => Heard(against, letters).Except(Heard(certain, letters)).ToFrozenSet();

    private static IEnumerable<string> Heard(ImmutableArray<(string Emergency, PlainTerms Terms)> signs, string letters) =>
        signs.Where(s => s.Terms.OccurIn(letters)).Select(s => s.Emergency);

    private static ImmutableArray<(string, PlainTerms)> Of(string prefix, KnowledgeBase knowledge) =>
        [.. knowledge.Words.Where(w => IsFor(prefix, w, knowledge)).Select(w => (w.Concept[prefix.Length..], new PlainTerms(w.RidersSay)))];

    private static bool IsFor(string prefix, WordRule rule, KnowledgeBase knowledge) =>
        rule.Concept.StartsWith(prefix, StringComparison.Ordinal) && knowledge.Emergencies.ContainsKey(rule.Concept[prefix.Length..]);
}
