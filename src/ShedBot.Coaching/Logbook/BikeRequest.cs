using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Logbook;

/// <summary>What a member wants of the logbook of their bike.</summary>
public abstract record BikeRequest;

/// <summary>What is coming due.</summary>
/// <param name="Whole">False: the soonest ones.</param>
public sealed record ShowPlan(bool Whole) : BikeRequest;

/// <summary>How a service task is done.</summary>
/// <param name="Task">The id of the service rule.</param>
public sealed record ShowHow(string Task) : BikeRequest;

/// <summary>What was done, what is due and what is coming, along the days.</summary>
/// <param name="Look">Of the picture, where it can be painted.</param>
public sealed record ShowTimeline(PictureLook Look) : BikeRequest;

/// <summary>What is known of the bike, and what was done on it.</summary>
public sealed record ShowBike : BikeRequest;

/// <summary>All that is kept of the member's bikes, as files to take away.</summary>
public sealed record TakeCopy : BikeRequest;

/// <summary>A request that changes the logbook.</summary>
public abstract record BikeEntry : BikeRequest;

/// <summary>Facts of the sheet.</summary>
/// <param name="Facts">One or more, their values in the form they are kept in.</param>
public sealed record TellEntry(ImmutableArray<FactTold> Facts) : BikeEntry;

public sealed record RideEntry(RiddenDay Ride) : BikeEntry;

/// <summary>Not riding from the day of the entry on.</summary>
/// <param name="Until">The first day of riding again, or null while nobody knows.</param>
public sealed record RestEntry(LocalDate? Until) : BikeEntry;

public sealed record RidingAgainEntry : BikeEntry;

/// <param name="Kilometres">A riding day; null when it was not said.</param>
/// <param name="Hours">A riding day; null when it was not said.</param>
public sealed record PaceEntry(double DaysPerWeek, double? Kilometres, double? Hours) : BikeEntry;

/// <param name="Task">The id of the service rule.</param>
public sealed record DoneEntry(string Task, LocalDate Day) : BikeEntry;

/// <summary>The day on which the kit was fitted.</summary>
public sealed record FittedEntry(LocalDate Day) : BikeEntry;

/// <summary>Takes the last entry back: a ride, a rest, a pace or a service, whichever was made last.</summary>
public sealed record UndoEntry : BikeEntry;
