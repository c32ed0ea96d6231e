using System.Collections.Immutable;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>What a question may look at: what was answered so far, and the rules as they stand.</summary>
/// <param name="Answers">By question; an empty list is a question that was skipped.</param>
/// <param name="Knowledge">The club's rules now.</param>
/// <param name="Layer">The club's own layer now.</param>
public sealed record SheetContext(ImmutableSortedDictionary<string, ImmutableArray<string>> Answers, KnowledgeBase Knowledge, Layer Layer)
{
    /// <returns>The only or first answer; empty when there is none.</returns>
    public string One(string question) => Answers.TryGetValue(question, out var values) && !values.IsEmpty ? values[0] : "";

    /// <returns>All answers; empty when there are none.</returns>
    public ImmutableArray<string> All(string question) => Answers.TryGetValue(question, out var values) ? values : [];

    public bool Has(string question) => One(question).Length > 0;

    public bool IsNew(string question) => One(question) == Choice.New;

    /// <summary>True when something that exists was picked.</summary>
    public bool Picked(string question) => One(question) is { Length: > 0 } value && value is not (Choice.New or Choice.None);

    /// <summary>The number that was answered, or 0.</summary>
    public double Number(string question) =>
        double.TryParse(One(question), System.Globalization.NumberStyles.AllowDecimalPoint, System.Globalization.CultureInfo.InvariantCulture, out var number) ? number : 0;
}
