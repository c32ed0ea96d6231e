using System.Collections.Immutable;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>Where a rule comes from, and whose word it is. The last page of every sheet.</summary>
internal static class CreditQuestions
{
    public const string Source = "source", SaidBy = "said-by";

    private const string Page = "credit";

    public static ImmutableArray<Question> All { get; } =
    [
        new(Source, "Is it printed anywhere? Say where, or skip.", "A handbook with its page, or a standard. Skipped, it is 'common practice', which is honest.", QuestionKind.Text, Page) { Required = false },
        new(SaidBy, "Who told you? Say the name, or skip.", "They are named beside the rule. Skip it when it is your own.", QuestionKind.Text, Page) { Required = false, Longest = 80 },
    ];

    public static Credit Of(SheetContext context, string author, DateOnly date) =>
        new(author, context.Has(SaidBy) ? context.One(SaidBy) : null, context.Has(Source) ? context.One(Source) : Credit.CommonPractice, date);
}
