using LiteDB;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Reading;

namespace ShedBot.Storage.Writing;

/// <summary>Takes somebody out of what is kept of a club's rules, inside the transaction it is called in: what they published stays, without them.</summary>
internal static class TeachingForgetting
{
    private static readonly string[] Collections =
    [
        EditionDocument.Collection, LayerDocument.Collection, ProposalDocument.Collection, TipDocument.Collection, AuditDocument.Collection, UnheardDocument.Collection,
    ];

    public static void Club(ILiteDatabase db, ClubId club)
    {
        foreach (var collection in Collections)
        {
            foreach (var key in TeachingLookups.KeysOfClub(db, collection, club))
            {
                db.GetCollection(collection).Delete(key);
            }
        }

        db.GetCollection(TeachingSettingsDocument.Collection).Delete(club.Value);
    }

    public static void Member(ILiteDatabase db, MemberId member)
    {
        var club = ClubId.Serving(member);
        var names = new HashSet<string>(StringComparer.Ordinal);
        UnheardWriter.Drop(db, club, d => d[UnheardDocument.Member].AsString == member.Value);
        // Names are gathered on the way, so what holds names of others' writing comes last.
        LeaveAudit(db, club, member, names);
        LeaveEditions(db, club, member, names);
        var tips = LeaveTips(db, club, member, names);
        NamesOfProposals(db, club, member, names);
        names.Remove("");
        LeaveProposals(db, club, member, names, tips);
        LeaveLayers(db, club, names);
    }

    private static void LeaveAudit(ILiteDatabase db, ClubId club, MemberId member, HashSet<string> names) =>
        Each(db, AuditDocument.Collection, club, AuditDocument.FromBson, (audit, a) =>
        {
            if (a.Who == member)
            {
                names.Add(a.Name);
                audit.Update(AuditDocument.ToBson(a with { Who = null, Name = "" }));
            }
        });

    private static void LeaveEditions(ILiteDatabase db, ClubId club, MemberId member, HashSet<string> names) =>
        Each(db, EditionDocument.Collection, club, d => EditionDocument.FromBson(d, "", ""), (editions, e) =>
        {
            if (e.By == member)
            {
                names.Add(e.ByName);
                editions.Update(Unmarked(EditionDocument.ToBson(e with { By = null, ByName = "" })));
            }
        });

    /// <returns>The ids of the tips that are gone.</returns>
    private static HashSet<string> LeaveTips(ILiteDatabase db, ClubId club, MemberId member, HashSet<string> names)
    {
        var gone = new HashSet<string>(StringComparer.Ordinal);
        Each(db, TipDocument.Collection, club, TipDocument.FromBson, (tips, t) =>
        {
            if (t.From == member)
            {
                names.Add(t.FromName);
                gone.Add(t.Id);
                tips.Delete(ClubKeys.Of(club, t.Id, "tip id"));
            }
            else if (t.PassedOnBy == member)
            {
                tips.Update(Unmarked(TipDocument.ToBson(t with { PassedOnBy = t.From, Version = t.Version + 1 })));
            }
        });
        return gone;
    }

    private static void NamesOfProposals(ILiteDatabase db, ClubId club, MemberId member, HashSet<string> names) =>
        Each(db, ProposalDocument.Collection, club, ProposalDocument.FromBson, (_, p) =>
        {
            if (p.By == member)
            {
                names.Add(p.ByName);
            }
        });

    /// <summary>Theirs go unless they were published; of those, and of others', the credit goes. The version grows, so that nobody who read one before brings it back.</summary>
    private static void LeaveProposals(ILiteDatabase db, ClubId club, MemberId member, HashSet<string> names, HashSet<string> tips) =>
        Each(db, ProposalDocument.Collection, club, ProposalDocument.FromBson, (proposals, p) =>
        {
            if (p.By == member && p.State != ProposalState.Published)
            {
                proposals.Delete(ClubKeys.Of(club, p.Id, "proposal id"));
                return;
            }

            var answers = p.Answers.Where(a => a.Value.Any(names.Contains))
                .Aggregate(p.Answers, (all, a) => all.SetItem(a.Key, [.. a.Value.Where(v => !names.Contains(v))]));
            var after = p with
            {
                Answers = answers,
                Changes = CreditLines.Without(p.Changes, names),
                Tip = p.Tip is { } tip && tips.Contains(tip) ? null : p.Tip,
            };
            if (p.By == member)
            {
                after = after with { By = default, ByName = "" };
            }

            if (after != p)
            {
                proposals.Update(Unmarked(ProposalDocument.ToBson(after with { Version = p.Version + 1 })));
            }
        });

    // One at a time: each may be long, and there may be many.
    private static void LeaveLayers(ILiteDatabase db, ClubId club, HashSet<string> names)
    {
        if (names.Count == 0)
        {
            return;
        }

        var layers = db.GetCollection(LayerDocument.Collection);
        foreach (var key in TeachingLookups.KeysOfClub(db, LayerDocument.Collection, club))
        {
            var document = Versions.Find(layers, key)!;
            var (layer, _) = LayerDocument.FromBson(document);
            if (CreditLines.Without(layer, names) is var without && !ReferenceEquals(without, layer))
            {
                document[LayerDocument.Layer] = without;
                layers.Update(Seal.Close(document));
            }
        }
    }

    /// <summary>No save may be taken for the one that was made before somebody was taken out.</summary>
    private static BsonDocument Unmarked(BsonDocument document)
    {
        document[SaveMark.Field] = "";
        return Seal.Close(document);
    }

    // Keys first: a collection must not be changed while it is walked.
    private static void Each<T>(ILiteDatabase db, string collection, ClubId club, Func<BsonDocument, T> read, Action<ILiteCollection<BsonDocument>, T> change)
    {
        var documents = db.GetCollection(collection);
        foreach (var key in TeachingLookups.KeysOfClub(db, collection, club))
        {
            change(documents, read(documents.FindById(key)));
        }
    }
}
