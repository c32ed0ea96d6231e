using NodaTime;

namespace ShedBot.Coaching.Tests.Nudging.Simulated;

/// <summary>A due date as the member was told of it first.</summary>
/// <param name="Early">So many days before it was expected; 0 when it was due.</param>
internal sealed record Telling(LocalDate Day, int Early, bool Pressing);
