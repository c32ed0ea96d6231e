using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Learning.Reports;
using ShedBot.Coaching.Speaking;
using ShedBot.Coaching.Teaching.Writing;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Teaching.Reporting;

/// <summary>Words that were not understood, and what they may mean: the meaning that is picked fills the sheet in.</summary>
internal static class UnheardCards
{
    public const int PageRows = 8;

    private const int MostFound = 12, MostLetters = 160, MostOnButton = 70, MostOnList = 40;

    /// <summary>A short name of words, however they are written.</summary>
    public static string Mark(string words) => Existing.Mark(PlainWords.Folded(words));

    public static string Mark(UnheardRow row) => Existing.Mark(row.Key);

    /// <param name="rows">One more than a page where there are more.</param>
    /// <param name="from">The place of the first.</param>
    /// <param name="taught">Proposals that would teach words, by the short names of these.</param>
    public static Card List(ImmutableArray<UnheardRow> rows, int from, ImmutableDictionary<string, string> taught) => rows.IsEmpty
        ? new Card("Words that were not understood", [Say.Text(from > 0 ? "Those were all." : "None: all words so far would be understood by the rules of today.")], [Reports])
        : new Card(
            "Words that were not understood",
            [
                Say.Text("The same words of several members first. What the rules of today would understand is left out. Pick one to say what it means."),
                new ListBlock("", [.. rows.Take(PageRows).Select(r => $"{Quoted(r)} {Said(r)}{(taught.TryGetValue(Mark(r), out var by) ? $" {by} would teach it." : "")}")]),
            ],
            [
                .. rows.Take(PageRows).Select(r => new TeachPress(TeachVerb.UnheardWords, Mark(r)).Option($"\"{CleanText.OneLine(r.Words, MostOnList)}\"")),
                .. rows.Length > PageRows ? [new TeachPress(TeachVerb.Unheard, TeachPress.Text(from + PageRows)).Option("more of them", OptionRole.Help)] : Array.Empty<CardOption>(),
                Reports,
            ]);

    /// <param name="next">The words after these in the list, or null.</param>
    /// <param name="taught">The proposal that would teach them, or null.</param>
    public static Card Of(KnowledgeBase knowledge, UnheardRow row, UnheardRow? next, string? taught)
    {
        var mark = Mark(row);
        var asked = Asked(knowledge, row);
        ImmutableArray<Meaning> meanings = row.Phrase.Length == 0 ? [] :
        [
            .. row.MayMean.Select(g => Meaning.Guessed(knowledge, g)).OfType<Meaning>()
                .Concat(asked is [var only] ? Meaning.All(knowledge).Where(m => m.IsStateOf(only.Tells)) : []).DistinctBy(m => m.Mark),
        ];
        return new Card(
            "What does this mean?",
            [
                Say.Text(Quoted(row)),
                Say.Text(Said(row)),
                .. Say.List("The coach had asked", asked.Select(c => c.Ask)),
                .. row.Words.Contains('[', StringComparison.Ordinal) ? [Say.Text("What looks like a name, an address or a number to call is taken out.")] : Array.Empty<CardBlock>(),
                .. row.Phrase.Length == 0 || row.Words.StartsWith(row.Phrase, StringComparison.Ordinal) && !row.Words.Contains('[', StringComparison.Ordinal)
                    ? [] : new CardBlock[] { Say.Text($"It would be taught as \"{row.Phrase}\"; if that reads badly, change it on the sheet.") },
                .. taught is null ? [] : new CardBlock[] { Say.Text($"{taught} would teach these words already.") },
                Say.Text(
                    row.Phrase.Length == 0 ? "Nothing is left of it that could be taught."
                    : meanings.IsEmpty ? "Nothing in the rules sounds like it. Look among all of them, or drop it."
                    : "Pick what it means, and the sheet is filled in: you read it aloud, try it and publish it."),
            ],
            [
                .. meanings.Select(m => new TeachPress(TeachVerb.Means, mark, m.Mark).Option($"This means: {m.Says}")),
                .. row.Phrase.Length == 0 ? [] : new[] { new TeachPress(TeachVerb.OtherMeaning, mark).Option("It means something else") },
                new TeachPress(TeachVerb.MeansNothing, mark).Option("It means nothing: drop it"),
                .. taught is null ? [] : new[] { new TeachPress(TeachVerb.Look, taught).Option($"look at {taught}", OptionRole.Help) },
                .. next is null ? [] : new[] { new TeachPress(TeachVerb.UnheardWords, Mark(next)).Option("the next words", OptionRole.Help) },
                new TeachPress(TeachVerb.Unheard).Option("all of them", OptionRole.Help),
            ]);
    }

    /// <param name="found">Best first.</param>
    public static Card Found(UnheardRow row, string typed, ImmutableArray<Choice> found) => new(
        $"{Quoted(row)} means ...",
        [
            Say.Text(
                found.IsEmpty ? $"Nothing in the rules is called like \"{CleanText.OneLine(typed, MostOnButton)}\". Try another word, or go through all of them."
                : found.Length > MostFound ? $"These are {MostFound} of {found.Length}. Pick one, or look once more with another word."
                : "Pick one, or look once more with another word."),
        ],
        [
            .. found.Take(MostFound).Select(c => new TeachPress(TeachVerb.Means, Mark(row), c.Value).Option(c.Says)),
            new TeachPress(TeachVerb.OtherMeaning, Mark(row)).Option("Look once more"),
            new TeachPress(TeachVerb.Means, Mark(row)).Option("Go through all of them"),
            new TeachPress(TeachVerb.UnheardWords, Mark(row)).Option("back to the words", OptionRole.Help),
        ]);

    private static CardOption Reports => new TeachPress(TeachVerb.Reports).Option("the reports", OptionRole.Help);

    private static string Quoted(UnheardRow row) => $"\"{CleanText.OneLine(row.Words, MostLetters)}\"";

    private static string Said(UnheardRow row) => row.Times == 1 ? "Said once, by one member only."
        : $"Said {row.Times} times, by {(row.OfOneMember ? "one member only" : $"{row.Members} members")}.";

    private static ImmutableArray<Knowledge.Rules.CheckRule> Asked(KnowledgeBase knowledge, UnheardRow row) =>
        [.. row.Expected.Select(e => knowledge.Checks.GetValueOrDefault(e)).OfType<Knowledge.Rules.CheckRule>()];
}
