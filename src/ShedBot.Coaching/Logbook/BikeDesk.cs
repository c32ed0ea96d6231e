using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Nudging;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Logbook;

/// <summary>
/// The shell around the logbook, the same for every platform: reads the bike, makes one entry at a time for each member, keeps it. An event that comes again
/// is not entered twice.
/// </summary>
/// <param name="knowledge">Asked each time, so that rules changed while running serve the next request.</param>
public sealed class BikeDesk(IShedStore store, IRiderStore riders, Func<KnowledgeBase> knowledge) : IDisposable
{
    private readonly MemberGates gates = new();

    /// <summary>Deals with one request. When this returns, an entry is safe on the disk, whatever happens to the process.</summary>
    /// <param name="eventId">The platform's name of the event.</param>
    /// <param name="at">When the member did it: "today" is their day then, however late it is dealt with.</param>
    public Task<BikeAnswer> HandleAsync(Speaker speaker, string eventId, BikeRequest request, DateTimeOffset at, CancellationToken ct) => request is BikeEntry entry
        ? gates.AloneAsync(speaker.Member, () => EnterAsync(speaker, eventId, entry, at, ct), ct)
        : LookAsync(speaker, request, at, ct);

    public async Task<BikeProfile> BikeAsync(MemberId member, CancellationToken ct) =>
        await store.FindBikeAsync(BikeId.Of(member), ct) ?? BikeProfile.New(BikeId.Of(member), member);

    public void Dispose() => gates.Dispose();

    private async Task<BikeAnswer> EnterAsync(Speaker speaker, string eventId, BikeEntry entry, DateTimeOffset at, CancellationToken ct)
    {
        var (rules, bike) = (knowledge(), await BikeAsync(speaker.Member, ct));
        if (bike.Handled.Contains(eventId)) return new(LogbookCards.Already(bike, rules, speaker, at));
        var made = Entering.Make(bike, entry, rules, speaker, at);
        if (made.Refused is { } refused) return new(LogbookCards.Refused(refused), Refused: refused);
        var handled = bike.Handled.Add(eventId);
        var after = made.Must.Bike with
        {
            Handled = handled.Length > BikeProfile.MostHandled ? handled.RemoveAt(0) : handled,
            Version = bike.Version + 1,
        };
        // What is due can have changed, so the member is looked at anew; in one save, for a death between two would leave them waiting.
        if (await riders.FindRiderAsync(speaker.Member, ct) is { Consent: Consent.Given } rider) await riders.SaveRiderAsync(Nudger.Heard(rider, at), [after], [], ct);
        else await store.SaveBikeAsync(after, ct);
        return new(LogbookCards.Entered(made.Must with { Bike = after }, rules, speaker, at));
    }

    private async Task<BikeAnswer> LookAsync(Speaker speaker, BikeRequest request, DateTimeOffset at, CancellationToken ct)
    {
        var (rules, bike) = (knowledge(), await BikeAsync(speaker.Member, ct));
        return request switch
        {
            ShowPlan plan => new(PlanCards.Of(bike, rules, speaker, at, plan.Whole)),
            ShowHow how when rules.Service.TryGetValue(how.Task, out var rule) => new(TaskCards.Of(rule, bike, rules, speaker, at)),
            ShowHow => new(LogbookCards.Refused(new Refusal("task", "I do not know that task any more."))),
            ShowTimeline show => Laid(Timelines.Of(bike, rules, speaker.DayOf(at), speaker.Zone), show.Look),
            TakeCopy => new(LogbookCards.Copy, BikeCopy.Files(bike, rules)),
            _ => throw new ArgumentOutOfRangeException(nameof(request), request, "A new kind of request needs an answer."),
        };
    }

    /// <summary>Where no task can be dated there is nothing to paint.</summary>
    private static BikeAnswer Laid(Timeline timeline, PictureLook look) =>
        new(TimelineCards.Whole(timeline), Picture: timeline.Rows.IsEmpty ? null : new TimelinePicture(timeline, look));
}

/// <param name="Files">To be handed over with the card; default when there are none.</param>
/// <param name="Refused">Set when an entry was not made.</param>
/// <param name="Picture">What can be painted besides; the card says all of it in words.</param>
public sealed record BikeAnswer(Card Card, ImmutableArray<CopyFile> Files = default, Refusal? Refused = null, TimelinePicture? Picture = null);

public sealed record TimelinePicture(Timeline Timeline, PictureLook Look);
