using System.Collections.Immutable;

namespace ShedBot.Knowledge.Understanding.Reading;

/// <summary>Cuts words into statements and settles for each what is denied, past or only supposed.</summary>
internal static class StatementReader
{
    /// <summary>A 'not' reaches this many words that count: "does not really pull the plate away cleanly at all".</summary>
    private const int ReachOfNot = 4;

    public static ImmutableArray<Statement> Read(List<Word> words)
    {
        var drafts = new List<Draft> { new() };
        foreach (var word in words)
        {
            if (word.Role is Role.HardBreak or Role.SoftBreak)
                Break(drafts, word.Role == Role.HardBreak);
            else
                drafts[^1].Take(word);
        }
        SettleThePast(drafts);
        return [.. drafts.Where(d => d.Features.Count > 0).Select(d => new Statement([.. d.Features], d.Mood, d.AfterHardBreak))];
    }

    private static void Break(List<Draft> drafts, bool hard)
    {
        var last = drafts[^1];
        // Nothing of its own was said: "used to slip, fixed that, now grabs". Its mood belongs to what came before.
        if (last.Features.Count == 0)
        {
            if (last.IsPast && drafts.Count > 1)
                drafts[^2].IsPast = true;
            last.AfterHardBreak |= hard;
            last.Clear(keepMood: !last.IsPast && !hard);
            return;
        }
        drafts.Add(new Draft { AfterHardBreak = hard, IsSupposed = !hard && last.IsSupposed });
    }

    /// <summary>"It was slipping, now it drags": what was, with a now after it, is over.</summary>
    private static void SettleThePast(List<Draft> drafts)
    {
        var nowFollows = false;
        for (var i = drafts.Count - 1; i >= 0; i--)
        {
            if (nowFollows && drafts[i].HasPastVerb && !drafts[i].IsPresent)
                drafts[i].IsPast = true;
            nowFollows |= drafts[i].IsPresent;
        }
        if (drafts[^1].Features.Count == 0 && drafts[^1].IsPast && drafts.Count > 1)
            drafts[^2].IsPast = true;
    }

    private sealed class Draft
    {
        public List<Feature> Features { get; } = [];

        public bool AfterHardBreak { get; set; }

        public bool IsPast { get; set; }

        public bool IsPresent { get; private set; }

        public bool IsSupposed { get; set; }

        public bool HasPastVerb { get; private set; }

        private bool denying;
        private int sinceNot;

        public Mood Mood => IsSupposed ? Mood.Supposed : IsPast ? Mood.Past : Mood.Present;

        public void Take(Word word)
        {
            switch (word.Role)
            {
                case Role.Negator:
                    denying = word.Text != Negations.Turning || !denying;
                    sinceNot = 0;
                    break;
                case Role.Subject when denying && sinceNot > 0:
                    denying = false;
                    break;
                case Role.Content:
                    Features.Add(new Feature(word.Text, denying));
                    if (++sinceNot >= ReachOfNot)
                        denying = false;
                    break;
                case Role.Past:
                    IsPast = true;
                    break;
                case Role.Present:
                    IsPresent = true;
                    break;
                case Role.Supposed:
                    IsSupposed = true;
                    break;
                case Role.Filler:
                    HasPastVerb |= word.Text is "was" or "were" or "had";
                    break;
            }
        }

        public void Clear(bool keepMood)
        {
            denying = false;
            if (!keepMood)
                IsPast = IsSupposed = IsPresent = HasPastVerb = false;
        }
    }
}
