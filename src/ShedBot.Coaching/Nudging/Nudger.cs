using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Nudging;

/// <summary>Decides what a member is told now, and when to look again. Pure. The rules are written down in docs/nudges.md.</summary>
public static class Nudger
{
    /// <summary>So many digests in a row go unanswered before the member is asked whether to go on. Common practice, no source.</summary>
    public const int MostUnanswered = 2;

    /// <summary>So many days ahead it is looked again at the latest: an estimate can move though nobody logs anything.</summary>
    public const int MostDaysAhead = 7;

    /// <summary>A last message that lies further ahead than this was sent by a clock that was wrong.</summary>
    private static readonly TimeSpan WrongClock = TimeSpan.FromDays(2);

    /// <param name="bikes">All of the member's bikes.</param>
    /// <param name="clubZone">An IANA zone, for members who have not told theirs; unknown names count as UTC.</param>
    public static Decision Decide(Rider rider, ImmutableArray<BikeProfile> bikes, KnowledgeBase knowledge, string clubZone, DateTimeOffset now) =>
        Decide(rider, bikes, knowledge, clubZone, now, Bundling.Usual);

    internal static Decision Decide(Rider rider, ImmutableArray<BikeProfile> bikes, KnowledgeBase knowledge, string clubZone, DateTimeOffset now, Bundling bundling)
    {
        var clock = new RiderClock(rider, clubZone, now);
        var items = DueItem.Of(bikes, knowledge, clock.Today, clock.Zone);
        var after = Kept(Tamed(rider, clock), items) with { Version = rider.Version + 1 };
        if (Closed(after) is { } closed) return Nothing(after, items, clock, null, _ => closed);

        var wanted = items.Where(i => !after.Stopped.Contains(i.Item.Rule.Id)).ToImmutableArray();
        var asked = wanted.Where(i => (i.IsDue(clock.Today) || i.IsSoon(clock.Today)) && after.Later.Any(l => l.DueKey == i.Key && l.Until <= now)).ToImmutableArray();
        var fresh = wanted.Where(i => i.IsDue(clock.Today) && !IsTold(after, i)).ToImmutableArray();
        if (asked.IsEmpty && fresh.IsEmpty) return Nothing(after, items, clock, Next(after, items, clock, bundling), _ => WithheldFor.Told);
        if (asked.IsEmpty && clock.Today < bundling.From(after, clock.Today) && !fresh.Any(i => i.Pressing))
            return Nothing(after, items, clock, Next(after, items, clock, bundling), _ => WithheldFor.Gathering);
        var spoken = after.LastDay >= clock.Today || (after.LastAt is { } last && clock.DayOf(last) >= clock.Today);
        var evening = spoken && after.LastEvening != clock.Today && asked.Any(i => after.Later.Any(l => l.DueKey == i.Key && l.Tonight));
        if (spoken && !evening)
        {
            var next = after.Later.Where(l => l.Tonight && l.Until > now).Select(l => l.Until).Append(clock.Slot(Tomorrow(after, clock))).Min();
            return Nothing(after, items, clock, next, _ => WithheldFor.SpokenToday);
        }

        // What was asked for at an hour of today comes at that hour, and brings along what is due besides.
        var atAnHour = asked.Any(i => after.Later.Any(l => l.DueKey == i.Key && l.Until <= now && clock.DayOf(l.Until) == clock.Today));
        if (!atAnHour && now < clock.Slot(clock.Today)) return Nothing(after, items, clock, clock.Slot(clock.Today), _ => WithheldFor.NotYet);
        if (clock.IsQuiet) return Nothing(after, items, clock, clock.Awake(), _ => WithheldFor.Quiet);
        after = after with { LastAt = now, LastDay = clock.Today, LastEvening = evening ? clock.Today : after.LastEvening };
        if (after.Unanswered < MostUnanswered)
        {
            var say = evening ? asked : [.. wanted.Where(i => asked.Contains(i) || fresh.Contains(i))];
            var along = evening ? [] : wanted.Where(i => i.ComesAlong(clock.Today, bundling.AheadDays) && !say.Contains(i) && !IsTold(after, i)).Take(NudgeCards.MostNamed);
            after = Tell(after, [.. say, .. along], items, clock, evening, out var nudge);
            return Nothing(after, [.. items.Where(i => !nudge.DueKeys.Contains(i.Key))], clock, Next(after, items, clock, bundling), _ => WithheldFor.Told) with { Say = nudge };
        }

        var asking = Nothing(after, items, clock, null, _ => WithheldFor.AskingFirst);
        return asking with { After = asking.After with { Silent = true }, Say = new Nudge(NudgeCards.GoOn(clock.Today), [], evening) };
    }

    /// <summary>What the member did or said anywhere is a sign of life: the count of unanswered digests begins anew, and silence ends.</summary>
    /// <remarks>To be called, and saved, whenever a bike of theirs was saved: the next look was reckoned from how it stood before.</remarks>
    public static Rider Heard(Rider rider, DateTimeOffset now) => rider with
    {
        Unanswered = 0,
        Silent = false,
        NextLook = rider is { Consent: Consent.Given, Refused: false } ? now : null,
        Version = rider.Version + 1,
    };

