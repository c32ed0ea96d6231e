using System.Collections.Frozen;
using System.Globalization;
using System.Text.RegularExpressions;
using ShedBot.Coaching.Cards;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Learning.Reports;

/// <summary>
/// Words of a member made fit for others to read: who somebody is, and how or where they can be reached, is taken out. Names can only be told by how they are
/// written, so one in small letters, or at the beginning of a sentence, may stay.
/// </summary>
internal sealed partial class Discreet(KnowledgeBase knowledge)
{
    public const string Somebody = "[somebody]", Address = "[an address]", Place = "[a place]", Number = "[a number]";

    /// <summary>A phrase with fewer letters says nothing.</summary>
    private const int LeastLetters = 3;

    /// <summary>From this share of words with a capital on, capitals say nothing of names.</summary>
    private const double MostCapitals = 0.5;

    private readonly Lazy<FrozenSet<string>> known = new(() => Vocabulary(knowledge));

    /// <summary>On one line, with what was taken out named in its place.</summary>
    public string Shown(string words)
    {
        var text = Emoji().Replace(CleanText.Of(words).ReplaceLineEndings(" "), " ");
        text = Mentions().Replace(text, m => m.Value.StartsWith("<#", StringComparison.Ordinal) ? Place : Somebody);
        text = Addresses().Replace(text, Address);
        text = Places().Replace(text, Place);
        text = Phones().Replace(text, Number);
        text = Introduced().Replace(text, m => m.Groups["before"].Value + Somebody);
        return Blanks().Replace(Names(text), " ").Trim();
    }

    /// <summary>What is left of it to be taught: the clauses in which nothing was taken out; where there is none, what stands around it. Empty when nothing is left that says anything.</summary>
    public string Bare(string words)
    {
        var shown = Shown(words);
        if (!Taken().IsMatch(shown)) return Trimmed(shown);
        var whole = Trimmed(string.Concat(Clauses().Matches(shown).Select(c => c.Value).Where(c => !Taken().IsMatch(c))));
        return Tokens().Count(whole) > 1 ? whole : Trimmed(Taken().Replace(shown, " "));
    }

    private static string Trimmed(string text)
    {
        var bare = Blanks().Replace(text, " ").Trim(' ', ',', ';', ':', '-', '.', '!', '?');
        return bare.Count(char.IsLetter) >= LeastLetters ? bare : "";
    }

    /// <summary>Who is said to say something, and what is written with a capital in the middle of a sentence and is no word of the rules.</summary>
    private string Names(string text)
    {
        text = Speakers().Replace(text, Somebody);
        return Capitals().Count(text) >= MostCapitals * Tokens().Count(text)
            ? text
            : Capitals().Replace(text, m => BeginsSentence(text, m.Index) || IsKnown(m.Value) ? m.Value : Somebody);
    }

    private bool IsKnown(string word) =>
        PlainWords.Folded(word) is var plain && (known.Value.Contains(plain) || (plain.EndsWith('s') && known.Value.Contains(plain.TrimEnd('s').TrimEnd('\''))));

    private static bool BeginsSentence(string text, int at)
    {
        var before = text.AsSpan(0, at).TrimEnd();
        return before.IsEmpty || before[^1] is '.' or '!' or '?' or ':' or '"' or '(';
    }

