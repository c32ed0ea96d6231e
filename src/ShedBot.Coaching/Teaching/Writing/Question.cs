using System.Collections.Immutable;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>In what way a question of a sheet is answered.</summary>
public enum QuestionKind
{
    /// <summary>One text.</summary>
    Text,

    /// <summary>Several texts, each on a line of its own.</summary>
    Lines,

    /// <summary>One of what exists; with more choices than fit on a screen it is searched by its words.</summary>
    PickOne,

    /// <summary>Some of what exists.</summary>
    PickSeveral,

    /// <summary>One of a few fixed words, weakest or safest first.</summary>
    Scale,

    /// <summary>A number.</summary>
    Number,
}

/// <summary>One question of a guided sheet. Free of any platform: the terminal puts them one by one, the chat as forms and pick lists.</summary>
/// <param name="Id">Short, lower case with hyphens; never changes, because answers are kept by it.</param>
/// <param name="Ask">The question, short.</param>
/// <param name="Help">What a good answer looks like, with an example.</param>
/// <param name="Page">Questions of one page can be put together in one form; a page has at most five.</param>
public sealed record Question(string Id, string Ask, string Help, QuestionKind Kind, string Page)
{
    /// <summary>The part of a long sheet that it belongs to, as one would call it: "what mends it". Empty for a sheet of one part.</summary>
    public string Part { get; init; } = "";

    /// <summary>False when it may be skipped.</summary>
    public bool Required { get; init; } = true;

    /// <summary>Characters of each text.</summary>
    public int Longest { get; init; } = 300;

    /// <summary>Of a number, in <see cref="Unit"/>.</summary>
    public double Least { get; init; }

    /// <summary>Of a number, in <see cref="Unit"/>.</summary>
    public double Most { get; init; } = 600;

    /// <summary>What a number counts: minutes. Empty for texts.</summary>
    public string Unit { get; init; } = "";

    /// <summary>Whether it is asked, by what was answered before.</summary>
    public Func<SheetContext, bool> Applies { get; init; } = _ => true;

    /// <summary>All that can be picked just now, in the order in which it is best shown; empty for a text or a number.</summary>
    public Func<SheetContext, ImmutableArray<Choice>> Choices { get; init; } = _ => [];

    /// <summary>Words that what is most likely picked has in it, by what was answered before; of a long list that is shown first. Empty for none.</summary>
    public Func<SheetContext, string> Near { get; init; } = _ => "";

    /// <summary>What stands in the field beforehand, to be changed or left; null for nothing.</summary>
    public Func<SheetContext, string?> Before { get; init; } = _ => null;

    /// <summary>The question with what was answered before in it; null: <see cref="Ask"/>.</summary>
    public Func<SheetContext, string>? Asks { get; init; }

    public bool IsPicked => Kind is QuestionKind.PickOne or QuestionKind.PickSeveral or QuestionKind.Scale;

    /// <summary>The question as it is put just now.</summary>
    public string Put(SheetContext context) => Asks?.Invoke(context) ?? Ask;

    /// <summary>What to choose from while somebody is still typing: what fits all the words so far comes first.</summary>
    /// <param name="most">At most so many.</param>
    public ImmutableArray<Choice> Suggest(string typed, SheetContext context, int most) => [.. Search.Ranked(Choices(context), typed).Take(most)];

    /// <summary>What of a long list is shown before anything is typed: what is new first, then what is near to the answers so far, then the rest as it comes.</summary>
    /// <param name="most">At most so many.</param>
    public ImmutableArray<Choice> Beginning(SheetContext context, int most)
    {
        var all = Choices(context);
        return [.. all.Where(c => c.Value is Choice.New or Choice.None).Concat(Search.Ranked(all, Near(context))).Concat(all).Distinct().Take(most)];
    }
}
