namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>Groups the questions of a long sheet, so that whoever fills it in knows how far they are.</summary>
internal static class QuestionParts
{
    /// <param name="part">What the part is called, inside of a sentence.</param>
    public static IEnumerable<Question> In(this IEnumerable<Question> questions, string part) => questions.Select(q => q with { Part = part });
}
