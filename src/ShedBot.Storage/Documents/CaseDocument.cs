using LiteDB;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Storage.Documents;

/// <summary>A case as it is stored.</summary>
internal static class CaseDocument
{
    public const string Collection = "cases";

    /// <summary>Member and time of the last turn.</summary>
    public const string ByMember = "byMember";

    /// <summary>Member and place while the case is open, else null.</summary>
    public const string ByOpenPlace = "byOpenPlace";

    /// <summary>Member, place, time of the last turn, case.</summary>
    public const string ByPlace = "byPlace";

    /// <summary>The club whose rules serve the member, time of closing, case, while the case is closed; else null.</summary>
    public const string ByClosed = "byClosed";

    public const string Version = "version";

    /// <param name="say">The ids of what the last turn says: they tell a turn that is saved twice from another turn.</param>
    public static BsonDocument ToBson(Case c, IEnumerable<string> say) => Seal.Close(new BsonDocument
    {
        ["_id"] = Keys.Checked(c.Id.Value, "case id"),
        ["member"] = Keys.Checked(c.Member.Value, "member id"),
        ["bike"] = Keys.Checked(c.Bike.Value, "bike id"),
        ["place"] = Keys.Checked(c.Place, "place"),
        [ByMember] = Keys.Join(c.Member.Value, Times.Key(c.LastTurnAt)),
        [ByOpenPlace] = c.IsClosed ? BsonValue.Null : PlaceOf(c.Member, c.Place),
        [ByPlace] = Keys.Join(PlaceOf(c.Member, c.Place), Times.Key(c.LastTurnAt) + c.Id.Value),
        [ByClosed] = c.IsClosed ? Keys.Join(ClubId.Serving(c.Member).Value, Times.Key(c.ClosedAt ?? c.LastTurnAt) + c.Id.Value) : BsonValue.Null,
        ["phase"] = c.Phase.ToString(),
        ["openingWords"] = c.OpeningWords,
        ["entries"] = new BsonArray(c.Entries.Select(EntryToBson)),
        ["open"] = new BsonDocument
        {
            ["kind"] = c.Open.Kind.ToString(),
            ["subject"] = c.Open.Subject,
            ["position"] = c.Open.Position,
            ["serial"] = c.Open.Serial,
        },
        ["turn"] = c.Turn,
        [Version] = c.Version,
        ["knowledgeVersion"] = c.KnowledgeVersion,
        ["openedAt"] = Times.ToBson(c.OpenedAt),
        ["lastTurnAt"] = Times.ToBson(c.LastTurnAt),
        ["closedAt"] = Times.ToBson(c.ClosedAt),
        ["handled"] = new BsonArray(c.Handled.Select(h => new BsonValue(h))),
        ["saidIds"] = new BsonArray(say.Select(s => new BsonValue(s))),
    });

    public static Case FromBson(BsonDocument document)
    {
        var f = Fields.Of(Collection, document);
        var open = f.Part("open");
        return new Case(
            new CaseId(f.Text("_id")),
            new MemberId(f.Text("member")),
            new BikeId(f.Text("bike")),
            f.Text("place"),
            f.Named<CasePhase>("phase"),
            f.Text("openingWords"),
            f.List("entries", EntryFromBson),
            new Ask(open.Named<AskKind>("kind"), open.Text("subject"), open.Whole("position"), open.Whole("serial")),
            f.Whole("turn"),
            f.Whole(Version),
            f.Text("knowledgeVersion"),
            f.Time("openedAt"),
            f.Time("lastTurnAt"),
            f.TimeOrNull("closedAt"),
            f.Texts("handled"));
    }

    public static string PlaceOf(MemberId member, string place) => Keys.Join(member.Value, place);

    private static BsonDocument EntryToBson(CaseEntry e) => new BsonDocument
    {
        ["turn"] = e.Turn,
        ["kind"] = e.Kind.ToString(),
        ["subject"] = e.Subject,
        ["value"] = e.Value,
        ["score"] = e.Score,
        ["at"] = Times.ToBson(e.At),
        ["struck"] = e.Struck,
    };

    private static CaseEntry EntryFromBson(Fields f) => new(
        f.Whole("turn"),
        f.Named<EntryKind>("kind"),
        f.Text("subject"),
        f.TextOrNull("value"),
        f.Real("score"),
        f.Time("at"),
        f.Flag("struck"));
}
