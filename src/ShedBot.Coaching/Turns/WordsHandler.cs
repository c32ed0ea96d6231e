using System.Buffers;
using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Turns;

/// <summary>What the member's own words do, at any time: an answer, news, a correction, a question of theirs, an emergency.</summary>
internal sealed class WordsHandler(TurnDraft draft, Listener listener)
{
    /// <summary>From this score on a complaint counts as said; below it the rider is asked which one they mean.</summary>
    public const double Clear = 0.5;

    /// <summary>The same while a question is open: then words are more likely an odd answer to it than a new trouble.</summary>
    public const double ClearAsNews = 0.75;

    /// <summary>So often words may be no answer to one question before it is asked differently, or let be.</summary>
    private const int MostMisses = 2;

    /// <summary>So many words are no mere 'hello there'.</summary>
    private const int MoreThanGreeting = 4;

    private static readonly SearchValues<char> ClauseEnds = SearchValues.Create(",.;:!?");

    /// <summary>From this score on a finding that was overheard counts, softly.</summary>
    public const double Overheard = 0.5;

    private ImmutableArray<string> overheard = [];

    public void Handle(string words)
    {
        overheard = draft.Overhear(words);
        var understood = listener.Understand(words, AnswerReading.Context(draft));
        var eitherWanted = TellingApart.IsWanted(draft, understood);
        if (understood.Emergency is { } emergency && !TellingApart.IsOnlyPossible(draft, understood))
        {
            // What else was said is kept: when all are safe the case goes on from there.
            if (eitherWanted || !understood.Complaints.IsEmpty) draft.OpenWith(words);
            if (eitherWanted) TellingApart.Begin(draft, understood.Either!);
            Note(understood);
            AddComplaints(understood);
            Advancing.Emergency(draft, emergency);
            return;
        }

        if (eitherWanted)
        {
            Ambiguous(words, understood);
            return;
        }

        if (understood.HowTo is { Score: >= Overheard } howTo && understood.Complaints.IsEmpty)
        {
            draft.Say(HelpCards.HowTo(draft.Knowledge.HowTos[howTo.Id]));
            Presenting.Again(draft);
            return;
        }

        if (Outdated.Is(draft))
        {
            Note(understood);
            AddComplaints(understood);
            GoOn();
            return;
        }

        if (Answer(words, understood) is { } option && !TellingApart.IsSpokenAgainst(draft, option, understood))
        {
            new ChoiceHandler(draft).Handle(option);
            return;
        }

        if (understood.Complaints.IsEmpty && AnswerReading.AtAnyTime(draft, words) is { } anyTime)
        {
            new ChoiceHandler(draft).Handle(anyTime);
            return;
        }

        if (draft.Case.Open.Kind is AskKind.AllSafe)
        {
            Presenting.Again(draft);
            return;
        }

        if (draft.Case.Open.Kind is AskKind.Either)
        {
            TellingApart.AskAgain(draft);
            return;
        }

        if (draft.Case.Phase == CasePhase.Opening) Opening(words, understood);
        else Later(words, understood);
    }

    /// <summary>What else is heard in the words is kept for the case that it is the trouble; whoever is still in danger is asked when that is over.</summary>
    private void Ambiguous(string words, Understood understood)
    {
        draft.OpenWith(words);
        TellingApart.Begin(draft, understood.Either!);
        Note(understood);
        AddComplaints(understood);
        if (draft.Case.Open.Kind is AskKind.AllSafe) Presenting.Again(draft);
        else Advancing.Next(draft);
    }

    /// <summary>The words as an answer to the open question; else their first clause: "it's missing, there is only a hole".</summary>
    private OptionId? Answer(string words, Understood understood)
    {
        if (AnswerReading.Of(draft, understood.Answer, News(understood)) is { } whole) return whole;
        if (AnswerReading.PlainYesOrNo(draft, words) is { } plain) return plain;
        var end = words.AsSpan().IndexOfAny(ClauseEnds);
        return draft.Case.Open.Kind == AskKind.Check && end > 0
            ? AnswerReading.Of(draft, listener.Understand(words[..end], AnswerReading.Context(draft)).Answer)
            : null;
    }

    /// <summary>How sure it is that the words tell something that was not asked.</summary>
    private double News(Understood understood)
    {
        var asked = draft.Case.Open.Kind == AskKind.Check ? draft.Knowledge.Checks[draft.Case.Open.Subject].Tells : null;
        return understood.Findings.Where(f => f.Subject != asked).Select(f => f.Score).DefaultIfEmpty(0).Max();
    }

    private void GoOn()
    {
        if (draft.View.Complaints.Any()) Advancing.Next(draft);
        else Advancing.AskTrouble(draft);
    }

