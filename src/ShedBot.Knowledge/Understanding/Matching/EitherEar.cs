using System.Collections.Immutable;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <param name="Rule">The id of the question.</param>
/// <param name="Asks">Whether the words say outright that it is not known: "clutch or brake".</param>
/// <param name="Named">What the words name outright, as the id of a complaint or emergency; null when they leave it open.</param>
internal readonly record struct EitherHeard(string Rule, bool Asks, string? Named);

/// <summary>
/// Whether a message could mean either of two troubles: it names the thing and tells something of it, close together. Heard in the words as
/// they are written: "nothing happens" loses its sense where a 'not' is only a sign.
/// </summary>
internal sealed class EitherEar
{
    /// <summary>So many words may lie between the thing and what is told of it.</summary>
    private const int Near = 8;

    /// <summary>Words of a message whose spelling is looked at.</summary>
    private const int MostRepairs = 120;

    private readonly ImmutableArray<Terms> rules;

    public EitherEar(IEnumerable<EitherRule> eithers) => rules = [.. eithers.Select(Read)];

    /// <returns>The first rule that is heard, or null.</returns>
    public EitherHeard? Hear(string letters, Spelling spelling) =>
        rules.IsEmpty ? null
        : Hear(letters) ?? Hear(string.Join(' ', Splitter.Split(letters).Select((w, i) => i < MostRepairs ? spelling.Repair(w) : w)));

    private EitherHeard? Hear(string letters)
    {
        foreach (var rule in rules)
        {
            if (rule.Unless.OccurIn(letters)) continue;
            var always = rule.Always.OccurIn(letters);
            if (!always && !AreNear(rule.Names.PlacesIn(letters), rule.Tells.PlacesIn(letters))) continue;
            return new EitherHeard(rule.Id, always, rule.Named.Where(n => n.Terms.OccurIn(letters)).Select(n => n.Means).FirstOrDefault());
        }

        return null;
    }

    private static bool AreNear(List<(int From, int To)> names, List<(int From, int To)> tells) =>
        names.Exists(n => tells.Exists(t => t.From - n.To <= Near && n.From - t.To <= Near));

    private static Terms Read(EitherRule rule) => new(
        rule.Id,
        new PlainTerms(rule.RidersSay),
        new PlainTerms(rule.RidersName),
        new PlainTerms(rule.AndTell),
        new PlainTerms(rule.UnlessTheySay),
        [.. rule.Answers.Select(a => (new PlainTerms(a.NamedBy), a.Means))]);

    private sealed record Terms(
        string Id, PlainTerms Always, PlainTerms Names, PlainTerms Tells, PlainTerms Unless, ImmutableArray<(PlainTerms Terms, string Means)> Named);
}
