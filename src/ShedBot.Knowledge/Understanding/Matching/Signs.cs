using System.Collections.Frozen;
using System.Collections.Immutable;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>
/// What is read over a whole message: that the rider is on the road now or asks to ride home, and words beside which an emergency is not
/// meant ("smells of petrol when filling up"). Their word rules are reserved: <see cref="RidingNow"/>,
/// "no " + the emergency's id, "sure " + its id for words that outweigh those, and "other than " + its id for runs that hold its words and
/// mean something else ("fire extinguisher"): they are taken out, and what else the message says is heard.
/// </summary>
internal sealed class Signs
{
    public const string RidingNow = "riding now";

    private const string No = "no ", Sure = "sure ", Other = "other than ";

    private readonly PlainTerms ridingNow;
    private readonly ImmutableArray<(string Emergency, PlainTerms Terms)> against, certain, others;

    public Signs(KnowledgeBase knowledge)
    {
        ridingNow = new PlainTerms(knowledge.Words.Where(w => w.Concept == RidingNow).SelectMany(w => w.RidersSay));
        against = Of(No, knowledge);
        certain = Of(Sure, knowledge);
        others = Of(Other, knowledge);
    }

    public static bool IsSign(WordRule rule, KnowledgeBase knowledge) => rule.Concept == RidingNow || IsFor(No, rule, knowledge) || IsFor(Sure, rule, knowledge) || IsFor(Other, rule, knowledge);

    /// <summary>A phrase with the sign as one feature in the place of the words that tell it.</summary>
    public Phrase With(string meaning, string letters, Func<string, ImmutableArray<Feature>> read) =>
        ridingNow.Without(letters) is { } rest ? new Phrase(meaning, read(rest).Add(new Feature(RidingNow, false))) : new Phrase(meaning, read(letters));

    public ImmutableArray<Statement> With(ImmutableArray<Statement> statements, string letters) =>
        ridingNow.OccurIn(letters)
            ? [.. statements.Select(s => s with { Features = s.Features.Add(new Feature(RidingNow, false)) })]
            : statements;

    /// <summary>The emergencies that the words speak against, and that no surer words bring back: "my wrist hurts", but "I fell off and".</summary>
    public FrozenSet<string> Excluded(string letters) => Heard(against, letters).Except(Heard(certain, letters)).ToFrozenSet();

    /// <summary>For each emergency whose words are said of something else, the message without those: "on fire, and no fire extinguisher".</summary>
    /// <remarks>The end of the message is the end of its last sentence, which tells "that is fire" from "that is fire under the tank".</remarks>
    public IEnumerable<(string Emergency, string Letters)> WithoutOthers(string letters)
    {
        var ended = letters + ".";
        return others.Where(o => o.Terms.OccurIn(ended)).Select(o => (o.Emergency, o.Terms.WithoutAll(ended)));
    }

    private static IEnumerable<string> Heard(ImmutableArray<(string Emergency, PlainTerms Terms)> signs, string letters) =>
        signs.Where(s => s.Terms.OccurIn(letters)).Select(s => s.Emergency);

    private static ImmutableArray<(string, PlainTerms)> Of(string prefix, KnowledgeBase knowledge) =>
        [.. knowledge.Words.Where(w => IsFor(prefix, w, knowledge)).Select(w => (w.Concept[prefix.Length..], new PlainTerms(w.RidersSay)))];

    private static bool IsFor(string prefix, WordRule rule, KnowledgeBase knowledge) =>
        rule.Concept.StartsWith(prefix, StringComparison.Ordinal) && knowledge.Emergencies.ContainsKey(rule.Concept[prefix.Length..]);
}
