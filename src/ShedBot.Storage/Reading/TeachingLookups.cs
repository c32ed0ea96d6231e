using System.Collections.Immutable;
using LiteDB;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Opening;

namespace ShedBot.Storage.Reading;

/// <summary>What can be looked up of a club's own rules; written as <see cref="Lookups"/> are. Every range begins and ends with the one club.</summary>
internal static class TeachingLookups
{
    private const string Id = "_id";

    public static int NewestEdition(ILiteDatabase db, ClubId club) => (int)NewestNumber(db, EditionDocument.Collection, club);

    /// <summary>The highest number of a club in a collection that is kept by club and number; 0 when there is none. Read off the key: no document is loaded.</summary>
    public static long NewestNumber(ILiteDatabase db, string collection, ClubId club) =>
        NumberedKeysQuery(db, collection, club).Limit(1).ToList() is [var newest] ? NumberIn(newest) : 0;

    /// <summary>The numbers of a club in a collection, newest first, read off the keys.</summary>
    public static ImmutableArray<long> Numbers(ILiteDatabase db, string collection, ClubId club) =>
        [.. NumberedKeysQuery(db, collection, club).ToList().Select(NumberIn)];

    public static RulesEdition? Edition(ILiteDatabase db, ClubId club, int number)
    {
        var key = ClubKeys.Of(club, number);
        if (db.GetCollection(EditionDocument.Collection).FindById(key) is not { } head || db.GetCollection(LayerDocument.Collection).FindById(key) is not { } texts)
        {
            return null;
        }

        var (layer, learnt) = LayerDocument.FromBson(texts);
        return EditionDocument.FromBson(head, layer, learnt);
    }

    public static ImmutableArray<EditionHead> Editions(ILiteDatabase db, ClubId club, int limit) =>
        [.. NumberedQuery(db, EditionDocument.Collection, club).Limit(limit).ToList().Select(d => EditionDocument.FromBson(d, "", "").Head)];

    public static TeachingSettings Settings(ILiteDatabase db, ClubId club) =>
        db.GetCollection(TeachingSettingsDocument.Collection).FindById(ClubDocument.Checked(club)) is { } found
            ? TeachingSettingsDocument.FromBson(found)
            : TeachingSettings.New(club);

    public static LearningBook LearningBook(ILiteDatabase db, ClubId club) =>
        db.GetCollection(LearningBookDocument.Collection).FindById(ClubDocument.Checked(club)) is { } found
            ? LearningBookDocument.FromBson(found)
            : Coaching.Teaching.Moves.LearningBook.New(club);

    public static Proposal? Proposal(ILiteDatabase db, ClubId club, string id) =>
        db.GetCollection(ProposalDocument.Collection).FindById(KeyOf(club, id)) is { } found ? ProposalDocument.FromBson(found) : null;

    public static ImmutableArray<Proposal> Proposals(ILiteDatabase db, ClubId club, ProposalState state, int limit) =>
        [.. ProposalsQuery(db, club, state).Limit(limit).ToList().Select(ProposalDocument.FromBson)];

    public static Tip? Tip(ILiteDatabase db, ClubId club, string id) =>
        db.GetCollection(TipDocument.Collection).FindById(KeyOf(club, id)) is { } found ? TipDocument.FromBson(found) : null;

    public static ImmutableArray<Tip> Tips(ILiteDatabase db, ClubId club, TipState state, int limit) =>
        [.. TipsQuery(db, club, state).Limit(limit).ToList().Select(TipDocument.FromBson)];

    public static ImmutableArray<AuditEntry> Audit(ILiteDatabase db, ClubId club, long before, int limit) =>
        before <= 1 ? [] : [.. AuditQuery(db, club, before).Limit(limit).ToList().Select(AuditDocument.FromBson)];

    public static ImmutableArray<UnheardWords> Unheard(ILiteDatabase db, ClubId club, int limit) =>
        [.. NumberedQuery(db, UnheardDocument.Collection, club).Limit(limit).ToList().Select(UnheardDocument.FromBson)];

    /// <summary>What a collection kept by club and number holds of a club, newest first.</summary>
    public static ILiteQueryable<BsonDocument> NumberedQuery(ILiteDatabase db, string collection, ClubId club) =>
        Lookups.Query(db, collection)
            .Where(Lookups.Within(Id), ClubKeys.First(club), Keys.Last(club.Value))
            .OrderByDescending(Shelf.PathOf(Id));

    public static ILiteQueryableResult<BsonDocument> NumberedKeysQuery(ILiteDatabase db, string collection, ClubId club) =>
        NumberedQuery(db, collection, club).Select(Shelf.PathOf(Id));

    public static ILiteQueryable<BsonDocument> AuditQuery(ILiteDatabase db, ClubId club, long before) =>
        Lookups.Query(db, AuditDocument.Collection)
            .Where(Lookups.Within(Id), ClubKeys.First(club), ClubKeys.Of(club, before - 1))
            .OrderByDescending(Shelf.PathOf(Id));

    public static ILiteQueryable<BsonDocument> ProposalsQuery(ILiteDatabase db, ClubId club, ProposalState state)
    {
        var key = ClubKeys.StateOf(club, state);
        return Lookups.Query(db, ProposalDocument.Collection)
            .Where(Lookups.Within(ProposalDocument.ByState), Keys.First(key), Keys.Last(key))
            .OrderByDescending(Shelf.PathOf(ProposalDocument.ByState));
    }

    public static ILiteQueryable<BsonDocument> TipsQuery(ILiteDatabase db, ClubId club, TipState state)
    {
        var key = ClubKeys.StateOf(club, state);
        return Lookups.Query(db, TipDocument.Collection)
            .Where(Lookups.Within(TipDocument.ByState), Keys.First(key), Keys.Last(key))
            .OrderBy(Shelf.PathOf(TipDocument.ByState));
    }

    /// <summary>All keys of a club in a collection whose keys begin with the club.</summary>
    public static ILiteQueryableResult<BsonDocument> KeysOfClubQuery(ILiteDatabase db, string collection, ClubId club) =>
        Lookups.Query(db, collection)
            .Where(Lookups.Within(Id), ClubKeys.First(club), ClubKeys.Above(club))
            .OrderBy(Shelf.PathOf(Id))
            .Select(Shelf.PathOf(Id));

    public static ImmutableArray<BsonValue> KeysOfClub(ILiteDatabase db, string collection, ClubId club) => [.. KeysOfClubQuery(db, collection, club).ToList().Select(KeyIn)];

    // Whatever a forged id holds, its key begins with the club.
    private static string KeyOf(ClubId club, string id) => Keys.Join(ClubDocument.Checked(club), id);

    private static long NumberIn(BsonDocument only) => long.Parse(Keys.Parted(KeyIn(only).AsString).Digits, System.Globalization.CultureInfo.InvariantCulture);

    private static BsonValue KeyIn(BsonDocument only) => only.GetElements().First().Value;
}
