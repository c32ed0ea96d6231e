using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Nudging;

namespace ShedBot.Coaching.Logbook;

/// <summary>
/// The shell around the logbook, the same for every platform: reads the bike, makes one entry at a time for each member, keeps it. An event that comes again
/// is not entered twice.
/// </summary>
/// <param name="coaches">Asked each time, so that what a club has published serves the next request.</param>
public sealed class BikeDesk(IShedStore store, IRiderStore riders, ICoaches coaches) : IDisposable
{
    private const int MostCases = 100;

    private readonly MemberGates gates = new();

    /// <summary>Deals with one request. When this returns, an entry is safe on the disk, whatever happens to the process.</summary>
    /// <param name="eventId">The platform's name of the event.</param>
    /// <param name="at">When the member did it: "today" is their day then, however late it is dealt with.</param>
    /// <param name="bike">The bike that is meant, as <see cref="Garage.Find"/> takes it; null or empty: the one in use.</param>
    public Task<BikeAnswer> HandleAsync(Speaker speaker, string eventId, BikeRequest request, DateTimeOffset at, CancellationToken ct, string? bike = null) => request switch
    {
        BikeEntry entry => gates.AloneAsync(speaker.Member, () => EnterAsync(speaker, eventId, entry, at, bike, ct), ct),
        ShowBikes => LookAsync(speaker, request, at, null, ct),
        GarageRequest garage => gates.AloneAsync(speaker.Member, () => ChangeAsync(speaker, eventId, garage, at, ct), ct),
        _ => LookAsync(speaker, request, at, bike, ct),
    };

    /// <summary>The bike in use.</summary>
    public async Task<BikeProfile> BikeAsync(MemberId member, CancellationToken ct)
    {
        var (rider, bikes) = await ReadAsync(member, ct);
        return Garage.InUse(rider, bikes);
    }

    public async Task<ImmutableArray<BikeProfile>> BikesAsync(MemberId member, CancellationToken ct) => await store.BikesOfAsync(member, ct);

    public void Dispose() => gates.Dispose();

    private async Task<BikeAnswer> EnterAsync(Speaker speaker, string eventId, BikeEntry entry, DateTimeOffset at, string? named, CancellationToken ct)
    {
        var rules = (await coaches.OfAsync(speaker.Member, ct)).Knowledge;
        var (rider, bikes) = await ReadAsync(speaker.Member, ct);
        // It may have been entered for another bike, with the bike in use changed since.
        if (bikes.FirstOrDefault(b => b.Handled.Contains(eventId)) is { } before) return new(Named(LogbookCards.Already(before, rules, speaker, at), before, bikes));
        var found = Meant(rider, bikes, named);
        if (found.Refused is { } which) return Refuse(which);
        var bike = found.Must;
        var made = Entering.Make(bike, entry, rules, speaker, at);
        if (made.Refused is { } refused) return Refuse(refused);
        var after = Stamp(made.Must.Bike, bike, eventId);
        // What is due can have changed, so the member is looked at anew; in one save, for a death between two would leave them waiting.
        if (rider.Consent == Consent.Given) await riders.SaveRiderAsync(Nudger.Heard(rider, at), [after], [], ct);
        else await store.SaveBikeAsync(after, ct);
        return new(Named(LogbookCards.Entered(made.Must with { Bike = after }, rules, speaker, at), after, bikes));
    }

    private async Task<BikeAnswer> ChangeAsync(Speaker speaker, string eventId, GarageRequest request, DateTimeOffset at, CancellationToken ct)
    {
        var (rider, bikes) = await ReadAsync(speaker.Member, ct);
        if (bikes.FirstOrDefault(b => b.Handled.Contains(eventId)) is { } before) return new(new Card($"That is noted already: {Garage.NameOf(before)}", [], []));
        if (request is RemoveBike remove) return await RemoveAsync(rider, bikes, remove, at, ct);
        var changed = request switch
        {
            NewBike added => Garage.New(rider, bikes, added.Name, eventId),
            UseBike used => Garage.Use(rider, bikes, used.Name),
            NameBike named => Garage.Rename(rider, bikes, Garage.InUse(rider, bikes), named.Name),
            _ => throw new ArgumentOutOfRangeException(nameof(request), request, "A new kind of request needs an answer."),
        };
        if (changed.Refused is { } refused) return Refuse(refused);
        ImmutableArray<BikeProfile> saved = changed.Must.Saved is { } bike ? [Stamp(bike, bike, eventId)] : [];
        await riders.SaveRiderAsync(Nudger.Heard(changed.Must.Rider, at), saved, [], ct);
        return new(GarageCards.Changed(changed.Must));
    }

