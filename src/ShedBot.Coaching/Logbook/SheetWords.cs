using System.Collections.Immutable;
using System.Text.RegularExpressions;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Bikes.Kinds;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Logbook;

/// <summary>
/// Reads a typed line about the bike itself: <c>bike bar length 18.2 mm</c>, <c>bike use red cruiser</c>, or facts that can mean nothing else. What is not wholly
/// understood is left to the coach: "bike wheel wobbles" is a trouble.
/// </summary>
public static partial class SheetWords
{
    /// <summary>A name with more words than this is a story.</summary>
    private const int MostNameWords = 5;

    private static readonly ImmutableHashSet<string> Unknowns = ["unknown", "not known", "forget", "forget it", "don't know", "dont know"];

    /// <param name="loose">True where no question is open: facts may then stand without the word bike.</param>
    /// <returns>Null when the line is none of these.</returns>
    public static Result<BikeRequest>? Read(string line, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset at, bool loose)
    {
        var text = Spaces().Replace(line.Trim().TrimEnd('.', '!').Replace('’', '\''), " ");
        var plain = text.ToLowerInvariant();
        if (plain is "bike" or "my bike") return (BikeRequest)new ShowBike();
        if (plain is "bikes" or "my bikes" or "bike list") return (BikeRequest)new ShowBikes();
        if (text.EndsWith('?')) return null;
        if (plain.StartsWith("bike ", StringComparison.Ordinal)) return OfBikes(text[5..].Trim()) ?? Tell(text[5..].Trim(), knowledge, speaker, at);
        if (!loose || !FactHearing.SaysNothingElse(text)) return null;
        var facts = FactHearing.Hear(text, knowledge, speaker.DayOf(at));
        if (facts.IsEmpty) return null;
        return (BikeRequest)new TellEntry(facts);
    }

    /// <summary>One field by what it is called, and its value.</summary>
    /// <param name="value">Empty or "unknown": it is not known any more.</param>
    public static Result<BikeRequest> Tell(string field, string value, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset at)
    {
        var fields = BikeSheet.Of(knowledge);
        var named = fields.FirstOrDefault(f => f.Id == field) ?? fields.FirstOrDefault(f => Names(f).Contains(Plain(field)));
        if (named is null) return new Refusal("field", $"I keep no \"{Cards.CleanText.OneLine(field, 40)}\". What I keep: {string.Join(", ", fields.Select(f => f.Called))}.");
        if (Empty(value)) return (BikeRequest)new TellEntry([new FactTold(named.Id, null)]);
        var read = named.Kind.Read(value, new Writer(speaker.Units, speaker.DayOf(at)));
        if (read.Refused is { } refused) return refused with { Say = $"{Speaking.Say.Capital(named.Called)}: {refused.Say}" };
        return (BikeRequest)new TellEntry([new FactTold(named.Id, read.Must)]);
    }

    private static Result<BikeRequest>? OfBikes(string rest)
    {
        var (verb, name) = rest.Split(' ', 2) is [var first, var other] ? (first.ToLowerInvariant(), other) : (rest.ToLowerInvariant(), "");
        if (verb is not ("new" or "use" or "name" or "remove")) return null;
        if (name.Length == 0) return new Refusal("bike-name", $"Which bike? Write it like: bike {verb} red cruiser");
        if (name.Count(' '.Equals) >= MostNameWords || name.Contains(',', StringComparison.Ordinal)) return null;
        return verb switch
        {
            "new" => (BikeRequest)new NewBike(name),
            "use" => (BikeRequest)new UseBike(name),
            "name" => (BikeRequest)new NameBike(name),
            _ => (BikeRequest)new RemoveBike(name, Sure: false),
        };
    }

    /// <summary>The longest name of a field that the line begins with; then its value.</summary>
    private static Result<BikeRequest>? Tell(string rest, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset at)
    {
        var plain = rest.ToLowerInvariant();
        var best = BikeSheet.Of(knowledge).SelectMany(f => Names(f).Select(n => (Field: f, Name: n)))
            .Where(n => plain.StartsWith(n.Name, StringComparison.Ordinal) && (plain.Length == n.Name.Length || plain[n.Name.Length] is ' ' or ':' or '='))
            .OrderByDescending(n => n.Name.Length).FirstOrDefault();
        if (best.Field is not { } field)
        {
            var facts = FactHearing.SaysNothingElse(rest) ? FactHearing.Hear(rest, knowledge, speaker.DayOf(at)) : [];
            if (facts.IsEmpty) return null;
            return (BikeRequest)new TellEntry(facts);
        }

        var parted = Between().Match(rest[best.Name.Length..]);
        var value = rest[(best.Name.Length + parted.Length)..].Trim();
        if (value.Length == 0) return new Refusal("value", $"{field.Ask} {field.Find} Write: bike {best.Name} and then the answer, or: bike {best.Name} unknown");
        // Any words would do for a free text, so there the line must show that it is one: "bike carburettor leaks" is a trouble.
        if (field.Kind is TextKind && !parted.Value.AsSpan().ContainsAny(':', '=') && !Unknowns.Contains(value.ToLowerInvariant()))
        {
            if (!value.Any(char.IsDigit)) return null;
            return new Refusal("value", $"Write it with a colon: bike {best.Name}: {value}");
        }

        var told = Tell(field.Id, value, knowledge, speaker, at);
        if (told.Refused is not null && !value.Any(char.IsDigit)) return null;
        return told;
    }

    private static bool Empty(string value) => string.IsNullOrWhiteSpace(value) || Unknowns.Contains(value.Trim().ToLowerInvariant());

    private static IEnumerable<string> Names(SheetField field) => field.Names.Prepend(Plain(field.Called)).Append(field.Id.Replace('-', ' '));

    private static string Plain(string text) => text.Trim().ToLowerInvariant();

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Spaces();

    [GeneratedRegex(@"\A\s*(?::|=|is\b|are\b)?\s*", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Between();
}