    private static FrozenSet<string> Vocabulary(KnowledgeBase knowledge)
    {
        var time = CultureInfo.InvariantCulture.DateTimeFormat;
        return knowledge.Complaints.Values.SelectMany(c => c.RidersSay.Append(c.Called).Append(c.InShort))
            .Concat(knowledge.Findings.Values.SelectMany(f => f.States.SelectMany(s => s.RidersSay.Append(s.Says)).Append(f.Means)))
            .Concat(knowledge.Facts.Values.SelectMany(f => f.Values.SelectMany(v => v.RidersSay.Append(v.Says)).Append(f.Called)))
            .Concat(knowledge.HowTos.Values.SelectMany(h => h.RidersAsk.Append(h.Called)))
            .Concat(knowledge.Checks.Values.Select(c => c.Ask)).Concat(knowledge.Faults.Values.Select(f => f.Is)).Concat(knowledge.Repairs.Values.Select(r => r.Does))
            .Concat(knowledge.Emergencies.Values.SelectMany(e => e.RidersSay)).Concat(knowledge.Words.SelectMany(w => w.RidersSay.Append(w.Concept)))
            .Concat(time.DayNames).Concat(time.MonthNames).Append("im ive id ill its")
            .SelectMany(t => PlainWords.Folded(t).Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .ToFrozenSet(StringComparer.Ordinal);
    }

    [GeneratedRegex(@"<a?:\w{1,32}:[0-9]{1,20}>", RegexOptions.CultureInvariant)]
    private static partial Regex Emoji();

    [GeneratedRegex(@"<(?:@[!&]?|#)[0-9]{1,20}>|(?<![\w.])@[\w.]{2,32}", RegexOptions.CultureInvariant)]
    private static partial Regex Mentions();

    [GeneratedRegex(
        @"[\w.+-]{1,64}@[\w-]{1,63}(?:\.[\w-]{1,63}){1,4}|(?:https?://|www\.)\S+|\b[\w-]{1,63}\.(?:com|org|net|info|eu|uk|de|fr|nl|gg)\b\S*|\b[0-9]{1,3}(?:\.[0-9]{1,3}){3}\b",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Addresses();

    /// <summary>A house number with a street, either way round, and British postcodes, whose last two letters are never C, I, K, M, O or V (BS 7666, from memory), so that M6 5MM is a screw. Bare postcodes of digits look like any other number.</summary>
    [GeneratedRegex(
        """
        \b[0-9]{1,4}[a-z]?,?\s(?:(?!(?:the|an?|my|this|that|on|off|of|to|in|down|up|along|and|miles?|km|min|mins|minutes|hours?|days?|times?)\b)[\p{L}'.-]{2,20}\s){1,3}(?:street|st|road|rd|lane|ln|avenue|ave|drive|close|crescent|terrace|square)\b\.?
        |\b[\p{L}-]{2,30}(?:stra(?:ss|ß)e|str\.|weg|gasse|platz|allee)\s[0-9]{1,4}[a-z]?\b
        |\b(?:rue|via|calle|boulevard)\s(?:[\p{L}'-]{2,20}\s?){1,3},?\s?[0-9]{1,4}\b
        |(?-i:\b[A-Z]{1,2}[0-9][A-Z0-9]?\s?[0-9][ABD-HJLNP-UW-Z]{2}\b)
        """,
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase | RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex Places();

    /// <summary>Seven digits or more, as ITU-T E.164 allows at most fifteen, however they are parted.</summary>
    [GeneratedRegex(@"\+?\(?[0-9](?:[\s().\-/]{0,2}[0-9]){6,}", RegexOptions.CultureInvariant)]
    private static partial Regex Phones();

    [GeneratedRegex(@"(?<before>\b(?:my name is|my name's|i am called|call me|cheers,?|regards,?|greetings from)\s)\p{L}[\p{L}'-]{1,30}(?=\s*(?:$|[,.!?])|\s+and\b)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Introduced();

    [GeneratedRegex(@"(?<![\p{L}\[])\p{Lu}[\p{Ll}'’-]{1,30}(?!\p{L})", RegexOptions.CultureInvariant)]
    private static partial Regex Capitals();

    [GeneratedRegex(
        @"\b(?!(?:He|She|It|They|We|You|Everybody|Everyone|Somebody|Someone|Nobody|This|That|Who|Which|What|Manual|Book)\b)\p{Lu}[\p{Ll}'’-]{1,30}(?=\s(?:says|said|told|thinks|reckons)\b)",
        RegexOptions.CultureInvariant)]
    private static partial Regex Speakers();

    [GeneratedRegex(@"[\p{L}'’-]{2,}", RegexOptions.CultureInvariant)]
    private static partial Regex Tokens();

    [GeneratedRegex(@"\[(?:somebody|an address|a place|a number)\]", RegexOptions.CultureInvariant)]
    private static partial Regex Taken();

    [GeneratedRegex(@"[^,.;!?]+[,.;!?]*", RegexOptions.CultureInvariant)]
    private static partial Regex Clauses();

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Blanks();
}
