namespace ShedBot.Coaching.Logbook;

/// <summary>What a member wants of their bikes as a whole.</summary>
public abstract record GarageRequest : BikeRequest;

/// <summary>All bikes, and which one is in use.</summary>
public sealed record ShowBikes : GarageRequest;

/// <param name="Name">At most 40 characters.</param>
public sealed record NewBike(string Name) : GarageRequest;

/// <param name="Name">A name, the beginning of one, or the short id.</param>
public sealed record UseBike(string Name) : GarageRequest;

/// <summary>Names the bike in use.</summary>
public sealed record NameBike(string Name) : GarageRequest;

/// <param name="Name">A name, the beginning of one, or the short id.</param>
/// <param name="Sure">False: it is asked first.</param>
public sealed record RemoveBike(string Name, bool Sure) : GarageRequest;