    private async Task<BikeAnswer> RemoveAsync(Rider rider, ImmutableArray<BikeProfile> bikes, RemoveBike request, DateTimeOffset at, CancellationToken ct)
    {
        var found = Garage.Find(bikes, request.Name);
        if (found.Refused is { } refused) return Refuse(refused);
        var bike = found.Must;
        // An open case would go on writing what it learns of a bike that is gone.
        if ((await store.CasesOfAsync(rider.Member, MostCases, ct)).Any(c => c.Bike == bike.Id && !c.IsClosed))
            return Refuse(new Refusal("open-case", $"A case about {Garage.NameOf(bike)} is still open. Finish it or leave it first."));
        if (!request.Sure) return new(GarageCards.Ask(bike));
        var change = Garage.Remove(rider, bike);
        await store.RemoveBikeAsync(Nudger.Heard(change.Rider, at), bike, ct);
        return new(GarageCards.Changed(change));
    }

    private async Task<BikeAnswer> LookAsync(Speaker speaker, BikeRequest request, DateTimeOffset at, string? named, CancellationToken ct)
    {
        var rules = (await coaches.OfAsync(speaker.Member, ct)).Knowledge;
        var (rider, bikes) = await ReadAsync(speaker.Member, ct);
        var found = Meant(rider, bikes, named);
        if (found.Refused is { } refused) return Refuse(refused);
        var bike = found.Must;
        BikeAnswer answer = request switch
        {
            ShowBikes => new(GarageCards.Of(bikes, bike, speaker)),
            ShowBike => new(BikeLook.Of(bike, rules, speaker, at)),
            ShowPlan plan => new(PlanCards.Of(bike, rules, speaker, at, plan.Whole)),
            ShowHow how when rules.Service.TryGetValue(how.Task, out var rule) => new(TaskCards.Of(rule, bike, rules, speaker, at)),
            ShowHow => new(LogbookCards.Refused(new Refusal("task", "I do not know that task any more."))),
            ShowTimeline show => Laid(Timelines.Of(bike, rules, speaker.DayOf(at), speaker.Zone), show.Look),
            TakeCopy => new(LogbookCards.Copy, BikeCopy.Files(bikes.IsEmpty ? [bike] : bikes, rules)),
            _ => throw new ArgumentOutOfRangeException(nameof(request), request, "A new kind of request needs an answer."),
        };
        return request is ShowBikes or TakeCopy || (request is ShowTimeline && bike.Name.Length > 0) ? answer : answer with { Card = Named(answer.Card, bike, bikes) };
    }

    private async Task<(Rider Rider, ImmutableArray<BikeProfile> Bikes)> ReadAsync(MemberId member, CancellationToken ct) =>
        (await riders.FindRiderAsync(member, ct) ?? Rider.New(member), await store.BikesOfAsync(member, ct));

    private static Result<BikeProfile> Meant(Rider rider, ImmutableArray<BikeProfile> bikes, string? named) =>
        string.IsNullOrWhiteSpace(named) ? Garage.InUse(rider, bikes) : Garage.Find(bikes, named);

    /// <summary>With more than one bike a card says which one it is about.</summary>
    private static Card Named(Card card, BikeProfile bike, ImmutableArray<BikeProfile> bikes) =>
        bikes.Length > 1 ? card with { Title = $"{card.Title} ({Garage.NameOf(bike)})" } : card;

    private static BikeProfile Stamp(BikeProfile after, BikeProfile before, string eventId)
    {
        var handled = before.Handled.Add(eventId);
        return after with { Handled = handled.Length > BikeProfile.MostHandled ? handled.RemoveAt(0) : handled, Version = before.Version + 1 };
    }

    private static BikeAnswer Refuse(Refusal refusal) => new(LogbookCards.Refused(refusal), Refused: refusal);

    /// <summary>Where no task can be dated there is nothing to paint.</summary>
    private static BikeAnswer Laid(Timeline timeline, PictureLook look) =>
        new(TimelineCards.Whole(timeline), Picture: timeline.Rows.IsEmpty ? null : new TimelinePicture(timeline, look));
}

/// <param name="Files">To be handed over with the card; default when there are none.</param>
/// <param name="Refused">Set when an entry was not made.</param>
/// <param name="Picture">What can be painted besides; the card says all of it in words.</param>
public sealed record BikeAnswer(Card Card, ImmutableArray<CopyFile> Files = default, Refusal? Refused = null, TimelinePicture? Picture = null);

public sealed record TimelinePicture(Timeline Timeline, PictureLook Look);
