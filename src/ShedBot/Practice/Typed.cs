using ShedBot.Coaching.Cards;

namespace ShedBot.Practice;

/// <summary>What one typed line is.</summary>
internal abstract record Typed
{
    /// <summary>So many words after "as" are speech, not a name: "as before", "as soon ...".</summary>
    private static readonly HashSet<string> NotNames = new(
        ["before", "usual", "always", "ever", "said", "normal", "new", "well", "far", "if", "above", "it", "i", "expected", "is", "such", "described", "told", "asked"],
        StringComparer.OrdinalIgnoreCase);

    public static Typed Read(string line, AnswerKeys keys)
    {
        var text = line.Trim();
        if (keys.Find(text.TrimEnd('.', ')')) is { } option) return new TypedOption(option);
        var parts = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return parts switch
        {
            [var word] => word.ToLowerInvariant() switch
            {
                "belief" => new TypedBelief(),
                "cases" => new TypedCases(),
                "bike" => new TypedBike(),
                "help" => new TypedHelp(),
                "bye" => new TypedBye(),
                "skip" => new TypedSkip(""),
                _ => new TypedWords(AnswerKeys.InWords(word) ?? text),
            },
            ["as" or "As" or "AS", var name] when MemberName.IsGood(name) && !NotNames.Contains(name) => new TypedAs(new MemberName(name)),
            ["skip", "to", _, ..] or ["skip", _, "day" or "days" or "week" or "weeks"] => new TypedSkip(string.Join(' ', parts[1..])),
            _ => new TypedWords(text),
        };
    }
}

internal sealed record TypedOption(CardOption Option) : Typed;

internal sealed record TypedWords(string Words) : Typed;

internal sealed record TypedAs(MemberName Member) : Typed;

internal sealed record TypedBelief : Typed;

internal sealed record TypedCases : Typed;

internal sealed record TypedBike : Typed;

/// <param name="Words">How far; empty: to the next due day.</param>
internal sealed record TypedSkip(string Words) : Typed;

internal sealed record TypedHelp : Typed;

internal sealed record TypedBye : Typed;
