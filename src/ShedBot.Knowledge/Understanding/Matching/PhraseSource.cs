using ShedBot.Knowledge.Understanding.Reading;

namespace ShedBot.Knowledge.Understanding.Matching;

/// <summary>All phrases of the rules, each with what it means.</summary>
internal static class PhraseSource
{
    /// <summary>Joins the id of a finding or fact with that of its state.</summary>
    public const char Joint = '/';

    public static IEnumerable<(string Meaning, string Text)> Complaints(KnowledgeBase knowledge) =>
        knowledge.Complaints.Values.SelectMany(c => c.RidersSay.Prepend(c.Called).Select(t => (c.Id, t)));

    /// <summary>Only what riders volunteer: the words of an option ("it barely moves") lack what they are about.</summary>
    public static IEnumerable<(string Meaning, string Text)> Findings(KnowledgeBase knowledge) =>
        knowledge.Findings.Values.SelectMany(f => f.States.SelectMany(s => s.RidersSay.Select(t => (f.Id + Joint + s.Id, t))));

    public static IEnumerable<(string Meaning, string Text)> Facts(KnowledgeBase knowledge) =>
        knowledge.Facts.Values.SelectMany(f => f.Values.SelectMany(v => v.RidersSay.Select(t => (f.Id + Joint + v.Id, t))));

    public static IEnumerable<(string Meaning, string Text)> HowTos(KnowledgeBase knowledge) =>
        knowledge.HowTos.Values.SelectMany(h => h.RidersAsk.Prepend(h.Called).Select(t => (h.Id, t)));

    public static IEnumerable<(string Meaning, string Text)> Emergencies(KnowledgeBase knowledge) =>
        knowledge.Emergencies.Values.SelectMany(e => e.RidersSay.Prepend(e.Called).Select(t => (e.Id, t)));

    /// <summary>Whether riders are heard alike: the same words and phrases, with the same meanings, in the same order.</summary>
    public static bool SameIn(KnowledgeBase one, KnowledgeBase other) => ReferenceEquals(one, other)
        || ((ReferenceEquals(one.Complaints, other.Complaints) || Complaints(one).SequenceEqual(Complaints(other)))
            && (ReferenceEquals(one.Findings, other.Findings) || Findings(one).SequenceEqual(Findings(other)))
            && (ReferenceEquals(one.Facts, other.Facts) || Facts(one).SequenceEqual(Facts(other)))
            && (ReferenceEquals(one.HowTos, other.HowTos) || HowTos(one).SequenceEqual(HowTos(other)))
            && (ReferenceEquals(one.Emergencies, other.Emergencies) || (Emergencies(one).SequenceEqual(Emergencies(other)) && one.Emergencies.Keys.SequenceEqual(other.Emergencies.Keys)))
            && (one.Eithers == other.Eithers || one.Eithers.SequenceEqual(other.Eithers))
            && (one.Words == other.Words || one.Words.Length == other.Words.Length
                && one.Words.Zip(other.Words).All(w => w.First.Concept == w.Second.Concept && w.First.RidersSay.SequenceEqual(w.Second.RidersSay))));

    /// <summary>The words that spelling is repaired to, the commonest first.</summary>
    public static string[] Vocabulary(KnowledgeBase knowledge) =>
        [.. Complaints(knowledge).Concat(Findings(knowledge)).Concat(Facts(knowledge)).Concat(HowTos(knowledge)).Concat(Emergencies(knowledge))
            .Select(p => p.Text)
            .Concat(knowledge.Words.SelectMany(w => w.RidersSay.Prepend(w.Concept)))
            .SelectMany(t => Splitter.Split(PlainText.Of(t).Letters))
            .Where(w => w.Length > 1)
            .GroupBy(w => w)
            .OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => g.Key)];
}
