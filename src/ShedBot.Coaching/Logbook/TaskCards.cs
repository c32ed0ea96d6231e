using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Service;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Logbook;

/// <summary>How a service task is done.</summary>
internal static class TaskCards
{
    public static Card Of(ServiceRule rule, BikeProfile bike, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset at)
    {
        var blocks = ImmutableArray.CreateBuilder<CardBlock>();
        blocks.Add(Say.Text(rule.Why));
        if (ServicePlan.Of(bike, knowledge, speaker.DayOf(at), speaker.Zone).FirstOrDefault(i => i.Rule.Id == rule.Id) is { } item)
            blocks.Add(Say.Text(rule.BeforeEachRide ? item.Because : $"{PlanCards.Line(item, speaker.DayOf(at))}. {item.Because}"));
        blocks.AddRange(Doing(rule));
        if (!rule.Reveals.IsEmpty) blocks.Add(Say.Text($"If it shows you something wrong, tell me: {speaker.Ways.Trouble}."));
        if (!rule.BeforeEachRide) blocks.Add(Say.Text($"When it is done: {PlanCards.Way(speaker.Ways.Done, rule.Id)}."));
        return new Card(Say.Capital(rule.Does), blocks.ToImmutable(), []);
    }

    /// <summary>Time, tools, cautions and then the steps.</summary>
    public static IEnumerable<CardBlock> Doing(ServiceRule rule) =>
    [
        Say.Text($"About {Math.Round(rule.Minutes)} min" + (rule.Tools.IsEmpty ? ", no tools." : $"; {Say.Join(rule.Tools)}.")),
        .. Say.Cautions(rule.Cautions),
        new StepsBlock("In this order", 1, [.. rule.Steps.Select(s => new CardStep(s.Do, s.Note))]),
    ];
}
