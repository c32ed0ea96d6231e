using System.Collections.Immutable;

namespace ShedBot.Knowledge.Rules;

/// <summary>A service task: what keeps a sound bike sound, how to do it and when it is due.</summary>
/// <param name="Id">Its own name for good; no repair has the same.</param>
/// <param name="Called">Short, completes 'due: ...': "grease for bar, ball and cam". Its own in all the rules.</param>
/// <param name="Does">Completes 'time to ...': "put a smear of fresh grease on bar, ball and cam".</param>
/// <param name="Why">What it prevents, in a sentence or two for the rider.</param>
/// <param name="Minutes">In a beginner's hands; 0 or more.</param>
/// <param name="Hazard">none, low, medium or high.</param>
/// <param name="Cautions">Shown before the work starts, most serious first.</param>
/// <param name="Steps">What to do, in order; at least one.</param>
/// <param name="Every">Due again at whichever of these comes first after it was last done; empty for what is done only after an event.</param>
/// <param name="After">Due once at each of these distances after an event.</param>
/// <param name="OnlyIf">All must hold; a fact that is not known holds nothing back.</param>
/// <param name="Sooner">Weather in which riding counts for more than it is.</param>
/// <param name="DoneBy">Repairs that count as this task done.</param>
/// <param name="Reveals">Complaints that doing it may show: "the slack has grown again".</param>
/// <param name="BeforeEachRide">True for the look before every ride: it stands in the plan, and nobody is reminded of it.</param>
public sealed record ServiceRule(
    string Id,
    string Called,
    string Does,
    string Why,
    double Minutes,
    string Hazard,
    ImmutableArray<string> Tools,
    ImmutableArray<CautionRule> Cautions,
    ImmutableArray<RepairStep> Steps,
    ImmutableArray<Interval> Every,
    ImmutableArray<ServiceAfter> After,
    ImmutableArray<ServiceCondition> OnlyIf,
    ImmutableArray<WeatherFactor> Sooner,
    ImmutableArray<string> DoneBy,
    ImmutableArray<string> Reveals,
    bool BeforeEachRide,
    Origin Origin);

/// <summary>Once at each of these distances after the newest of these events.</summary>
/// <param name="Events"><see cref="Fitted"/>, the id of a repair, or the id of another service task; at least one.</param>
/// <param name="At">Shortest first as far as they share a measure; 0 means before the next ride.</param>
public sealed record ServiceAfter(ImmutableArray<string> Events, ImmutableArray<Interval> At)
{
    /// <summary>The event that is no repair and no task: the day on which the kit was fitted.</summary>
    public const string Fitted = "fitted";
}

/// <summary>The task is for bikes of which the fact is one of these, or not known.</summary>
public sealed record ServiceCondition(string Fact, ImmutableArray<string> Values);

/// <param name="Weather">wet or dusty.</param>
/// <param name="Factor">Riding in it counts so many times; 1 to 5.</param>
public sealed record WeatherFactor(string Weather, double Factor);
