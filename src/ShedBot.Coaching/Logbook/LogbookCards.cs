using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Service;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Logbook;

/// <summary>What is said to an entry.</summary>
internal static class LogbookCards
{
    /// <summary>So many due tasks are named below an entry.</summary>
    private const int MostDue = 3;

    public static Card Copy { get; } = new(
        "A copy of all that I keep of your bike",
        [new TextBlock("facts.csv, rides.csv and work.csv open in any spreadsheet; bike.json holds everything, for a program.")],
        []);

    public static Card Entered(Entered entered, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset at) => new(
        entered.Title,
        [.. entered.Follows.IsDefault ? Due(entered.Bike, knowledge, speaker, at) : Say.List("From that follows", entered.Follows), .. entered.CanBeUndone ? [Say.Text($"Not so? {speaker.Ways.Undo}")] : Array.Empty<CardBlock>()],
        []);

    public static Card Already(BikeProfile bike, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset at) =>
        new("That is noted already", [.. Due(bike, knowledge, speaker, at)], []);

    public static Card Refused(Refusal refusal) => new("Not noted", [Say.Text(refusal.Say)], []);

    private static IEnumerable<CardBlock> Due(BikeProfile bike, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset at)
    {
        var plan = ServicePlan.Of(bike, knowledge, speaker.DayOf(at), speaker.Zone);
        ImmutableArray<PlanItem> due = [.. plan.Where(i => i.State is DueState.Due or DueState.Overdue)];
        if (!due.IsEmpty)
        {
            yield return new ListBlock("Due now", [.. due.Take(MostDue).Select(i => i.Rule.Called), .. due.Length > MostDue ? [$"and {due.Length - MostDue} more: {speaker.Ways.Plan}"] : Array.Empty<string>()]);
        }
        else if (plan.FirstOrDefault(i => i is { Expected: not null, State: DueState.Soon or DueState.Done }) is { } next)
        {
            yield return Say.Text($"Next: {PlanCards.Line(next, speaker.DayOf(at))}");
        }
    }
}
