using System.Collections.Immutable;
using System.Text.RegularExpressions;
using NodaTime;
using ShedBot.Coaching.Bikes.Kinds;
using ShedBot.Coaching.Clubs;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Bikes;

/// <summary>Overhears facts of the sheet in free words, and only what is unmistakable: a number with its unit and the part it belongs to, in a clause without doubt or question.</summary>
public static partial class FactHearing
{
    private const int LeastRear = 28, MostSmall = 17;

    /// <returns>At most one value for each field: where a rider says two, neither is taken.</returns>
    public static ImmutableArray<FactTold> Hear(string words, KnowledgeBase knowledge, LocalDate today)
    {
        var by = new Writer(Units.Metric, today);
        var heard = Clauses().Split(words).Where(c => c.Length > 0 && !Doubt().IsMatch(c) && !c.TrimEnd().EndsWith('?')).SelectMany(In)
            .Select(h => (h.Field, Value: BikeSheet.Find(knowledge, h.Field)?.Kind.Read(h.Text, by).Value)).Where(h => h.Value is not null).Distinct()
            .GroupBy(h => h.Field).Where(g => g.Count() == 1).Select(g => new FactTold(g.Key, g.First().Value));
        return [.. heard];
    }

    /// <summary>Whether a line says facts and nothing else, so that nobody needs to be asked what else was meant.</summary>
    public static bool SaysNothingElse(string words) => Rest().IsMatch(Patterns().Aggregate(words, (left, p) => p.Replace(left, " ")));

    private static IEnumerable<Regex> Patterns() => [Bar(), Marking(), Tyre(), Nominal(), Teeth(), SprocketHas(), BoreStroke(), Volume(), Mix(), Jet()];

    private static IEnumerable<(string Field, string Text)> In(string clause)
    {
        foreach (var m in Said(Bar(), clause)) yield return (BikeSheet.BarLength, m);
        var wheel = Said(Marking(), clause).Concat(Said(Tyre(), clause)).Concat(Said(Nominal(), clause)).FirstOrDefault();
        if (wheel is not null) yield return (BikeSheet.Wheel, wheel);
        foreach (var teeth in Said(Teeth(), clause).Concat(Said(SprocketHas(), clause)))
        {
            if (Sprocket(int.Parse(teeth, System.Globalization.CultureInfo.InvariantCulture)) is { } field) yield return (field, teeth);
        }

        var engine = Said(BoreStroke(), clause).Concat(Said(Volume(), clause)).FirstOrDefault();
        if (engine is not null) yield return (BikeSheet.Engine, engine);
        foreach (var m in Said(Mix(), clause)) yield return (BikeSheet.Oil, m);
        foreach (var m in Said(Jet(), clause)) yield return (BikeSheet.MainJet, m);
    }

    /// <summary>What is denied right before it is not said: "it is not a 66cc".</summary>
    private static IEnumerable<string> Said(Regex pattern, string clause) =>
        pattern.Matches(clause).Where(m => !Denied().IsMatch(clause[..m.Index])).Select(m => m.Groups["v"].Value);

    /// <summary>Which of the two it is, by the count alone; what could be either is not taken.</summary>
    private static string? Sprocket(int teeth) => teeth >= LeastRear ? BikeSheet.RearSprocket : teeth <= MostSmall ? BikeSheet.SmallSprocket : null;

    [GeneratedRegex(@"(?<!\d)[,;!](?!\d)|(?<!\d)\.|\.(?!\d)|(?<=\d)[,;](?=\s)|(?<=\d)[!;]|\n|(?<=\?)|\b(?:but|and)\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Clauses();

    [GeneratedRegex(@"\b(?:think|guess|maybe|perhaps|probably|might|could|should|would|if|or|suppose\w*|was|were|old|spare|mate'?s|friend'?s|other|another|used to|instead|want|wants|wanted|need|needs|ordered|buy|buying|said|says|which|what|than|without|front wheel|front tyre|between)\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Doubt();

    [GeneratedRegex(@"(?:\bnot|n't|\bno|\bnever)(?:\s+[\w']+){0,2}\s*\z", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Denied();

    [GeneratedRegex("""(?<!handle)(?<!handle[ -])\b(?:bucking bar|push ?rod|bar)(?: length)?(?: is| measures|'s| comes to|:|=)\s*(?:now |exactly |about )?(?<v>\d+(?:[.,]\d+)?\s*(?:mm|cm)|\d*[ -]?\d+/\d+\s*(?:in|inch|")|0?\.\d+\s*(?:in|inch|"))(?![\w/])(?:\s+long)?""", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Bar();

    [GeneratedRegex(@"(?<![\d.-])(?<v>\d{2}-\d{3})(?![\d-])", RegexOptions.CultureInvariant)]
    private static partial Regex Marking();

    [GeneratedRegex("""(?<![\d.])(?<v>\d{2}(?:\.5)?\s?(?:in|inch|")?\s?[x×]\s?\d(?:\.\d{1,3})?(?:[ -]\d/\d)?)(?:\s?(?:in|inch|"))?\s+(?:tyres?|tires?|wheels?)\b""", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Tyre();

    [GeneratedRegex("""(?<![\d.])(?<v>\d{2}(?:\.5)?)[\s-]?(?:inch|in|")\s?(?:wheels?|tyres?|tires?)\b""", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Nominal();

    [GeneratedRegex(@"(?<![\d.])(?<v>\d{1,2})[\s-]?(?:t|tooth|teeth)\s+(?:(?:rear|back|big|small|front|engine)\s+)?sprockets?\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Teeth();

    [GeneratedRegex(@"\bsprocket (?:has|is|with)(?: got)? (?<v>\d{1,2})[\s-]?(?:t|tooth|teeth)\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex SprocketHas();

    [GeneratedRegex(@"(?<![\d.])(?<v>\d{2}(?:\.\d)?\s?(?:mm)?\s?(?:x|×|by)\s?\d{2}(?:\.\d)?\s?mm)\b(?=.*\b(?:bore|stroke|engine)\b|(?<=\b(?:bore|stroke|engine)\b.*))", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex BoreStroke();

    [GeneratedRegex(@"(?<![\d.])(?<v>\d{2,3}\s?cc)\b(?!\s+(?:of|oil|grease|fuel|petrol|mix|per|to|in))", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Volume();

    [GeneratedRegex(@"(?:\b(?:mix|premix|oil|fuel)(?: ratio)?(?: is| at| of|:)?\s+)(?<v>\d{1,3}\s?:\s?\d{1,3})\b|(?<![\d.])(?<v>\d{1,3}\s?:\s?\d{1,3})\s+(?:mix|premix|oil)\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Mix();

    [GeneratedRegex(@"\b(?:main )?jet(?: is|:)\s+(?:a |no\.? |number )?(?<v>\d{2,3})\b|\b(?:size|number|no\.?) (?<v>\d{2,3}) (?:main )?jet\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Jet();

    [GeneratedRegex(@"\A(?:[\s,.;!]|\b(?:i|it|its|it's|i've|has|have|got|my|the|a|an|is|are|with|and|on|bike|engine|kit|rear|back|running|run|fitted|bore|stroke|of)\b)*\z", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Rest();
}
