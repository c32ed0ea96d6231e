using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Thinking;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Turns;

/// <summary>One turn in the making. Lives for one call; what it holds is replaced, never changed in place.</summary>
internal sealed class TurnDraft
{
    /// <summary>How many events are remembered as answered: enough for every replay of a platform, few enough to store with each turn.</summary>
    private const int EventsRemembered = 20;

    private readonly BikeProfile bikeBefore;
    private readonly DateTimeOffset now;
    private readonly List<Card> say = [];
    private CaseView? view;
    private Outcome? outcome;
    private UnheardWords? unheard;

    public TurnDraft(Case before, BikeProfile bike, KnowledgeBase knowledge, CoachOptions options, DateTimeOffset now)
    {
        bikeBefore = bike;
        this.now = now;
        Knowledge = knowledge;
        Options = options;
        Bike = bike;
        Case = before with { Turn = before.Turn + 1, Version = before.Version + 1, LastTurnAt = now, KnowledgeVersion = knowledge.Version };
    }

    public Case Case { get; private set; }

    public BikeProfile Bike { get; private set; }

    public KnowledgeBase Knowledge { get; }

    public CoachOptions Options { get; }

    public CaseView View => view ??= CaseView.Of(Case, Bike, Knowledge, now);

    public void Say(Card card) => say.Add(card);

    /// <summary>A line before all else that is said. An emergency comes alone.</summary>
    public void SayFirst(string line)
    {
        if (say.Count > 0 && Case is { Phase: not CasePhase.Stopped, Open.Kind: not AskKind.AllSafe }) say[0] = say[0] with { Blocks = say[0].Blocks.Insert(0, new TextBlock(line)) };
    }

    public void Add(EntryKind kind, string subject = "", string? value = null, double score = 1) =>
        Replace(Case with { Entries = Case.Entries.Add(new CaseEntry(Case.Turn, kind, subject, value, score, now)) });

    public void Strike(Func<CaseEntry, bool> fits) => Replace(Case with { Entries = Striking.Where(Case.Entries, fits) });

    public CaseEntry? StrikeLast()
    {
        var (entries, takenBack) = Striking.Last(Case.Entries);
        Replace(Case with { Entries = entries });
        return takenBack;
    }

    public void OpenWith(string words)
    {
        if (Case.OpeningWords.Length == 0) Replace(Case with { OpeningWords = words });
    }

    /// <summary>Puts a new question; the serial makes every option of an older one a late one.</summary>
    public Ask Put(AskKind kind, string subject = "", int position = 0)
    {
        var open = new Ask(kind, subject, position, Case.Open.Serial + 1);
        Case = Case with { Open = open };
        return open;
    }

    public void Fire(CaseTrigger trigger)
    {
        var phase = CaseMachine.After(Case.Phase, trigger);
        Case = Case with { Phase = phase };
        Case = Case with { ClosedAt = Case.IsClosed ? now : null };
    }

    public void Learn(string fact, string value, string how)
    {
        Bike = Bike with { Facts = Bike.Facts.SetItem(fact, new BikeFact(value, now, how)) };
        view = null;
    }

    /// <summary>Takes facts of the sheet out of free words, where they are news.</summary>
    /// <returns>What was taken, as in "engine size 66 cc"; empty when nothing was.</returns>
    public ImmutableArray<string> Overhear(string words)
    {
        var today = RiderDays.Of(now, DateTimeZone.Utc);
        SheetField FieldOf(string id) => BikeSheet.Find(Knowledge, id)!;
        var news = Telling.News(
            Bike, FactHearing.Hear(words, Knowledge, today), id => FieldOf(id).Kind, (id, fact) => FactAge.IsStale(FieldOf(id), fact, Bike, today, DateTimeZone.Utc));
        if (news.IsEmpty) return [];
        Bike = Telling.Tell(Bike, news, now, Telling.Heard);
        view = null;
        return [.. news.Select(n => $"{FieldOf(n.Field).Called} {FieldOf(n.Field).Kind.Show(n.Value!, Units.Metric)}")];
    }

    /// <summary>The day is that of UTC: a case knows no zone, and a part lasts longer than the difference.</summary>
    public void LogWork(string repair)
    {
        Bike = Telling.Tell(Bike, Renewals.Of(repair, RiderDays.Of(now, DateTimeZone.Utc)), now, Telling.Done);
        Bike = Bike with { Work = Bike.Work.Add(new WorkDone(repair, Knowledge.Repairs[repair].Does, Case.Id, now)) };
    }

    public void Close(string? repair, ImmutableArray<OutcomeCause> causes) =>
        outcome = new Outcome(Case.Id, Case.Phase, repair, causes, View.Asked, Knowledge.Version, now);

    /// <summary>Notes words that nothing could be made of, for those who teach the club's rules.</summary>
    /// <param name="expected">What was asked, or <see cref="UnheardWords.Trouble"/>.</param>
    public void NotHeard(string words, string expected) =>
        unheard = new UnheardWords(Case.Member, words.Length <= UnheardWords.Longest ? words : words[..UnheardWords.Longest], expected, now);

    public Turn Finish(string eventId)
    {
        var handled = Case.Handled.Add(eventId);
        if (handled.Length > EventsRemembered) handled = handled.RemoveRange(0, handled.Length - EventsRemembered);
        return new Turn(Case with { Handled = handled }, Stamp(Bike), outcome, [.. say], Unheard: unheard);
    }

    private BikeProfile Stamp(BikeProfile after) => ReferenceEquals(after, bikeBefore) ? after : after with { Version = bikeBefore.Version + 1 };

    private void Replace(Case after)
    {
        Case = after;
        view = null;
    }
}