    private void Opening(string words, Understood understood)
    {
        if (understood.NotMine)
        {
            draft.Say(HelpCards.NotMine(understood.NotMineBecause));
            if (Wanted(words, understood)) draft.NotHeard(words, UnheardWords.Trouble);
            if (draft.Case.Open.Kind == AskKind.WhichComplaint) Presenting.Again(draft);
            else if (draft.Case.Open.Kind == AskKind.None) draft.Put(AskKind.Trouble);
            return;
        }

        draft.OpenWith(words);
        Note(understood);
        AddComplaints(understood);
        if (draft.View.Complaints.Any())
        {
            Advancing.Next(draft, HelpCards.Heard(draft.View, draft.View.Complaints) + (overheard.IsEmpty ? "" : $" And noted of your bike: {Say.Join(overheard)}."));
            return;
        }

        draft.NotHeard(words, UnheardWords.Trouble);
        var misses = draft.Case.Open.Kind == AskKind.Trouble ? draft.Case.Open.Position : 0;
        draft.Put(AskKind.WhichComplaint, string.Join(',', understood.Complaints.Select(c => c.Id)), misses);
        Presenting.Now(draft);
    }

    /// <summary>Whether somebody who teaches the rules would want to hear of these words: they may be a trouble that no rule knows yet.</summary>
    private static bool Wanted(string words, Understood understood) => understood.NotMineBecause switch
    {
        null or "unclear" or "other-part" => true,
        "chatter" => words.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length >= MoreThanGreeting,
        _ => false,
    };

    private void Later(string words, Understood understood)
    {
        var asked = draft.Case.Open.Kind == AskKind.Check ? draft.Knowledge.Checks[draft.Case.Open.Subject].Tells : null;
        if (understood.Findings.FirstOrDefault(f => f.Subject == asked && f.Score >= Overheard) is { } answer)
        {
            var check = draft.Case.Open.Subject;
            Note(understood with { Findings = understood.Findings.Remove(answer) });
            Answering.Answer(draft, check, answer.State);
            return;
        }

        var before = draft.Case.Entries;
        Note(understood);
        AddComplaints(understood);
        if (draft.Case.Entries == before && !overheard.IsEmpty)
        {
            draft.Say(HelpCards.NotedOfBike(overheard));
            Presenting.Again(draft);
            return;
        }

        if (draft.Case.Entries == before)
        {
            Missed(words, understood);
            return;
        }

        var news = draft.Case.Entries.Where(e => e.Turn == draft.Case.Turn && !e.Struck).Select(e => Told.Line(draft.View, e));
        Advancing.Next(draft, $"Noted: {string.Join("; ", news)}.");
    }

    /// <summary>Nothing was made of the words. Who has said something else twice is not asked the same a third time: that is 'not sure', which is no evidence.</summary>
    private void Missed(string words, Understood understood)
    {
        var open = draft.Case.Open;
        if (Wanted(words, understood)) draft.NotHeard(words, open.Subject);
        var elsewhere = understood.NotMineBecause is "other-machine" or "other-part";
        if (open.Kind is AskKind.Check or AskKind.Fact && !elsewhere)
        {
            draft.Add(EntryKind.Unheard, open.Subject);
            if (draft.Case.Standing.Count(e => e.Kind == EntryKind.Unheard && e.Subject == open.Subject) >= MostMisses)
            {
                draft.Say(HelpCards.TakenAsNotSure());
                new ChoiceHandler(draft).Handle(new OptionId(open.Serial, OptionId.NotSure));
                return;
            }
        }

        draft.Say(elsewhere ? HelpCards.NotMine(understood.NotMineBecause) : HelpCards.NotUnderstood(open.Kind));
        Presenting.Again(draft);
    }

    private void AddComplaints(Understood understood)
    {
        var least = draft.Case.Phase == CasePhase.Opening ? Clear : ClearAsNews;
        foreach (var complaint in understood.Complaints.Where(c => c.Score >= least && !draft.View.Complaints.Contains(c.Id)).ToList())
            draft.Add(EntryKind.Complaint, complaint.Id, score: complaint.Score);
    }

    /// <summary>Writes down what was volunteered; what contradicts an earlier line corrects it.</summary>
    private void Note(Understood understood)
    {
        foreach (var denied in understood.Denied.Where(d => !draft.View.Standing.Any(e => e.Kind == EntryKind.Denied && e.Subject == d)))
        {
            draft.Strike(e => e.Kind == EntryKind.Complaint && e.Subject == denied);
            draft.Add(EntryKind.Denied, denied);
        }

        foreach (var heard in understood.Findings.Where(f => f.Score >= Overheard))
        {
            if (Says(heard.Subject) == heard.State) continue;
            draft.Strike(e => About(e) == heard.Subject);
            draft.Add(EntryKind.Volunteered, heard.Subject, heard.State, heard.Score);
        }

        foreach (var heard in understood.Facts.Where(f => f.Score >= Overheard))
        {
            if (draft.View.Facts.GetValueOrDefault(heard.Subject) == heard.State) continue;
            draft.Strike(e => e.Kind == EntryKind.Fact && e.Subject == heard.Subject);
            draft.Add(EntryKind.Fact, heard.Subject, heard.State, heard.Score);
            draft.Learn(heard.Subject, heard.State, "heard");
        }
    }

    private string? Says(string finding) => draft.Case.Standing.LastOrDefault(e => About(e) == finding)?.Value;

    private string? About(CaseEntry entry) => entry.Kind switch
    {
        EntryKind.Volunteered => entry.Subject,
        EntryKind.Answer when draft.Knowledge.Checks.TryGetValue(entry.Subject, out var check) => check.Tells,
        _ => null,
    };
}
