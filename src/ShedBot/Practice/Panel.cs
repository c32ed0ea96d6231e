using System.Collections.Immutable;
using ShedBot.Cards;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Practice;

/// <summary>What is shown, and what can be typed to answer it: the newest card with answers is the one that is answered.</summary>
internal sealed class Panel(IScreen screen)
{
    private static readonly ImmutableHashSet<string> OfOne =
        ["done", "it is done", "how", "how do i", "how do i do it", "how do i do that", "how to", "no more of this one", "stop this", "it shows trouble"];

    /// <summary>What people say for what stands on an answer.</summary>
    private static readonly ImmutableDictionary<string, NudgeVerb> Spoken = new Dictionary<string, NudgeVerb>
    {
        ["later"] = NudgeVerb.Tonight,
        ["later tonight"] = NudgeVerb.Tonight,
        ["saturday"] = NudgeVerb.Weekend,
        ["on saturday"] = NudgeVerb.Weekend,
        ["at the weekend"] = NudgeVerb.Weekend,
        ["this weekend"] = NudgeVerb.Weekend,
        ["next week"] = NudgeVerb.NextWeek,
        ["i rode"] = NudgeVerb.Rode,
        ["rode today"] = NudgeVerb.Rode,
        ["all done"] = NudgeVerb.AllDone,
        ["how"] = NudgeVerb.HowTo,
        ["stop this"] = NudgeVerb.StopTask,
        ["stop all"] = NudgeVerb.Decline,
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <summary>The digest that was shown last, with what of it was not dealt with yet.</summary>
    private Card? digest;

    /// <summary>Of the newest card that offers any, whether the coach's or a reminder.</summary>
    public AnswerKeys Keys { get; private set; } = AnswerKeys.None;

    /// <summary>Of the coach's newest card: a reminder that comes between does not take them away.</summary>
    public AnswerKeys Asked { get; private set; } = AnswerKeys.None;

    /// <summary>True while the coach waits for an answer.</summary>
    public bool IsAsking => Asked.Answers.Any();

    /// <summary>True while what can be picked is about the club's rules.</summary>
    public bool IsTeaching => Keys.Answers.Concat(Keys.Helps).Any(k => TeachPress.Read(k.Option.Id) is not null);

    public void Clear()
    {
        Keys = Asked = AnswerKeys.None;
        digest = null;
    }

    public void Show(Card card)
    {
        var shown = AnswerKeys.Of(card);
        var nudge = card.Options.Any(o => NudgeAnswer.Read(o.Id) is not null);
        if (!shown.IsEmpty) Keys = shown;
        var taught = card.Options.Any(o => TeachPress.Read(o.Id) is not null);
        if (!shown.IsEmpty && !nudge && !taught) Asked = shown;
        if (card.Options.Any(o => NudgeAnswer.Read(o.Id)?.Verb == NudgeVerb.Look)) digest = card;
        screen.Show(card, shown);
    }

    /// <summary>What the coach asked is answered. What a reminder asked stands until something newer asks.</summary>
    public void CoachSpeaks()
    {
        if (Keys.Same(Asked)) Keys = AnswerKeys.None;
        Asked = AnswerKeys.None;
    }

    /// <summary>Something to read: it takes no answers away.</summary>
    public void ShowAside(Card card) => screen.Show(card, AnswerKeys.None);

    /// <summary>The reminder was answered: its keys are gone.</summary>
    public void Answered() => Keys = Asked;

    /// <summary>What is left of the digest that was shown, once this was dealt with; null when nothing is.</summary>
    public Card? Left(NudgeAnswer answer)
    {
        digest = answer.Verb is NudgeVerb.Done or NudgeVerb.StopTask or NudgeVerb.Rode && digest is { } shown
            ? shown with { Title = "Of that, still open", Blocks = [], Options = shown.Options.RemoveAll(o => o.Id == answer.ToString() || IsLookAt(o, answer)) }
            : null;
        return digest is { } left && left.Options.Any(o => NudgeAnswer.Read(o.Id)?.Verb == NudgeVerb.Look) ? left : digest = null;
    }

    /// <returns>The option of a reminder that is shown, when the line is what stands on it; null for anything else.</returns>
    public CardOption? Named(string line)
    {
        var wanted = Plain(line);
        if (wanted.Length == 0 || NudgesShown() is not { Count: > 0 } shown) return null;
        return shown.FirstOrDefault(o => Plain(o.Label) == wanted)
            ?? shown.FirstOrDefault(o => o.Label.Contains(',', StringComparison.Ordinal) && Plain(o.Label.Split(',')[0]) == wanted)
            ?? (Spoken.TryGetValue(wanted, out var verb) ? shown.FirstOrDefault(o => NudgeAnswer.Read(o.Id)!.Verb == verb) : null);
    }

    /// <returns>Shows a task of the digest that is shown, though it was only counted there; null when no digest of several is shown.</returns>
    public NudgeAnswer? LookAt(string task) => NudgesShown().Select(o => NudgeAnswer.Read(o.Id)!).FirstOrDefault(a => a.Verb == NudgeVerb.Look) is { } look
        ? look with { Subject = task }
        : null;

    /// <returns>True when the line is said of one task, and a digest of several is shown.</returns>
    public bool MeansOneOfSeveral(string line) => OfOne.Contains(Plain(line)) && NudgesShown().Any(o => NudgeAnswer.Read(o.Id)!.Verb == NudgeVerb.Look);

    /// <returns>The answer "not riding" of a reminder that is shown, or null.</returns>
    public NudgeAnswer? NotRiding() => NudgesShown().Select(o => NudgeAnswer.Read(o.Id)!).FirstOrDefault(a => a.Verb == NudgeVerb.NotRiding);

    private List<CardOption> NudgesShown() => [.. Keys.Answers.Concat(Keys.Helps).Select(k => k.Option).Where(o => NudgeAnswer.Read(o.Id) is not null)];

    private static bool IsLookAt(CardOption option, NudgeAnswer answer) =>
        NudgeAnswer.Read(option.Id) is { Verb: NudgeVerb.Look } look && look.Bike == answer.Bike && look.Subject == answer.Subject;

    private static string Plain(string text) => text.Trim().TrimEnd('.', '!', '?').ToLowerInvariant();
}
