using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Speaking;

/// <summary>Small parts that every card is made of.</summary>
internal static class Say
{
    public static CardOption Option(Ask open, string token, string label) => new(OptionId.For(open, token), Capital(label));

    public static CardOption Help(Ask open, string token, string label) => new(OptionId.For(open, token), label, OptionRole.Help);

    public static TextBlock Text(string text) => new(text);

    public static CautionBlock Caution(CautionRule caution) => new(caution.Word, caution.Hazard, caution.Consequence, caution.Avoid);

    /// <summary>The cautions, the most serious first.</summary>
    public static IEnumerable<CardBlock> Cautions(IEnumerable<CautionRule> cautions) =>
        cautions.OrderBy(c => Seriousness(c.Word)).Select(Caution);

    public static IEnumerable<CardBlock> Steps(string heading, IEnumerable<string> steps)
    {
        ImmutableArray<CardStep> list = [.. steps.Select(s => new CardStep(s, null))];
        return list.IsEmpty ? [] : [new StepsBlock(heading, 1, list)];
    }

    public static IEnumerable<CardBlock> List(string heading, IEnumerable<string> items)
    {
        ImmutableArray<string> list = [.. items];
        return list.IsEmpty ? [] : [new ListBlock(heading, list)];
    }

    public static string Capital(string text) => text.Length > 0 ? char.ToUpperInvariant(text[0]) + text[1..] : text;

    public static string Sentence(string text) => Capital(text) + (text.EndsWith('.') || text.EndsWith('!') || text.EndsWith('?') ? "" : ".");

    /// <summary>"a", "a and b", "a, b and c".</summary>
    public static string Join(IReadOnlyList<string> parts) => parts.Count switch
    {
        0 => "",
        1 => parts[0],
        _ => string.Join(", ", parts.Take(parts.Count - 1)) + " and " + parts[^1],
    };

    private static int Seriousness(string word) => word switch
    {
        "DANGER" => 0,
        "WARNING" => 1,
        "CAUTION" => 2,
        _ => 3,
    };
}
