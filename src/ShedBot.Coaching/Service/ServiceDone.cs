using NodaTime;
using ShedBot.Coaching.Cases;

namespace ShedBot.Coaching.Service;

/// <summary>A service task that was done.</summary>
/// <param name="Task">The id of the service rule.</param>
/// <param name="Day">The day it was done, in the rider's zone.</param>
/// <param name="LoggedAt">When it was told.</param>
/// <param name="How">told, case (the coach saw it done) or helper.</param>
/// <param name="Case">The case it was done in, or null.</param>
public sealed record ServiceDone(string Task, LocalDate Day, DateTimeOffset LoggedAt, string How, CaseId? Case);
