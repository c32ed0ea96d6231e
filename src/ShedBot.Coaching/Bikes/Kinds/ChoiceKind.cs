using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using ShedBot.Coaching.Clubs;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Bikes.Kinds;

/// <summary>One of the values of a fact of the rules, kept as the id of the value.</summary>
public sealed partial record ChoiceKind(ImmutableArray<FactValue> Values) : FieldKind
{
    private const int LeastStem = 3;

    private static readonly ImmutableHashSet<string> Small =
        ["the", "a", "an", "or", "and", "of", "is", "it", "i", "in", "on", "my", "there", "that", "with", "are", "be", "can", "at", "to", "its", "s", "t", "kind", "one", "ones"];

    private static readonly ImmutableHashSet<string> Denials = ["no", "not", "none", "without", "isn", "doesn", "hasn", "missing"];

    /// <summary>By its number, its id, its words, or words that fit no other value as well.</summary>
    public override Result<string> Read(string text, Writer by)
    {
        var plain = text.Trim().TrimEnd('.');
        if (int.TryParse(plain, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= Values.Length) return Values[number - 1].Id;
        if (Values.FirstOrDefault(v => Same(v.Id, plain) || Same(v.Says, plain)) is { } same) return same.Id;
        var words = Words(plain);
        var denied = words.Any(Denials.Contains);
        var scored = Values.Select(v => (v.Id, Score: Score(v, words, denied))).OrderByDescending(s => s.Score).ToList();
        if (scored[0].Score > 0 && (scored.Count == 1 || scored[0].Score > scored[1].Score)) return scored[0].Id;
        return Refuse(text, $"Choose one: {string.Join("; ", Values.Select((v, i) => string.Create(CultureInfo.InvariantCulture, $"{i + 1} {v.Says}")))}.");
    }

    public override string Show(string value, Units units) => Values.FirstOrDefault(v => v.Id == value)?.Says ?? value;

    /// <summary>How many of the words are in the value's own; "not fitted" is never the value that is not denied.</summary>
    private static int Score(FactValue value, ImmutableArray<string> words, bool denied)
    {
        var own = Words(string.Join(' ', value.RidersSay.Prepend(value.Says).Prepend(value.Id)));
        if (denied != Words(value.Says).Any(Denials.Contains) && (denied || words is ["yes"])) return 0;
        return (denied ? 1 : 0) + words.Distinct().Count(w => own.Any(o => o == w || (w.Length >= LeastStem && o.StartsWith(w, StringComparison.Ordinal)) || (o.Length > LeastStem && w.StartsWith(o, StringComparison.Ordinal))));
    }

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);

    private static ImmutableArray<string> Words(string text) => [.. Letters().Matches(text.ToLowerInvariant()).Select(m => m.Value).Where(w => !Small.Contains(w))];

    [GeneratedRegex(@"\p{L}+", RegexOptions.CultureInvariant)]
    private static partial Regex Letters();
}
