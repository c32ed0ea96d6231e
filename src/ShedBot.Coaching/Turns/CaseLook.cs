using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Turns;

/// <summary>Looks at a case without taking a turn: nothing is asked, nothing is written down.</summary>
public static class CaseLook
{
    /// <summary>So many causes are worth a bar when somebody asks to see all that is believed.</summary>
    private const int MostBars = 8;

    /// <returns>The card that the open question is shown with, or null when none is open.</returns>
    /// <param name="now">The time of the look, UTC: some questions lapse.</param>
    public static Card? OpenQuestion(KnowledgeBase knowledge, CoachOptions options, Case @case, BikeProfile bike, DateTimeOffset now) =>
        Presenting.Card(new TurnDraft(@case, bike, knowledge, options, now));

    /// <summary>What an option only shows: why something is asked, or how it is done. Asking for it changes nothing in the case.</summary>
    /// <returns>The card; null when the option is not offered by the open question, or does more than show.</returns>
    public static Card? Aside(KnowledgeBase knowledge, CoachOptions options, Case @case, BikeProfile bike, DateTimeOffset now, string optionId)
    {
        var draft = new TurnDraft(@case, bike, knowledge, options, now);
        if (OptionId.Read(optionId) is not { } option || option.Serial != @case.Open.Serial || !Presenting.Offers(draft, option)) return null;
        return option.Token switch
        {
            OptionId.Why => HelpCards.Why(draft.View, @case.Open),
            OptionId.ShowMe => HelpCards.ShowMe(draft.View, @case.Open),
            _ => null,
        };
    }

    /// <summary>What is believed at this point of the case.</summary>
    public static Card Belief(KnowledgeBase knowledge, CoachOptions options, Case @case, BikeProfile bike, DateTimeOffset now)
    {
        var view = new TurnDraft(@case, bike, knowledge, options, now).View;
        return view.Complaints.Any()
            ? new Card("What I think so far", [Beliefs.Bars(view, MostBars)], [], Beliefs.Progress(view))
            : new Card("What I think so far", [Say.Text("Nothing yet: I do not know the trouble.")], []);
    }
}
