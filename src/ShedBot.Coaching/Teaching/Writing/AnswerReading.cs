using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Cards;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>Reads what was typed or picked as the answer to a question of a sheet.</summary>
public static class AnswerReading
{
    /// <summary>Texts of a list.</summary>
    public const int MostLines = 30;

    /// <param name="given">A typed text, the values or names of what was picked, or the lines of a list.</param>
    /// <returns>
    /// The answer to keep, or a refusal: <c>empty</c>, <c>long</c>, <c>many</c>, <c>number</c>, or <c>which</c> when what was typed fits several choices or none;
    /// <see cref="Question.Suggest"/> then says which.
    /// </returns>
    public static Result<Answer> Read(Question question, ImmutableArray<string> given, SheetContext context)
    {
        ImmutableArray<string> texts = [.. given.Select(Clean).Where(t => t.Length > 0)];
        if (texts.IsEmpty) return question.Required ? new Refusal("empty", "That was nothing. A word or two, please.") : new Answer([]);
        return question.Kind switch
        {
            QuestionKind.Text => Short(question, [string.Join('\n', texts)]),
            QuestionKind.Lines => Lines(question, texts),
            QuestionKind.Number => Number(question, texts[0]),
            QuestionKind.PickSeveral => Several(question, texts, context),
            _ => Picked(question, texts[0], context),
        };
    }

    /// <summary>What would break the one text in which a club's rules are kept is taken out; the rest survives as it is.</summary>
    private static string Clean(string text) => Halves(CleanText.Of(text.ReplaceLineEndings("\n"))).Trim();

    /// <summary>The format takes no control characters and no hidden marks beyond those that are never shown.</summary>
    private static string Halves(string text) => string.Concat(text.Where(c => c == '\n' || (!char.IsControl(c) && c is not ('\u0085' or '\u2028' or '\u2029' or '\u2067' or '\u2068' or '\uFFFE' or '\uFFFF'))));

    private static Result<Answer> Short(Question question, ImmutableArray<string> texts) =>
        texts.FirstOrDefault(t => t.Length > question.Longest) is { } tooLong
            ? new Refusal("long", $"That is {tooLong.Length} letters long; {question.Longest} fit. Shorter, please.")
            : new Answer(texts);

    private static Result<Answer> Lines(Question question, ImmutableArray<string> texts)
    {
        ImmutableArray<string> lines = [.. texts.SelectMany(t => t.Split('\n')).Select(Item).Where(t => t.Length > 0).Distinct(StringComparer.Ordinal)];
        return lines.IsEmpty ? new Refusal("empty", "That was nothing. A word or two, please.")
            : lines.Length > MostLines ? new Refusal("many", $"Those are {lines.Length} lines; {MostLines} fit. Which matter most?")
            : Short(question, lines);
    }

    /// <summary>People number their lists; the numbers are ours to make.</summary>
    private static string Item(string line)
    {
        var text = line.Trim().TrimStart('-', '*', '•').TrimStart();
        var digits = text.TakeWhile(char.IsAsciiDigit).Count();
        return digits is > 0 and < 3 && text.Length > digits + 1 && text[digits] is '.' or ')' && text[digits + 1] == ' ' ? text[(digits + 2)..].Trim() : text;
    }

    private static Result<Answer> Number(Question question, string text)
    {
        var plain = string.Concat(text.SkipWhile(c => !char.IsAsciiDigit(c)).TakeWhile(c => char.IsAsciiDigit(c) || c is '.' or ',')).Replace(',', '.').TrimEnd('.');
        if (text.TrimStart().StartsWith('-') || !double.TryParse(plain, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number))
            return new Refusal("number", $"I need a number{(question.Unit.Length > 0 ? $" of {question.Unit}" : "")}, such as 5.");
        return number < question.Least || number > question.Most
            ? new Refusal("number", FormattableString.Invariant($"{number} is more than I can take: from {question.Least} to {question.Most}, please."))
            : new Answer([number.ToString("0.##", CultureInfo.InvariantCulture)]);
    }

    private static Result<Answer> Several(Question question, ImmutableArray<string> texts, SheetContext context)
    {
        var values = ImmutableArray.CreateBuilder<string>();
        foreach (var text in texts.SelectMany(t => t.Split('\n')))
        {
            var picked = Picked(question, text, context);
            if (picked.Refused is { } refused) return refused;
            values.Add(picked.Must.Values[0]);
        }

        return new Answer([.. values.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)]);
    }

    private static Result<Answer> Picked(Question question, string text, SheetContext context)
    {
        var choices = question.Choices(context);
        if (Search.Only(choices, text) is { } choice) return new Answer([choice.Value]);
        var said = CleanText.OneLine(text, 60);
        return new Refusal("which", Search.Ranked(choices, text).Any() ? $"\"{said}\": which of these is it?" : $"I find nothing for \"{said}\". Try another word of it, or pick from the list.");
    }
}

/// <summary>What is kept of an answer; empty when the question was skipped.</summary>
public sealed record Answer(ImmutableArray<string> Values);
