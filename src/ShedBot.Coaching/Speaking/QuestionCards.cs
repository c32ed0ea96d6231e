using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Thinking;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Speaking;

/// <summary>One question or check a card.</summary>
internal static class QuestionCards
{
    /// <summary>After so many questions the way to a human stands on every card; in words it is open at any time.</summary>
    private const int ManyAsked = 5;

    public static Card Trouble(string title, string text) => new(title, [Say.Text(text)], []);

    public static Card WhichComplaint(CaseView view, Ask open, IEnumerable<string> complaints) => new(
        "Which of these is closest to your trouble?",
        [Say.Text("Pick the nearest one, or tell me in other words what the bike does and what you were doing when it did.")],
        [
            .. complaints.Select(c => view.Knowledge.Complaints[c])
                .Select(c => Say.Option(open, OptionId.Complaint(c.Id), $"{c.Called}: {Lower(c.InShort)}")),
            Say.Option(open, OptionId.NoneOfThese, "None of these"),
            Say.Help(open, OptionId.Leave, "Leave it for now"),
        ]);

    public static Card Either(CaseView view, EitherRule rule, Ask open)
    {
        var inOtherWords = open.Position > 0;
        return new Card(
            inOtherWords ? rule.OtherWords : rule.Ask,
            [
                Say.Caution(rule.Caution),
                .. Say.Steps("Until we know", rule.UntilKnown),
                .. inOtherWords && rule.ShowMe is not null ? [new DrawingBlock(rule.ShowMe)] : Array.Empty<CardBlock>(),
            ],
            [
                .. rule.Answers.Select((a, i) => Say.Option(open, OptionId.Either(i), a.Says)),
                Say.Help(open, OptionId.NotSure, "Not sure"),
                Say.Help(open, OptionId.Cannot, "Can't do that now"),
                .. Usual(view, open, rule.ShowMe is not null && !inOtherWords),
            ]);
    }

    public static Card Fact(CaseView view, Ask open)
    {
        var fact = view.Knowledge.Facts[open.Subject];
        return new Card(
            fact.Ask,
            [Say.Text("It changes where I would look first. I keep it with your bike, so I need not ask again soon.")],
            FactOptions(view, open),
            Beliefs.Progress(view));
    }

    public static ImmutableArray<CardOption> FactOptions(CaseView view, Ask open) =>
    [
        .. view.Knowledge.Facts[open.Subject].Values.Select(v => Say.Option(open, OptionId.State(v.Id), v.Says)),
        Say.Help(open, OptionId.NotSure, "Not sure"),
        .. Usual(view, open, showMe: false),
    ];

    public static Card Check(CaseView view, Ask open)
    {
        var check = view.Knowledge.Checks[open.Subject];
        var blocks = ImmutableArray.CreateBuilder<CardBlock>();
        var otherWords = open.Position > 0 ? check.OtherWords : null;
        if (otherWords is null) blocks.Add(Say.Text(check.Why));
        blocks.AddRange(Say.Cautions(check.Cautions));
        if (check.Cover is not null && !view.OpenCovers.Contains(check.Cover))
        {
            var cover = view.Knowledge.Covers[check.Cover];
            blocks.AddRange(Say.Steps($"First take off {cover.Called}", cover.How));
        }

        if (otherWords is not null && check.ShowMe is not null) blocks.Add(new DrawingBlock(check.ShowMe));
        else blocks.AddRange(Say.Steps("How", check.How));
        if (check.HandsOn) blocks.Add(Say.Text(Effort(check)));
        return new Card(otherWords ?? check.Ask, blocks.ToImmutable(), CheckOptions(view, open), Beliefs.Progress(view));
    }

    public static ImmutableArray<CardOption> CheckOptions(CaseView view, Ask open)
    {
        var check = view.Knowledge.Checks[open.Subject];
        var showMe = check.ShowMe is not null && (open.Position == 0 || check.OtherWords is null);
        return
        [
            .. view.Knowledge.Findings[check.Tells].States.Select(s => Say.Option(open, OptionId.State(s.Id), Label(check, s))),
            Say.Help(open, OptionId.NotSure, "Not sure"),
            .. check.HandsOn ? [Say.Help(open, OptionId.Cannot, "Can't do that now")] : Array.Empty<CardOption>(),
            .. Usual(view, open, showMe),
            .. view.AskedSinceRepair >= ManyAsked ? [Say.Help(open, OptionId.Helper, "I'd rather have a helper")] : Array.Empty<CardOption>(),
        ];
    }

    public static Card Ready(CaseView view, Ask open)
    {
        var triage = view.Knowledge.Triage;
        return new Card(
            triage.Ask,
            [.. Say.List("Safe to put hands on", triage.Points)],
            [
                Say.Option(open, OptionId.Ready, triage.Ready),
                Say.Option(open, OptionId.NotYet, triage.NotYet),
                .. triage.Dangers.Select(d => Say.Option(open, OptionId.Danger(d.Emergency), d.Says)),
                Say.Help(open, OptionId.Back, "Back"),
            ],
            Beliefs.Progress(view));
    }

    public static Card Rest(CaseView view, Ask open) => new(
        "We go on when you are at the bike",
        [
            Say.Text("From here on I need eyes and hands on the machine: engine off and cold, plug cap off, bike standing firm, no smell of fuel. "
                + "Everything you told me is kept. Come back in an hour or in a week and we go on right here."),
        ],
        [Say.Option(open, OptionId.Ready, "I'm at the bike and it is safe"), Say.Help(open, OptionId.Back, "Back"), Say.Help(open, OptionId.Leave, "Leave it for now")],
        Beliefs.Progress(view));

    public static Card WhichAnswer(CaseView view, Ask open) => new(
        "Which answer do you want to change?",
        [Say.Text("Pick it and I ask it again; everything after it is worked out anew.")],
        [
            .. view.Standing.Where(e => e.Kind is EntryKind.Answer or EntryKind.Fact)
                .Reverse().Take(8)
                .Select(e => Say.Option(open, OptionId.Answer(e.Turn), Told.Line(view, e))),
            Say.Help(open, OptionId.Back, "None, go on"),
        ]);

    public static string Label(CheckRule check, StateRule state) => check.Answers.GetValueOrDefault(state.Id, state.Says);

    private static IEnumerable<CardOption> Usual(CaseView view, Ask open, bool showMe)
    {
        if (showMe) yield return Say.Help(open, OptionId.ShowMe, "Show me how");
        yield return Say.Help(open, OptionId.Why, "Why do you ask?");
        if (view.Standing.Any(Striking.MayGoBackTo)) yield return Say.Help(open, OptionId.Back, "Back");
        if (view.Standing.Count(e => e.Kind is EntryKind.Answer or EntryKind.Fact) > 1)
            yield return Say.Help(open, OptionId.Change, "Change an earlier answer");
    }

    private static string Effort(CheckRule check)
    {
        var tools = check.Tools.IsEmpty ? "no tools" : Say.Join(check.Tools);
        return $"About {Math.Max(1, Math.Round(check.Minutes))} min, {tools}.";
    }

    private static string Lower(string text) => text.Length > 1 && char.IsUpper(text[0]) && !char.IsUpper(text[1])
        ? char.ToLowerInvariant(text[0]) + text[1..]
        : text;
}
