using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Nudging;

namespace ShedBot.Coaching.Bikes;

/// <summary>What changes when a member takes on, chooses, names or gives up a bike.</summary>
/// <param name="Rider">The member after, not yet stamped with a version.</param>
/// <param name="Saved">The bike that changed, not yet stamped, or null.</param>
/// <param name="Removed">The bike to be removed, or null.</param>
/// <param name="Title">One line: "Noted: ...".</param>
public sealed record GarageChange(Rider Rider, BikeProfile? Saved, BikeProfile? Removed, string Title);

/// <summary>A member's bikes. With one bike nobody needs to name it, and nobody is asked.</summary>
public static class Garage
{
    public const int MostBikes = 12, MostName = 40;

    private const int IdLetters = 6;

    /// <summary>What a bike without a name goes by.</summary>
    private const string First = "the first one";

    public static string NameOf(BikeProfile bike) => bike.Name.Length > 0 ? bike.Name : First;

    /// <summary>The bike that a member talks of unless they name another: the one they chose, else their first.</summary>
    public static BikeProfile InUse(Rider rider, ImmutableArray<BikeProfile> bikes) =>
        bikes.FirstOrDefault(b => b.Id == rider.Bike) ?? bikes.FirstOrDefault(b => b.Id == BikeId.Of(rider.Member)) ?? bikes.FirstOrDefault()
        ?? BikeProfile.New(BikeId.Of(rider.Member), rider.Member);

    /// <param name="text">A name, the beginning of one, or the short id.</param>
    /// <returns>The one bike that is meant, or the refusal <c>bike</c> that names those there are.</returns>
    public static Result<BikeProfile> Find(ImmutableArray<BikeProfile> bikes, string text)
    {
        var said = CleanText.OneLine(text, MostName);
        if (bikes.FirstOrDefault(b => NudgeAnswer.ShortOf(b) == said) is { } byId) return byId;
        if (bikes.FirstOrDefault(b => Same(NameOf(b), said)) is { } exact) return exact;
        var near = said.Length == 0 ? [] : bikes.Where(b => NameOf(b).Contains(said, StringComparison.OrdinalIgnoreCase)).ToList();
        if (near is [var one]) return one;
        var which = near.Count > 1 ? $"\"{said}\" could be {Names(near)}. Say which." : $"You have no bike called \"{said}\".{(bikes.IsEmpty ? "" : $" You have {Names(bikes)}.")}";
        return new Refusal("bike", which);
    }

    /// <summary>Takes on a bike, and from now on talk is of it. Whoever has none logged yet gives their first one its name.</summary>
    /// <param name="eventId">Makes the id of the bike, so that the same event makes the same bike.</param>
    public static Result<GarageChange> New(Rider rider, ImmutableArray<BikeProfile> bikes, string name, string eventId)
    {
        var named = NameFor(name, bikes, null);
        if (named.Refused is { } refused) return refused;
        if (bikes.Length >= MostBikes) return new Refusal("many-bikes", $"That would be more than {MostBikes} bikes. Remove one first.");
        var id = bikes.IsEmpty ? BikeId.Of(rider.Member) : IdFor(rider.Member, bikes, eventId);
        var bike = BikeProfile.New(id, rider.Member) with { Name = named.Must };
        return new GarageChange(rider with { Bike = id }, bike, null, $"Noted: a bike called {bike.Name}. From now on we talk of it");
    }

    public static Result<GarageChange> Use(Rider rider, ImmutableArray<BikeProfile> bikes, string name)
    {
        var found = Find(bikes, name);
        if (found.Refused is { } refused) return refused;
        return new GarageChange(rider with { Bike = found.Must.Id }, null, null, $"From now on we talk of {NameOf(found.Must)}");
    }

    /// <summary>Names the bike in use, or names it anew.</summary>
    public static Result<GarageChange> Rename(Rider rider, ImmutableArray<BikeProfile> bikes, BikeProfile bike, string name)
    {
        var named = NameFor(name, bikes, bike.Id);
        if (named.Refused is { } refused) return refused;
        return new GarageChange(rider, bike with { Name = named.Must }, null, $"Noted: your bike is called {named.Must}");
    }

    /// <summary>Gives a bike up. What was to be said of it is forgotten with it.</summary>
    public static GarageChange Remove(Rider rider, BikeProfile bike)
    {
        bool OfIt(string dueKey) => dueKey.StartsWith(bike.Id.Value + "|", StringComparison.Ordinal);
        var after = rider with
        {
            Bike = rider.Bike == bike.Id ? null : rider.Bike,
            Told = rider.Told.RemoveAll(t => OfIt(t.DueKey)),
            Later = rider.Later.RemoveAll(l => OfIt(l.DueKey)),
        };
        return new GarageChange(after, null, bike, $"Removed: {NameOf(bike)}");
    }

    /// <returns>The name made clean, or why it cannot be one: <c>bike-name</c>.</returns>
    private static Result<string> NameFor(string name, ImmutableArray<BikeProfile> bikes, BikeId? own)
    {
        var clean = CleanText.OneLine(name, MostName + 1);
        if (clean.Length == 0 || !clean.Any(char.IsLetterOrDigit)) return new Refusal("bike-name", "What is it called? A name of your own, such as red cruiser.");
        if (clean.Length > MostName) return new Refusal("bike-name", $"A name has at most {MostName} characters.");
        return Same(clean, First) || bikes.Any(b => b.Id != own && Same(NameOf(b), clean)) ? new Refusal("bike-name", $"You have a bike called {clean} already.") : clean;
    }

    private static BikeId IdFor(MemberId member, ImmutableArray<BikeProfile> bikes, string eventId)
    {
        for (var tries = 0; ; tries++)
        {
            var mark = SHA256.HashData(Encoding.UTF8.GetBytes($"{member}\n{eventId}\n{tries}"));
            var id = new BikeId($"{BikeId.Of(member)}-{Convert.ToHexStringLower(mark)[..IdLetters]}");
            if (bikes.All(b => b.Id != id)) return id;
        }
    }

    private static string Names(IEnumerable<BikeProfile> bikes) => Speaking.Say.Join([.. bikes.Select(NameOf)]);

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
