using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Turns;

namespace ShedBot.Practice;

/// <summary>What to type for each option of a card: answers are numbered in their order; helping options have a letter that is the same on every card.</summary>
internal sealed class AnswerKeys
{
    private static readonly ImmutableDictionary<string, string> Letters = new Dictionary<string, string>
    {
        [OptionId.NotSure] = "n",
        [OptionId.Cannot] = "c",
        [OptionId.ShowMe] = "s",
        [OptionId.Why] = "w",
        [OptionId.Back] = "b",
        [OptionId.Change] = "e",
        [OptionId.Helper] = "h",
        [OptionId.Leave] = "l",
        [OptionId.CameBack] = "r",
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <summary>The helping answers of reminders, by letters that mean nothing on the coach's cards.</summary>
    private static readonly ImmutableDictionary<NudgeVerb, string> NudgeLetters = new Dictionary<NudgeVerb, string>
    {
        [NudgeVerb.StopTask] = "m",
        [NudgeVerb.NotRiding] = "a",
        [NudgeVerb.Decline] = "x",
    }.ToImmutableDictionary();

    /// <summary>What a letter says in words, for a card that does not offer it: the coach may understand it all the same, or say kindly what it can take. Those that end a
    /// case are not among them: a slip of the finger must not.</summary>
    private static readonly ImmutableDictionary<string, string> Spoken = new Dictionary<string, string>
    {
        ["n"] = "not sure",
        ["c"] = "can't do that now",
        ["s"] = "show me how",
        ["w"] = "why do you ask",
        ["b"] = "back",
        ["e"] = "change an earlier answer",
        ["r"] = "it came back",
    }.ToImmutableDictionary(StringComparer.OrdinalIgnoreCase);

    private readonly ImmutableArray<(string Key, CardOption Option)> all;

    private AnswerKeys(ImmutableArray<(string Key, CardOption Option)> all) => this.all = all;

    public static AnswerKeys None { get; } = new([]);

    public IEnumerable<(string Key, CardOption Option)> Answers => all.Where(k => k.Option.Role == OptionRole.Answer);

    public IEnumerable<(string Key, CardOption Option)> Helps => all.Where(k => k.Option.Role == OptionRole.Help);

    public bool IsEmpty => all.IsEmpty;

    public static AnswerKeys Of(Card card)
    {
        var keys = ImmutableArray.CreateBuilder<(string, CardOption)>(card.Options.Length);
        var (number, spare) = (0, 'p');
        foreach (var option in card.Options)
        {
            keys.Add((option.Role == OptionRole.Answer
                ? (++number).ToString(CultureInfo.InvariantCulture)
                : Letter(option) ?? spare++.ToString(), option));
        }

        return new(keys.MoveToImmutable());
    }

    private static string? Letter(CardOption option) => NudgeAnswer.Read(option.Id) is { } nudge
        ? NudgeLetters.GetValueOrDefault(nudge.Verb)
        : Letters.GetValueOrDefault(OptionId.Read(option.Id)?.Token ?? "");

    /// <returns>The option that was typed, or null when it is none of these keys.</returns>
    public CardOption? Find(string typed) =>
        all.FirstOrDefault(k => string.Equals(k.Key, typed, StringComparison.OrdinalIgnoreCase)).Option;

    /// <returns>The words that a letter stands for, or null when it is none of the fixed ones.</returns>
    public static string? InWords(string typed) => Spoken.GetValueOrDefault(typed);

    /// <summary>Whether both ask the very same question.</summary>
    public bool Same(AnswerKeys other) => all.Select(k => k.Option.Id).SequenceEqual(other.all.Select(k => k.Option.Id));
}
