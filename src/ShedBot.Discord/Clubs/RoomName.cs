using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Discord.Wire;
using ShedBot.Knowledge;

namespace ShedBot.Discord.Clubs;

/// <summary>What a case's thread is called: complaint and bike.</summary>
internal static class RoomName
{
    /// <summary>Until the trouble is known. The platform lets a thread be renamed a few times an hour only, so it is renamed at most once.</summary>
    public const string Unknown = "Clutch trouble";

    private const int LongestBike = 40;

    /// <param name="owner">What the club calls the member, or null when that is not at hand: names are not kept.</param>
    public static string Of(Case @case, BikeProfile? bike, string? owner, KnowledgeBase knowledge)
    {
        // What could be either of two troubles is a guess as yet, and a thread is renamed once only.
        var guessed = @case.Standing.LastOrDefault(e => e.Kind == EntryKind.Either) is { Value: null };
        ImmutableArray<string> complaints = guessed ? [] :
        [
            .. @case.Standing.Where(e => e.Kind == EntryKind.Complaint)
                .Select(e => knowledge.Complaints.TryGetValue(e.Subject, out var rule) ? rule.Called : null)
                .OfType<string>(),
        ];
        var trouble = complaints.IsEmpty ? Unknown : Capital(complaints[0]) + (complaints.Length > 1 ? " and more" : "");
        var name = BikeOf(bike, owner) is { } its ? $"{trouble}: {its}" : trouble;
        return name.Length <= Limits.ThreadName ? name : name[..Limits.ThreadName];
    }

    private static string? BikeOf(BikeProfile? bike, string? owner)
    {
        if (bike?.Name.Trim() is { Length: > 0 } named) return Short(named);
        return owner?.Trim() is { Length: > 0 } whose ? Short(whose) + "'s bike" : null;
    }

    private static string Short(string name)
    {
        if (name.Length <= LongestBike) return name;
        return name[..(char.IsHighSurrogate(name[LongestBike - 1]) ? LongestBike - 1 : LongestBike)];
    }

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
