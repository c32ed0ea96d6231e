using System.Text;
using Lucene.Net.Analysis.Miscellaneous;
using ShedBot.Knowledge.Shapes;

namespace ShedBot.Knowledge.Layers;

/// <summary>Makes the name of a new rule from what a moderator calls it.</summary>
public static class NewId
{
    /// <summary>Words that say nothing in a name.</summary>
    private static readonly HashSet<string> Idle = new(StringComparer.Ordinal)
    {
        "a", "an", "and", "are", "as", "at", "be", "been", "by", "for", "from", "has", "have", "in", "into", "is", "it", "its", "of", "on", "or", "so", "than",
        "that", "the", "their", "then", "there", "they", "this", "to", "too", "was", "were", "with", "your", "you",
    };

    /// <summary>More words make a name that nobody can keep in mind.</summary>
    private const int MostWords = 6;

    /// <summary>'The little ball is missing' gives little-ball-missing; where that is taken, little-ball-missing-2.</summary>
    /// <param name="text">Anything. Letters with accents lose them; what has no Latin letters or digits is left out.</param>
    /// <param name="isTaken">Whether a name is in use already.</param>
    /// <returns>Lower-case words and digits with hyphens between, 1 to 60 characters; the same for the same text and names. 'rule' when the text has nothing to go on.</returns>
    public static string From(string text, Func<string, bool> isTaken)
    {
        var words = Words(text);
        var telling = words.Where(w => !Idle.Contains(w)).ToList();
        var name = Cut(string.Join('-', (telling.Count > 0 ? telling : words).Take(MostWords)), IdShape.MaxLength);
        if (name.Length == 0) name = "rule";
        if (!IsReserved(name) && !isTaken(name)) return name;
        for (var number = 2; ; number++)
        {
            var end = FormattableString.Invariant($"-{number}");
            var numbered = Cut(name, IdShape.MaxLength - end.Length) + end;
            if (!isTaken(numbered)) return numbered;
        }
    }

    /// <inheritdoc cref="From(string, Func{string, bool})"/>
    public static string From(string text, IReadOnlyCollection<string> taken) => From(text, taken.Contains);

    /// <summary>A name for a rule of this kind that neither the base nor the club uses: findings and complaints share their names, and so do repairs and service tasks.</summary>
    public static string For(RuleKind kind, string text, RuleBase under, Layer layer)
    {
        RuleKind[] kinds = kind switch
        {
            RuleKind.Finding or RuleKind.Complaint => [RuleKind.Finding, RuleKind.Complaint],
            RuleKind.Repair or RuleKind.Service => [RuleKind.Repair, RuleKind.Service],
            _ => [kind],
        };
        return From(text, name => kinds.Any(k => under.Has(new RuleKey(k, name)) || layer.Items.Any(i => i.Key == new RuleKey(k, name))));
    }

    private static bool IsReserved(string name) => name is KnowledgeBase.SomethingElse or Rules.ServiceAfter.Fitted;

    /// <summary>At the end of a word where there is one.</summary>
    private static string Cut(string name, int length)
    {
        if (name.Length <= length) return name;
        var cut = name[..length];
        var end = name[length] == '-' ? length : cut.LastIndexOf('-');
        return end > 0 ? cut[..end] : cut;
    }

    private static List<string> Words(string text)
    {
        var start = text.Length <= 1000 ? text : text[..1000];
        var plain = new char[start.Length * 4];
        var length = ASCIIFoldingFilter.FoldToASCII(start.ToCharArray(), 0, plain, 0, start.Length);
        var words = new List<string>();
        var word = new StringBuilder();
        foreach (var c in plain.AsSpan(0, length))
        {
            if (char.IsAsciiLetterOrDigit(c)) word.Append(char.ToLowerInvariant(c));
            else if (c is not '\'') End();
        }

        End();
        return words;

        void End()
        {
            if (word.Length > 0) words.Add(word.ToString());
            word.Clear();
        }
    }
}
