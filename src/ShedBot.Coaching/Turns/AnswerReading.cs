using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Turns;

/// <summary>Words instead of options: which option of the open question the member means, if any.</summary>
internal static class AnswerReading
{
    /// <summary>From this score on words count as an option picked; below it they are news, or not understood.</summary>
    public const double Sure = 0.6;

    /// <summary>From this score on words count as one of the things that can be said at any time; they end or turn back a case, so they must be plain.</summary>
    private const double PlainlySaid = 0.8;

    /// <summary>The answers of the open question, for the listener to hold the words against.</summary>
    public static ListeningContext Context(TurnDraft draft) => new(
    [
        .. Offered(draft).Where(o => o.Option.Role == OptionRole.Answer || o.Id.Token == OptionId.CameBack)
            .Select(o => new AnswerOption(o.Option.Id, o.Option.Label, Phrases(draft, o.Id))),
    ]);

    /// <param name="least">The score that words must reach to count as an option; they may be better news than they are an answer.</param>
    public static OptionId? Of(TurnDraft draft, HeardAnswer? heard, double least = Sure)
    {
        if (heard is null || heard.Score < Math.Max(least, Sure)) return null;
        if (heard.Kind == AnswerKind.Option) return OptionId.Read(heard.OptionId!);
        var token = draft.Case.Open.Kind == AskKind.Ready && heard.Kind is AnswerKind.NotSure or AnswerKind.Cannot
            ? OptionId.NotYet
            : Token(heard.Kind);
        return Offered(draft).Where(o => o.Id.Token == token).Select(o => (OptionId?)o.Id).FirstOrDefault() ?? Always(draft, token);
    }

    /// <summary>"No, it has been so since I built it": words that begin with a plain yes or no mean the one answer that begins with it too.</summary>
    public static OptionId? PlainYesOrNo(TurnDraft draft, string words)
    {
        var first = FirstWord(words);
        if (first is not ("yes" or "no")) return null;
        var fitting = Offered(draft).Where(o => o.Option.Role == OptionRole.Answer && FirstWord(o.Option.Label) == first).ToList();
        return fitting.Count == 1 ? fitting[0].Id : null;
    }

    private static string FirstWord(string text) =>
        new([.. text.TrimStart().TakeWhile(char.IsLetter).Select(char.ToLowerInvariant)]);

    /// <summary>What can be said at any open question, whether or not the card offers it: to want a human, to change an earlier answer.</summary>
    public static OptionId? AtAnyTime(TurnDraft draft, string words)
    {
        if (draft.Case.IsClosed || draft.Case.Open.Kind == AskKind.None) return null;
        // Nobody sees these as a list, so what only points at a place of it ("1", "the last one") means something else: it changes with the order.
        var heard = AnswerListener.Hear(words, Standing);
        var turned = AnswerListener.Hear(words, [.. Standing.Reverse()]);
        return heard is { Kind: AnswerKind.Option, Score: >= PlainlySaid } && heard.OptionId == turned?.OptionId
            ? new OptionId(draft.Case.Open.Serial, heard.OptionId!)
            : null;
    }

    private static IEnumerable<(CardOption Option, OptionId Id)> Offered(TurnDraft draft) =>
        Presenting.Options(draft).Select(o => (o, OptionId.Read(o.Id)!.Value));

    /// <summary>Taking back, asking why and leaving are understood at any open question, also where no option says so.</summary>
    private static OptionId? Always(TurnDraft draft, string token) =>
        !draft.Case.IsClosed && token is OptionId.Back or OptionId.Leave or OptionId.Why
            ? new OptionId(draft.Case.Open.Serial, token)
            : null;

    private static string Token(AnswerKind kind) => kind switch
    {
        AnswerKind.NotSure => OptionId.NotSure,
        AnswerKind.Cannot => OptionId.Cannot,
        AnswerKind.Back => OptionId.Back,
        AnswerKind.Why => OptionId.Why,
        AnswerKind.ShowMe => OptionId.ShowMe,
        AnswerKind.Stop => OptionId.Leave,
        _ => "",
    };

    private static ImmutableArray<string> Phrases(TurnDraft draft, OptionId option) => option switch
    {
        { AsState: { } state } when draft.Case.Open.Kind == AskKind.Check =>
            [.. draft.Knowledge.Findings[draft.Knowledge.Checks[draft.Case.Open.Subject].Tells].States.Where(s => s.Id == state).SelectMany(s => s.RidersSay.Add(s.Says))],
        { AsState: { } state } when draft.Case.Open.Kind == AskKind.Fact =>
            [.. draft.Knowledge.Facts[draft.Case.Open.Subject].Values.Where(v => v.Id == state).SelectMany(v => v.RidersSay)],
        { AsEither: { } place } when TellingApart.Rule(draft, draft.Case.Open.Subject) is { } rule => rule.Answers[place].RidersSay,
        { AsComplaint: { } complaint } => draft.Knowledge.Complaints[complaint].RidersSay,
        _ => [.. StandingPhrases.GetValueOrDefault(option.Token, [])],
    };

    private static IReadOnlyList<AnswerOption> Standing =>
    [
        new AnswerOption(OptionId.Helper, "I'd rather have a helper", [.. StandingPhrases[OptionId.Helper]]),
        new AnswerOption(OptionId.Change, "Change an earlier answer", [.. StandingPhrases[OptionId.Change]]),
    ];

    /// <summary>What riders say for the answers that are the same in every case.</summary>
    private static readonly Dictionary<string, string[]> StandingPhrases = new(StringComparer.Ordinal)
    {
        [OptionId.Ready] = ["yes", "yep", "yeah", "ready", "ready now", "all safe", "all good", "it is off and cold", "done that", "i am at the bike", "ok go on"],
        [OptionId.NotYet] = ["no", "not yet", "later", "it is still hot", "i am not at the bike"],
        [OptionId.Done] = ["done", "i did it", "finished", "did that", "done it all", "fitted it"],
        [OptionId.StepByStep] = ["step by step", "one at a time", "next", "next step", "guide me", "walk me through it"],
        [OptionId.Held] = ["yes", "it works", "fixed", "all good now", "that was it", "gone", "it holds", "sorted", "works great"],
        [OptionId.Better] = ["better but not gone", "a bit better", "somewhat better", "improved", "still a little"],
        [OptionId.NoChange] = ["no", "no change", "still the same", "nothing changed", "did not help", "same as before", "still does it"],
        [OptionId.CameBack] = ["it came back", "same trouble again", "it is back", "did not last"],
        [OptionId.NoneOfThese] = ["none of these", "none", "something else", "no"],
        [OptionId.Safe] = ["everybody is safe", "safe now", "we are ok", "all safe", "yes", "go on"],
        [OptionId.Helper] = ["helper please", "i want a human", "get somebody", "can somebody look at it", "can i talk to a person"],
        [OptionId.Change] = ["i answered an earlier question wrong", "one of my earlier answers was wrong"],
    };
}
