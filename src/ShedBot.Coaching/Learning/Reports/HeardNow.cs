using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Learning.Reports;

/// <summary>Whether words that were not understood when they came would be now: by the same scores by which the coach goes.</summary>
/// <param name="before">The listener of the project's rules alone.</param>
internal sealed class HeardNow(KnowledgeBase rules, Listener listener, Listener before)
{
    public bool Are(UnheardWords unheard)
    {
        var heard = listener.Understand(unheard.Words, Context(unheard.Expected));
        if (heard.Emergency is not null || heard.HowTo is { Score: >= WordsHandler.Overheard }) return true;
        if (unheard.Expected != UnheardWords.Trouble)
        {
            return heard.Answer is { Score: >= AnswerReading.Sure } || heard.Denied.Length > 0
                || heard.Complaints.Any(c => c.Score >= WordsHandler.ClearAsNews) || heard.Findings.Concat(heard.Facts).Any(f => f.Score >= WordsHandler.Overheard);
        }

        // A sign told without a trouble still has the coach ask what the trouble is; but where the club itself has taught that sign, nothing more is to be taught.
        return heard.Complaints.Any(c => c.Score >= WordsHandler.Clear) || (!ReferenceEquals(listener, before) && IsTaught(unheard.Words, heard));
    }

    private bool IsTaught(string words, Understood heard)
    {
        var signs = Signs(heard).ToHashSet();
        if (signs.Count == 0) return false;
        signs.ExceptWith(Signs(before.Understand(words)));
        return signs.Count > 0;
    }

    private static IEnumerable<(string, string)> Signs(Understood heard) =>
        heard.Findings.Concat(heard.Facts).Where(f => f.Score >= WordsHandler.Overheard).Select(f => (f.Subject, f.State));

    /// <summary>The answers of the question that was open, if it is one of the rules still.</summary>
    private ListeningContext? Context(string expected) =>
        rules.Checks.TryGetValue(expected, out var check) && rules.Findings.TryGetValue(check.Tells, out var finding)
            ? new ListeningContext([.. finding.States.Select(s => new AnswerOption(s.Id, s.Says, s.RidersSay.Add(s.Says)))])
        : rules.Facts.TryGetValue(expected, out var fact)
            ? new ListeningContext([.. fact.Values.Select(v => new AnswerOption(v.Id, v.Says, v.RidersSay))])
        : null;
}
