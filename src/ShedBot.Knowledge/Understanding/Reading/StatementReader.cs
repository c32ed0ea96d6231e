using System.Collections.Frozen;
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
                Break(drafts, word);
            else
                drafts[^1].Take(word);
        }
        SettleThePast(drafts);
        SettleLists(drafts);
        SettleConditions(drafts);
        return [.. drafts.Where(d => d.Features.Count > 0).Select(d => new Statement([.. d.Features], d.Mood, d.AfterHardBreak))];
    }

    private static void Break(List<Draft> drafts, Word at)
    {
        var hard = at.Role == Role.HardBreak;
        var last = drafts[^1];
        // Nothing of its own was said: "used to slip, fixed that, now grabs". Its mood belongs to what came before.
        if (last.Features.Count == 0)
        {
            if (last.IsPast && drafts.Count > 1)
                drafts[^2].IsPast = true;
            // "Smoke? No."
            if (last.IsBareNo && hard && drafts.Count > 1)
                drafts[^2].DenyAll();
            last.AfterHardBreak |= hard;
            last.OpenedBy = at.Text;
            last.Clear(keepMood: !last.IsPast && !hard);
            return;
        }
        drafts.Add(new Draft { OpenedBy = at.Text, AfterHardBreak = hard, IsSupposed = !hard && last.IsSupposed });
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

    /// <summary>"Does not drag, slip or grab": the not reaches over the list to the 'or' and what it joins.</summary>
    private static void SettleLists(List<Draft> drafts)
    {
        for (var or = 1; or < drafts.Count; or++)
        {
            if (drafts[or].OpenedBy is not ("or" or "nor"))
                continue;
            var first = or - 1;
            while (first > 0 && drafts[first].OpenedBy == "," && drafts[first].Features.Count == 1 && !drafts[first].Features[^1].Denied)
                first--;
            if (drafts[first].Features.Count == 0 || !drafts[first].Features[^1].Denied)
                continue;
            for (var i = first + 1; i <= or; i++)
                drafts[i].DenyAll();
        }
    }

    /// <summary>
    /// "Lever in no crunch", "lever out: silence", "it goes when I pull the lever": when the noise is gone under a condition, the
    /// condition is denied, and so it speaks for the other one.
    /// </summary>
    private static void SettleConditions(List<Draft> drafts)
    {
        for (var i = 0; i < drafts.Count; i++)
        {
            var features = drafts[i].Features;
            if (features.Exists(f => f.Denied))
                drafts[i].DenyConditions(0, features.Count);
            var quiet = features.FindIndex(f => English.Quieting.Contains(f.Concept) || f.Concept == "stop" && features.Exists(n => Noises.Contains(n.Concept)));
            if (quiet < 0)
                continue;
            if (drafts[i].HasCondition(quiet, features.Count))
                drafts[i].DenyConditions(quiet, features.Count);
            else if (i + 1 < drafts.Count && drafts[i + 1].OpenedBy is "when" or "once" or "if" or "as soon as" or "with")
                drafts[i + 1].DenyConditions(0, drafts[i + 1].Features.Count);
            else if (drafts[i].HasCondition(0, quiet))
                drafts[i].DenyConditions(0, quiet);
            else if (i > 0)
                drafts[i - 1].DenyConditions(0, drafts[i - 1].Features.Count);
        }
    }

    private static readonly FrozenSet<string> Conditions = FrozenSet.Create("lever in", "lever out", "driving");

    private static readonly FrozenSet<string> Noises = FrozenSet.Create("grind", "squeak", "knock", "whine", "noise", "clatter");

    private sealed class Draft
    {
        public string OpenedBy { get; set; } = "";

        public List<Feature> Features { get; } = [];

        public bool AfterHardBreak { get; set; }

        public bool IsPast { get; set; }

        public bool IsPresent { get; private set; }

        public bool IsSupposed { get; set; }

        public bool HasPastVerb { get; private set; }

        public bool IsBareNo => denying && Features.Count == 0;

        private bool denying;
        private int sinceNot;

        public Mood Mood => IsSupposed ? Mood.Supposed : IsPast ? Mood.Past : Mood.Present;

        public void Take(Word word)
        {
            switch (word.Role)
            {
                case Role.Negator:
                    denying = word.Text != Negations.Turning || !denying;
                    sinceNot = word.Text == Negations.Short ? ReachOfNot - 1 : 0;
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

        public void DenyAll()
        {
            for (var i = 0; i < Features.Count; i++)
                Features[i] = Features[i] with { Denied = true };
        }

        public void DenyConditions(int from, int to)
        {
            for (var i = from; i < to; i++)
            {
                if (Conditions.Contains(Features[i].Concept))
                    Features[i] = Features[i] with { Denied = true };
            }
        }

        public bool HasCondition(int from, int to) => Features.Take(to).Skip(from).Any(f => Conditions.Contains(f.Concept));

        public void Clear(bool keepMood)
        {
            denying = false;
            if (!keepMood)
                IsPast = IsSupposed = IsPresent = HasPastVerb = false;
        }
    }
}
