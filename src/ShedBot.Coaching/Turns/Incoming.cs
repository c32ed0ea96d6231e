using ShedBot.Coaching.Cases;

namespace ShedBot.Coaching.Turns;

/// <summary>Something a member did.</summary>
/// <param name="EventId">The platform's name for this event: the same event coming twice is answered once.</param>
public abstract record Incoming(string EventId);

/// <summary>The member wrote something in their own words.</summary>
public sealed record MemberSaid(string EventId, string Words) : Incoming(EventId);

/// <summary>The member picked an option of a card.</summary>
public sealed record MemberChose(string EventId, string OptionId) : Incoming(EventId);

/// <summary>The member puts the case away, whatever is asked just now.</summary>
public sealed record MemberLeft(string EventId) : Incoming(EventId);

/// <summary>Work on a bike has shown a trouble, and the member said which: the case begins with the complaint, whatever is asked just now.</summary>
/// <param name="Complaint">The id of a complaint rule.</param>
public sealed record TroubleFound(string EventId, BikeId Bike, string Complaint) : Incoming(EventId);
