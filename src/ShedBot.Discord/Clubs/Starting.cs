using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Turns;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>A case that somebody wants to begin.</summary>
/// <param name="Opener">The interaction or message that asks for it: the same one opens one case only.</param>
/// <param name="Channel">The channel in which the thread is to hang.</param>
/// <param name="Thread">A thread that is there already and is to be used, or none.</param>
/// <param name="Source">The message on which a new thread is to hang, or none.</param>
/// <param name="Owner">What the club calls the member; not kept.</param>
internal sealed record StartWish(
    ClubId Club, Snowflake Person, string? Owner, Snowflake Opener, string Words, Snowflake Channel, Snowflake Thread, Snowflake Source, bool Private, DateTimeOffset CameIn)
{
    /// <summary>The trouble, where it is known already; it begins the case in place of words.</summary>
    public TroubleFound? Known { get; init; }

    /// <summary>The bike that was named, or null: the one in use.</summary>
    public BikeId? About { get; init; }
}

/// <summary>What came of it: a room, or what to say instead.</summary>
/// <param name="Instead">What is said when no case is opened; empty when a room was opened.</param>
/// <param name="Link">What it is about, as the platform links it; or null.</param>
internal sealed record Started(Room? Room, ImmutableArray<Card> Instead, string? Link = null);

/// <summary>Begins cases. Words that name no trouble open no thread: a question how something is done, small talk, another machine.</summary>
internal sealed class Starting(Parts parts, Rooms rooms, Turns turns)
{
    /// <summary>A member may have so many cases open in a club.</summary>
    public const int MostOpen = 3;

    private const int MostLooked = 100;

    public async Task<Started> StartAsync(StartWish wish, Acknowledgement? live, CancellationToken ct)
    {
        var place = Names.Place(wish.Club, wish.Opener);
        var said = wish.Known ?? (Incoming)new MemberSaid(Names.OpeningEvent(wish.Opener), wish.Words);
        var member = wish.Club.Member(wish.Person.ToString());
        var room = await rooms.FindAsync(place, ct);
        if (room is null)
        {
            if (said is MemberSaid words && await InsteadAsync(member, place, words, ct) is { Say.IsEmpty: false } instead)
            {
                // No case keeps them: those who teach the rules would never hear of a trouble that no rule knows.
                if (instead.Unheard is { } unheard) await parts.Teaching.AddUnheardAsync(unheard, ct);
                return new Started(null, instead.Say);
            }

            var open = await OpenRoomsAsync(member, ct);
            if (open.Length >= MostOpen) return new Started(null, [Texts.TooManyOpen], string.Join("  ", open.Select(r => $"<#{r.Thread}>")));
            room = await rooms.AddAsync(NewRoom(wish, place, member), ct);
        }

        else if (await parts.Store.FindLastCaseAsync(member, place, ct) is not null)
        {
            // The event came before and has opened its case, which remembers only its last events by name.
            return new Started(room, []);
        }

        await turns.TakeAsync(room, said, live, wish.Owner, wish.CameIn, ct, wish.About);
        var opened = await rooms.FindAsync(place, ct) ?? room;
        return opened.State == RoomState.Gone ? new Started(null, [Texts.HelpChannelGone]) : new Started(opened, []);
    }

    private async Task<ImmutableArray<Room>> OpenRoomsAsync(MemberId member, CancellationToken ct) =>
        [.. (await parts.Clubs.RoomsOfAsync(member, MostLooked, ct)).Where(r => r.State == RoomState.Open && r.Thread is not null)];

    /// <summary>What would be said, without a case being opened; null when a case is to be opened. Taking a turn changes nothing until it is kept.</summary>
    private async Task<(ImmutableArray<Card> Say, UnheardWords? Unheard)?> InsteadAsync(MemberId member, string place, MemberSaid said, CancellationToken ct)
    {
        var now = parts.Clock.GetUtcNow();
        var bike = new BikeId("unseen");
        var coach = await parts.Coaches.OfAsync(member, ct);
        var turn = coach.Take(Case.New(new CaseId("unseen"), member, bike, place, now), BikeProfile.New(bike, member), said, now);
        var opens = !turn.Case.Entries.IsEmpty || turn.Case.Open.Kind is not (AskKind.None or AskKind.Trouble);
        return opens ? null : ([.. turn.Say.Select(c => c with { Options = [] })], turn.Unheard);
    }

    private static Room NewRoom(StartWish wish, string place, MemberId member) => new(
        place,
        wish.Club,
        member,
        wish.Channel.ToString(),
        wish.Thread.IsNone ? null : wish.Thread.ToString(),
        OwnThread: wish.Thread.IsNone,
        wish.Source.IsNone ? null : wish.Source.ToString(),
        wish.Private,
        Name: "",
        Panel: null,
        Helpers: [],
        Hinted: false,
        LastHeard: wish.Thread.IsNone ? null : wish.Opener.ToString(),
        RoomState.Open,
        wish.CameIn,
        Version: 0);
}
