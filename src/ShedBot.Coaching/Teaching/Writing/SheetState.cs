using System.Collections.Immutable;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>How far a sheet is. Worked out from the answers each time; nothing of it is kept.</summary>
/// <param name="Asked">The questions that apply by what was answered so far, in order.</param>
/// <param name="Wrong">Answers that no longer fit: what was picked is no longer there.</param>
public sealed record SheetState(Sheet Sheet, SheetContext Context, ImmutableArray<Question> Asked, ImmutableArray<Question> Wrong)
{
    public static SheetState Of(Sheet sheet, SheetContext context)
    {
        // An answer to a question that no longer applies must not count for those after it.
        var kept = context with { Answers = context.Answers.Clear() };
        var (asked, wrong) = (ImmutableArray.CreateBuilder<Question>(), ImmutableArray.CreateBuilder<Question>());
        foreach (var question in sheet.Questions)
        {
            if (!question.Applies(kept)) continue;
            asked.Add(question);
            if (!context.Answers.TryGetValue(question.Id, out var values)) continue;
            if (!values.IsEmpty && AnswerReading.Read(question, values, kept).Refused is not null) wrong.Add(question);
            else if (!values.IsEmpty || !question.Required) kept = kept with { Answers = kept.Answers.SetItem(question.Id, values) };
        }

        return new SheetState(sheet, kept, asked.ToImmutable(), wrong.ToImmutable());
    }

    /// <summary>What is to be asked next; null when all that applies was answered or skipped.</summary>
    public Question? Next => Asked.FirstOrDefault(q => !Context.Answers.ContainsKey(q.Id));

    /// <summary>Questions without which it cannot be handed in.</summary>
    public ImmutableArray<Question> Missing => [.. Asked.Where(q => q.Required && !Context.Has(q.Id))];

    public bool CanHandIn => Missing.IsEmpty && Wrong.IsEmpty;

    /// <summary>The question before this one, for going back; null at the first.</summary>
    public Question? Before(Question question) => Asked.TakeWhile(q => q.Id != question.Id).LastOrDefault();

    /// <summary>The questions to put together in one form: the page of the next one, as far as it is open.</summary>
    /// <param name="from">The question that opens the page; null: the next one.</param>
    public ImmutableArray<Question> Page(Question? from = null) =>
        (from ?? Next) is { } first ? [.. Asked.Where(q => q.Page == first.Page)] : [];

    /// <summary>The answer to a question as it reads, for looking at all so far; empty when it is open or was skipped.</summary>
    public string Shown(Question question) => string.Join("\n", Context.All(question.Id).Select(v => Says(question, v)));

    private string Says(Question question, string value) =>
        question.IsPicked ? question.Choices(Context).FirstOrDefault(c => c.Value == value)?.Says ?? value
        : question.Unit.Length > 0 ? $"{value} {question.Unit}" : value;
}
