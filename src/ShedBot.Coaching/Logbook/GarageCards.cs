using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Speaking;

namespace ShedBot.Coaching.Logbook;

/// <summary>A member's bikes as they may see them.</summary>
public static class GarageCards
{
    private const string Prefix = "garage", KeepIt = "keep", RemoveIt = "remove";
    private const char Between = '|';

    public static Card Of(ImmutableArray<BikeProfile> bikes, BikeProfile inUse, Speaker speaker) => new(
        bikes.Length > 1 ? "Your bikes" : "Your bike",
        [
            .. bikes.IsEmpty ? [Say.Text("Nothing is noted of a bike yet. The first one needs no name.")] : Say.List("", bikes.Select(b => Line(b, b.Id == inUse.Id && bikes.Length > 1))),
            .. bikes.Length > 1 ? [Say.Text($"To talk of another one: {speaker.Ways.UseBike}.")] : Array.Empty<CardBlock>(),
            .. bikes.Length < Garage.MostBikes ? [Say.Text($"{(bikes.IsEmpty ? "To give it one" : "One more")}: {speaker.Ways.NewBike}.")] : Array.Empty<CardBlock>(),
        ],
        []);

    public static Card Ask(BikeProfile bike) => new(
        $"Remove {Garage.NameOf(bike)} for good?",
        [Say.Text("Its facts, rides and services go, and cannot be brought back. Take a copy first if you may want them."), Say.Text(Remains)],
        [Option(RemoveIt, bike, $"Yes, remove {Garage.NameOf(bike)}"), Option(KeepIt, bike, "No, keep it")]);

    public static Card Changed(GarageChange change) => new(change.Title, change.Removed is null ? [] : [Say.Text(Remains)], []);

    public static Card Kept { get; } = new("Nothing was removed", [], []);

    /// <returns>What an option of <see cref="Ask"/> asks for; null when it is none of these or keeps the bike.</returns>
    public static RemoveBike? Sure(string option) => option.Split(Between) is [Prefix, RemoveIt, var bike] ? new RemoveBike(bike, Sure: true) : null;

    public static bool IsOurs(string option) => option.StartsWith(Prefix + Between, StringComparison.Ordinal);

    private const string Remains =
        "What remains: cases talked through, because they tell what was wrong and what helped; they stay with you until you have everything of you removed. Backups keep it until they are replaced.";

    private static string Line(BikeProfile bike, bool inUse)
    {
        var last = bike.Riding.LastDay is { } day ? $", last ridden on {Dates.Say(day)}" : "";
        return $"{Garage.NameOf(bike)}{last}{(inUse ? " (the one we talk of)" : "")}";
    }

    private static CardOption Option(string what, BikeProfile bike, string label) => new(string.Join(Between, Prefix, what, NudgeAnswer.ShortOf(bike)), label);
}
