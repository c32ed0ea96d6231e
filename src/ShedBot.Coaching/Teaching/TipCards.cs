using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Speaking;

namespace ShedBot.Coaching.Teaching;

/// <summary>Tips, with the words of members quoted.</summary>
internal static class TipCards
{
    private const int MostShown = 20, MostWords = 70;

    /// <summary>A link is the platform's to show, in its own way.</summary>
    private const string Link = "https://";

    public static Card List(ImmutableArray<Tip> tips) => tips.IsEmpty
        ? new Card("Tips", [Say.Text("No tip is waiting.")], [])
        : new Card(
            tips.Length == 1 ? "One tip is waiting" : $"{tips.Length} tips are waiting",
            tips.Length == 1 ? [] : [Say.Text(tips.Length > MostShown ? $"The oldest {MostShown} are shown." : "The oldest comes first.")],
            [.. tips.Take(MostShown).Select(t => new TeachPress(TeachVerb.Tip, t.Id).Option($"{TeachAct.NameOf(t.FromName)}: \"{CleanText.OneLine(t.Words, MostWords)}\""))]);

    public static Card Of(Tip tip) => new(
        $"A tip of {TeachAct.NameOf(tip.FromName)}",
        [
            Say.Text($"\"{CleanText.Of(tip.Words)}\""),
            Say.Text($"Said on {ProposalCards.Day(tip.At)}{(tip.Where.Length > 0 && !tip.Where.StartsWith(Link, StringComparison.Ordinal) ? $", in {tip.Where}" : "")}."),
            .. tip.State == TipState.Waiting ? [] : new CardBlock[] { Say.Text(WhyNotWaiting(tip)) },
        ],
        tip.State != TipState.Waiting
            ? []
            : [new TeachPress(TeachVerb.Sheets, tip.Id).Option("Write a rule from it"), new TeachPress(TeachVerb.Decline, tip.Id).Option("Decline it kindly"), new TeachPress(TeachVerb.Tips).Option("the other tips", OptionRole.Help)]);

    public static string WhyNotWaiting(Tip tip) => tip.State switch
    {
        TipState.Taken => "Somebody is writing a rule from it already.",
        TipState.Used => "It is part of the rules already.",
        TipState.Declined => $"It was declined: {tip.Answer}",
        _ => "It is waiting.",
    };
}
