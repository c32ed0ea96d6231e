using System.Globalization;

namespace ShedBot.Coaching.Teaching.Moves;

/// <summary>Typed words about learning, behind "rules".</summary>
internal static class LearnWords
{
    private const string Most = "learning at most ", Share = "learning share ";

    /// <param name="plain">What stands behind "rules", in small letters.</param>
    /// <returns>Null when it is about something else.</returns>
    public static Result<TeachLine>? Read(string plain)
    {
        switch (plain)
        {
            case "learn" or "what could be learnt": return new AskLine(new ShowLearning());
            case "learn propose" or "propose learnt": return new AskLine(new ProposeLearnt());
            case "learning": return new AskLine(new ShowTeachingSettings());
            case "learning off": return new AskLine(new ChooseTeaching(Learning: LearningMode.Off));
            case "learning proposals": return new AskLine(new ChooseTeaching(Learning: LearningMode.Proposals));
            case "learning automatic": return new AskLine(new ChooseTeaching(Learning: LearningMode.Automatic));
        }

        if (plain.StartsWith(Most, StringComparison.Ordinal))
            return Number(plain[Most.Length..].Replace("times", "", StringComparison.Ordinal)) is { } most ? new AskLine(new ChooseTeaching(MostFactor: most)) : HowTo("rules learning at most 3");
        if (plain.StartsWith(Share, StringComparison.Ordinal))
            return Number(plain[Share.Length..].Replace("%", "", StringComparison.Ordinal)) is { } share ? new AskLine(new ChooseTeaching(MemberShare: share / 100)) : HowTo("rules learning share 5 %");
        return plain.StartsWith("learn", StringComparison.Ordinal) ? HowTo("rules learn, rules learning automatic, rules learning at most 3, rules learning share 5 %") : (Result<TeachLine>?)null;
    }

    private static double? Number(string text) => double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static Refusal HowTo(string example) => new("words", $"I do not know that. Try: {example}.");
}
