using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Turns;

/// <summary>The coach: a function of the case, what came in, the rules and the time. Touches no clock, no chance, no store; safe to share between threads.</summary>
public sealed class Coach(KnowledgeBase knowledge, Listener listener, CoachOptions options)
{
    /// <summary>From this score on a complaint is no chance likeness.</summary>
    private const double Clear = 0.75;

    public KnowledgeBase Knowledge => knowledge;

    public Listener Listener => listener;

    public CoachOptions Options => options;

    /// <summary>Takes one turn. The same arguments give the same turn.</summary>
    /// <param name="now">The time of the turn, UTC.</param>
    public Turn Take(Case before, BikeProfile bike, Incoming incoming, DateTimeOffset now)
    {
        if (before.Handled.Contains(incoming.EventId)) return new Turn(before, bike, null, []);
        var draft = new TurnDraft(before, bike, knowledge, options, now);
        switch (incoming)
        {
            case MemberSaid said when before.IsClosed && !ComesBack(draft, said.Words):
                return new Turn(before, bike, null, [], OpensNew: true);
            case TroubleFound found when before.IsClosed || before.Bike != found.Bike:
                return new Turn(before, bike, null, [], OpensNew: true);
            case MemberSaid said:
                new WordsHandler(draft, listener).Handle(said.Words);
                break;
            case MemberChose chose:
                Choose(draft, chose.OptionId);
                break;
            case TroubleFound found:
                Revealing.Take(draft, found.Complaint);
                break;
            case MemberLeft when before.IsClosed:
                draft.Say(HelpCards.Late(closed: true));
                break;
            case MemberLeft:
                Advancing.Leave(draft);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(incoming), incoming, "A turn is words, a choice, a trouble or a leave.");
        }

        if (Outdated.RulesChanged(before, knowledge.Version)) draft.SayFirst(HelpCards.RulesChanged);
        return draft.Finish(incoming.EventId);
    }

    /// <summary>Whether words clearly tell of a trouble or an emergency, whatever else was asked for just now.</summary>
    public bool Hears(string words)
    {
        var understood = listener.Understand(words);
        return understood.Emergency is not null || understood.Either is not null || understood.Complaints.Any(c => c.Score >= Clear);
    }

    /// <summary>What is said to somebody who has no case yet.</summary>
    public static Cards.Card Welcome(string name) => HelpCards.Welcome(name);

    private bool ComesBack(TurnDraft draft, string words) =>
        draft.Case.Phase == CasePhase.Solved
        && AnswerReading.Of(draft, listener.Understand(words, AnswerReading.Context(draft)).Answer) is { Token: OptionId.CameBack };

    private static void Choose(TurnDraft draft, string optionId)
    {
        if (OptionId.Read(optionId) is not { } option)
        {
            draft.Say(HelpCards.NotAnOption());
            Presenting.Again(draft);
        }
        else if (option.Serial == draft.Case.Open.Serial && Outdated.Is(draft) && !Presenting.Offers(draft, option))
        {
            // It was not late: the club's rules do not ask this any more, and that is told.
            Presenting.Again(draft);
        }
        else if (option.Serial != draft.Case.Open.Serial || !Presenting.Offers(draft, option))
        {
            draft.Say(HelpCards.Late(draft.Case.IsClosed));
            Presenting.Again(draft);
        }
        else
        {
            new ChoiceHandler(draft).Handle(option);
        }
    }
}