    /// <summary>
    /// For a store that was restored from a backup: whatever was due when the last message went out was told in it or before. What the chat says of that
    /// message decides, so nothing is told twice.
    /// </summary>
    /// <param name="lastMessage">When the newest reminder in the chat with the member was sent.</param>
    public static Rider CatchUp(
        Rider rider, ImmutableArray<BikeProfile> bikes, KnowledgeBase knowledge, string clubZone, DateTimeOffset lastMessage, DateTimeOffset now)
    {
        if (rider.LastAt >= lastMessage) return rider;
        var then = new RiderClock(rider, clubZone, lastMessage);
        var told = DueItem.Of(bikes, knowledge, then.Today, then.Zone)
            .Where(i => i.IsDue(then.Today) || i.ComesAlong(then.Today, Bundling.Usual.AheadDays)).Select(i => i.Key).ToImmutableArray();
        return rider with
        {
            Told = [.. rider.Told.Where(t => !told.Contains(t.DueKey)), .. told.Select(k => new Told(k, then.Today))],
            Later = rider.Later.RemoveAll(l => l.Until <= lastMessage),
            LastAt = lastMessage,
            LastDay = then.Today,
            NextLook = now,
            Version = rider.Version + 1,
        };
    }

    private static Rider Tell(Rider after, ImmutableArray<DueItem> say, ImmutableArray<DueItem> items, RiderClock clock, bool evening, out Nudge nudge)
    {
        ImmutableArray<string> keys = [.. say.Select(i => i.Key)];
        var open = items.Count(i => i.IsDue(clock.Today) && !keys.Contains(i.Key) && !after.Stopped.Contains(i.Item.Rule.Id) && IsTold(after, i));
        nudge = new Nudge(NudgeCards.Digest(say, open, clock, evening), keys, evening);
        return after with
        {
            Told = [.. after.Told.Where(t => !keys.Contains(t.DueKey)), .. keys.Select(k => new Told(k, clock.Today))],
            Later = after.Later.RemoveAll(l => keys.Contains(l.DueKey)),
            Unanswered = after.Unanswered + 1,
        };
    }

    private static Decision Nothing(Rider after, ImmutableArray<DueItem> items, RiderClock clock, DateTimeOffset? next, Func<DueItem, WithheldFor> otherwise) => new(
        after with { NextLook = next },
        null,
        [.. items.Where(i => i.IsDue(clock.Today) || i.Rests).Select(i => new Withheld(i.Key, Closed(after) ?? Reason(after, i, clock) ?? otherwise(i)))]);

    private static WithheldFor? Closed(Rider rider) => rider switch
    {
        { Consent: not Consent.Given } => WithheldFor.NoConsent,
        { Refused: true } => WithheldFor.Refused,
        { Silent: true } => WithheldFor.Silence,
        _ => null,
    };

    private static WithheldFor? Reason(Rider rider, DueItem item, RiderClock clock) =>
        rider.Stopped.Contains(item.Item.Rule.Id) ? WithheldFor.Stopped
        : item.Rests ? WithheldFor.Resting
        : rider.Later.FirstOrDefault(l => l.DueKey == item.Key) is { } later ? later.Until > clock.Now ? WithheldFor.Later : null
        : rider.Told.Any(t => t.DueKey == item.Key) ? WithheldFor.Told
        : null;

    /// <summary>The first day on which a message may go out again: never the day of the last one, in whatever zone.</summary>
    private static LocalDate Tomorrow(Rider rider, RiderClock clock) =>
        LocalDate.Max(LocalDate.Max(rider.LastDay ?? clock.Today, rider.LastAt is { } at ? clock.DayOf(at) : clock.Today), clock.Today).PlusDays(1);

    private static bool IsTold(Rider rider, DueItem item) => rider.Told.Any(t => t.DueKey == item.Key);

    /// <summary>
    /// When the next due date may come that may be told then, or a reminder was asked for; a week ahead at the latest. What was told needs no look.
    /// </summary>
    private static DateTimeOffset? Next(Rider rider, ImmutableArray<DueItem> items, RiderClock clock, Bundling bundling)
    {
        if (items.IsEmpty) return null;
        var (tomorrow, gathered) = (clock.Today.PlusDays(1), bundling.From(rider, clock.Today));
        var day = items.Where(i => !rider.Stopped.Contains(i.Item.Rule.Id) && (!IsTold(rider, i) || rider.Later.Any(l => l.DueKey == i.Key && l.Until <= clock.Now)))
            .Select(i => LocalDate.Max(i.Pressing ? tomorrow : LocalDate.Max(tomorrow, gathered), Comes(i, clock) ?? LocalDate.MaxIsoValue))
            .Append(clock.Today.PlusDays(MostDaysAhead)).Min();
        var later = rider.Later.Where(l => l.Until > clock.Now).Select(l => l.Until);
        return later.Append(clock.Slot(day)).Min();
    }

    private static LocalDate? Comes(DueItem item, RiderClock clock) =>
        item.IsDue(clock.Today) ? clock.Today : item.Rests ? item.Bike.Riding.BreakOn(clock.Today)?.Until : item.Item.Earliest;

    /// <summary>A mark from the far future counts as today's: nothing more is said today, and tomorrow all is well.</summary>
    private static Rider Tamed(Rider rider, RiderClock clock) =>
        rider.LastAt > clock.Now + WrongClock ? rider with { LastAt = clock.Now, LastDay = clock.Today } : rider;

    /// <summary>What is in the plan stays remembered; of the rest the newest.</summary>
    private static Rider Kept(Rider rider, ImmutableArray<DueItem> items)
    {
        var keys = items.Select(i => i.Key).ToHashSet(StringComparer.Ordinal);
        var gone = rider.Told.Where(t => !keys.Contains(t.DueKey)).ToImmutableArray();
        return rider with
        {
            Told = gone.Length <= Rider.MostTold ? rider.Told : rider.Told.RemoveRange(gone.Take(gone.Length - Rider.MostTold)),
            Later = rider.Later.RemoveAll(l => !keys.Contains(l.DueKey)),
        };
    }
}
