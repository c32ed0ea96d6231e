using System.Globalization;
using ShedBot.Coaching.Teaching.Moves;

namespace ShedBot.Practice;

/// <summary>What ShedBot did by itself about what mended cases say, in a line for the terminal.</summary>
internal static class LearningNews
{
    /// <summary>Before a trial that nobody has asked for just now.</summary>
    public const string Trying = "The closed cases have something new to teach. It is tried before it goes live by itself, as you chose; that can take a minute or two ...";

    /// <returns>Null when there is nothing to tell.</returns>
    public static string? Of(RoundNews news) => news.Outcome switch
    {
        RoundOutcome.Proposed => $"{news.Title}. It is a proposal and waits for you: rules waiting.",
        RoundOutcome.Published => string.Create(CultureInfo.InvariantCulture, $"{news.Title}. Edition {news.Edition} is out by itself, as you chose. What was done: rules log. To take it back: rules back {news.Edition - 1}."),
        RoundOutcome.CountedAnew => news.Edition is { } edition ? string.Create(CultureInfo.InvariantCulture, $"{news.Title} It is edition {edition} now.") : null,
        _ => null,
    };
}
