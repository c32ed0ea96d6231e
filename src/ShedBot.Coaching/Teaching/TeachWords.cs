using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Teaching.Reporting;

namespace ShedBot.Coaching.Teaching;

/// <summary>What a typed line asks for of a club's rules.</summary>
public abstract record TeachLine;

/// <param name="Request">As it stands.</param>
public sealed record AskLine(TeachRequest Request) : TeachLine;

/// <summary>Something to do with a proposal: the one named, or the one that was looked at last.</summary>
/// <param name="Proposal">Its short name, or null.</param>
/// <param name="Words">What was said with it, such as a reason; empty for nothing.</param>
public sealed record ProposalLine(TeachVerb Verb, string? Proposal, string Words) : TeachLine;

/// <param name="Out">True to write the club's rules to the file, false to hand it in.</param>
public sealed record FileLine(bool Out, string Path) : TeachLine;

/// <summary>The words that there are.</summary>
public sealed record HelpLine : TeachLine;

/// <summary>Reads a typed line as a request about the club's rules: a small, strict grammar that begins with "rules", "tip:" or "tips". All else is for the coach.</summary>
public static class TeachWords
{
    private static readonly ImmutableDictionary<string, string> SheetNames = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["cause"] = "cause",
        ["fault"] = "cause",
        ["check"] = "check",
        ["question"] = "check",
        ["way to look"] = "check",
        ["repair"] = "repair",
        ["fix"] = "repair",
        ["how to"] = "how-to",
        ["how-to"] = "how-to",
        ["answer"] = "how-to",
        ["wording"] = "wording",
        ["strength"] = "strength",
        ["how common"] = "strength",
        ["phrase"] = "phrase",
        ["phrases"] = "phrase",
        ["words"] = "phrase",
        ["cover"] = "cover",
        ["fact"] = "fact",
        ["fact of the bike"] = "fact",
        ["service"] = "service",
        ["service task"] = "service",
        ["task"] = "service",
    }.ToImmutableDictionary(StringComparer.Ordinal);

    private static readonly ImmutableDictionary<string, string> Mendable = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["check"] = "check",
        ["question"] = "check",
        ["repair"] = "repair",
        ["cause"] = "cause",
        ["fault"] = "cause",
        ["trouble"] = "complaint",
        ["complaint"] = "complaint",
        ["finding"] = "finding",
        ["how to"] = "how-to",
        ["how-to"] = "how-to",
        ["answer"] = "how-to",
        ["cover"] = "cover",
        ["fact"] = "fact",
        ["service"] = "service",
        ["task"] = "service",
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <returns>Null when the line is none of these.</returns>
    public static Result<TeachLine>? Read(string line)
    {
        var text = string.Join(' ', line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        var plain = text.TrimEnd('.', '!', '?').ToLowerInvariant();
        if (plain is "tips" or "the tips") return new AskLine(new ShowTips());
        // "Tip of the lever broke" is a trouble: only the colon makes a tip of it.
        if (Behind(text, "tip:", "tip :", "a tip:") is { } said) return new AskLine(new PassTip(said));
        if (Behind(plain, "tip ") is { } tip && IsName(tip, 'T')) return new AskLine(new ShowTip(tip.ToUpperInvariant()));
        if (plain is "rules" or "the rules" or "our rules" or "club rules") return new AskLine(new ShowRules());
        return Behind(text, "rules ") is { } rest ? Rules(rest, plain["rules ".Length..].Trim()) : (Result<TeachLine>?)null;
    }

    private static Result<TeachLine> Rules(string rest, string plain)
    {
        switch (plain)
        {
            case "new" or "write": return new AskLine(new ChooseSheet());
            case "help": return new HelpLine();
            case "waiting" or "what waits": return new AskLine(new ShowWaiting());
            case "tips": return new AskLine(new ShowTips());
            case "log": return new AskLine(new ShowLog());
            case "log all" or "whole log": return new AskLine(new ShowLog(Whole: true));
            case "editions" or "edition": return new AskLine(new ShowEditions());
            case "reports" or "report": return new AskLine(new ShowReports());
            case "words" or "not understood" or "words not understood": return new AskLine(new ShowUnheard());
            case "conflicts" or "changes": return new AskLine(new ShowConflicts());
            case "settings": return new AskLine(new ShowTeachingSettings());
            case "two people" or "two people on": return new AskLine(new ChooseTeaching(TwoPeople: true));
            case "two people off" or "one person": return new AskLine(new ChooseTeaching(TwoPeople: false));
            case "retire" or "out of use": return new AskLine(new BeginSheet("retire"));
            case "restore" or "bring back": return new AskLine(new BeginSheet("restore"));
            case "mend": return new AskLine(new BeginSheet("wording"));
            case "phrase" or "strength": return new AskLine(new BeginSheet(plain));
        }

        if (Moves.LearnWords.Read(plain) is { } learn) return learn;
        if (Behind(plain, "new ", "mend ") is { } sheet && SheetNames.TryGetValue(sheet, out var name) && !(plain.StartsWith("mend", StringComparison.Ordinal) && Mendable.ContainsKey(sheet)))
            return new AskLine(new BeginSheet(name));
        if (Behind(rest, "mend ") is { } mend) return Mend(mend);
        if (Behind(plain, "back ", "take back ", "back to ") is { } back)
            return int.TryParse(back.Replace("to ", "", StringComparison.Ordinal), NumberStyles.None, CultureInfo.InvariantCulture, out var edition) ? new AskLine(new AskTakeBack(edition)) : HowTo("back 3");
        if (Behind(plain, "report ") is { } report) return ReportWords.Read(report) is { } wanted ? new AskLine(wanted) : HowTo("reports");
        if (Behind(rest, "file out ") is { } to) return new FileLine(Out: true, to.Trim());
        if (Behind(rest, "file in ") is { } from) return new FileLine(Out: false, from.Trim());
        if (plain is "file" or "file out") return new AskLine(new DownloadRules());
        return AtHand(rest) is { } line ? line : HowTo("help");
    }

    private static ProposalLine? AtHand(string rest)
    {
        foreach (var (word, verb) in new[]
        {
            ("try", TeachVerb.Try), ("publish", TeachVerb.Publish), ("hand in", TeachVerb.HandIn), ("refuse", TeachVerb.Refuse), ("turn down", TeachVerb.Refuse), ("put away", TeachVerb.Withdraw),
            ("withdraw", TeachVerb.Withdraw), ("go on", TeachVerb.GoOn), ("show", TeachVerb.Look), ("look", TeachVerb.Look), ("all so far", TeachVerb.Sheet), ("decline", TeachVerb.Decline),
        })
        {
            var said = rest.TrimEnd('.', '!');
            if (string.Equals(said, word, StringComparison.OrdinalIgnoreCase)) return new ProposalLine(verb, null, "");
            if (Behind(rest, word + " ") is not { } more) continue;
            var first = more.Split(' ')[0].TrimEnd('.', ',', ':');
            var named = IsName(first, 'P') || IsName(first, 'T');
            return new ProposalLine(verb, named ? first.ToUpperInvariant() : null, (named ? more[first.Length..].TrimStart('.', ',', ':', ' ') : more).Trim());
        }

        return null;
    }

    /// <summary>"mend check cover screws" has said the first answers already.</summary>
    private static Result<TeachLine> Mend(string mend)
    {
        foreach (var (word, of) in Mendable)
        {
            if (!mend.StartsWith(word, StringComparison.OrdinalIgnoreCase) || (mend.Length > word.Length && mend[word.Length] != ' ')) continue;
            var given = ImmutableSortedDictionary<string, ImmutableArray<string>>.Empty.WithComparers(StringComparer.Ordinal).Add("of", [of]);
            return new AskLine(new BeginSheet("wording", Given: mend.Length > word.Length ? given.Add("rule", [mend[(word.Length + 1)..]]) : given));
        }

        return HowTo("mend check cover screws");
    }

    private static Refusal HowTo(string example) => new("words", $"I do not know that. Try: rules {example}. All the words: rules help.");

    /// <summary>P12, t3.</summary>
    private static bool IsName(string text, char letter) => text.Length is > 1 and < 12 && char.ToUpperInvariant(text[0]) == letter && text.Skip(1).All(char.IsAsciiDigit);

    private static string? Behind(string text, params ReadOnlySpan<string> beginnings)
    {
        foreach (var beginning in beginnings)
        {
            if (text.StartsWith(beginning, StringComparison.OrdinalIgnoreCase) && text.Length > beginning.Length) return text[beginning.Length..].Trim();
        }

        return null;
    }
}
