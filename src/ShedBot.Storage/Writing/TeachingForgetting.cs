using System.Globalization;
using LiteDB;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Reading;

namespace ShedBot.Storage.Writing;

/// <summary>Takes somebody out of what is kept of a club's rules, inside the transaction it is called in: what they published stays, without them.</summary>
internal sealed class TeachingForgetting
{
    private static readonly string[] Collections =
    [
        EditionDocument.Collection, LayerDocument.Collection, ProposalDocument.Collection, TipDocument.Collection, AuditDocument.Collection, UnheardDocument.Collection,
    ];

    private readonly ILiteDatabase db;
    private readonly MemberId member;
    private readonly ClubId club;
    private readonly HashSet<string> tips = new(StringComparer.Ordinal);
    private readonly HashSet<string> about = new(StringComparer.Ordinal);
    private readonly HashSet<string> names = new(StringComparer.Ordinal);
    private readonly HashSet<string> others = new(StringComparer.Ordinal) { "" };

    private TeachingForgetting(ILiteDatabase db, MemberId member) => (this.db, this.member, club) = (db, member, ClubId.Serving(member));

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
        db.GetCollection(LearningBookDocument.Collection).Delete(club.Value);
    }

    public static void Member(ILiteDatabase db, MemberId member)
    {
        var forgetting = new TeachingForgetting(db, member);
        UnheardWriter.Drop(db, forgetting.club, d => d[UnheardDocument.Member].AsString == member.Value);
        forgetting.Gather();
        forgetting.LeaveTips();
        forgetting.LeaveProposals();
        forgetting.LeaveEditions();
        forgetting.LeaveAudit();
        forgetting.LeaveLayers();
    }

    /// <summary>
    /// Looks through all for what the member was called, and for the acts that are about them. A name that another of the club goes by is not theirs alone, so
    /// it stays where it is: nobody can take others' credit away by calling themselves as they do.
    /// </summary>
    private void Gather()
    {
        Each(TipDocument.Collection, TipDocument.FromBson, (_, t) =>
        {
            Called(t.From, t.FromName);
            if (t.From == member)
            {
                tips.Add(t.Id);
            }
        });
        Each(ProposalDocument.Collection, ProposalDocument.FromBson, (_, p) =>
        {
            Called(p.By, p.ByName);
            if (p.By == member || (p.Tip is { } tip && tips.Contains(tip)))
            {
                about.Add(p.Id);
            }
        });
        Each(EditionDocument.Collection, d => EditionDocument.FromBson(d, "", ""), (_, e) =>
        {
            Called(e.By, e.ByName);
            if (e.By == member || (e.Proposal is { } proposal && about.Contains(proposal)))
            {
                about.Add(e.Number.ToString(CultureInfo.InvariantCulture));
            }
        });
        Each(AuditDocument.Collection, AuditDocument.FromBson, (_, a) => Called(a.Who, a.Name));
        names.ExceptWith(others);
    }

    private void Called(MemberId? who, string name) => (who == member ? names : others).Add(name);

    private void LeaveTips() => Each(TipDocument.Collection, TipDocument.FromBson, (kept, t) =>
    {
        if (t.From == member)
        {
            kept.Delete(ClubKeys.Of(club, t.Id, "tip id"));
        }
        else if (t.PassedOnBy == member)
        {
            kept.Update(Unmarked(TipDocument.ToBson(t with { PassedOnBy = t.From, Version = t.Version + 1 })));
        }
    });

    /// <summary>Theirs go unless they were published; of those, and of others', the credit goes. The version grows, so that nobody who read one before brings it back.</summary>
    private void LeaveProposals() => Each(ProposalDocument.Collection, ProposalDocument.FromBson, (proposals, p) =>
    {
        if (p.By == member && p.State != ProposalState.Published)
        {
            proposals.Delete(ClubKeys.Of(club, p.Id, "proposal id"));
            return;
        }

        var after = p with
        {
            // What was counted stands there as numbers, and they are nobody's name.
            Answers = p is { Sheet.Length: 0, Learnt.Length: > 0 } ? p.Answers : p.Answers.Where(a => a.Value.Any(names.Contains))
                .Aggregate(p.Answers, (all, a) => all.SetItem(a.Key, [.. a.Value.Where(v => !names.Contains(v))])),
            Changes = CreditChanges.Without(p.Changes, names),
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

    private void LeaveEditions() => Each(EditionDocument.Collection, d => EditionDocument.FromBson(d, "", ""), (editions, e) =>
    {
        if (e.By == member)
        {
            editions.Update(Unmarked(EditionDocument.ToBson(e with { By = null, ByName = "" })));
        }
    });

    /// <summary>A line about a tip may quote it, and one about a proposal may tell whose word it was: neither is left.</summary>
    private void LeaveAudit() => Each(AuditDocument.Collection, AuditDocument.FromBson, (audit, a) =>
    {
        var after = a.Who == member ? a with { Who = null, Name = "" } : a;
        if (tips.Contains(a.Subject))
        {
            after = after with { What = "" };
        }
        else if (a.Who == member || about.Contains(a.Subject))
        {
            after = after with { What = names.Aggregate(after.What, (what, name) => what.Replace(name, CreditLines.Nobody, StringComparison.Ordinal)) };
        }

        if (after != a)
        {
            audit.Update(AuditDocument.ToBson(after));
        }
    });

    // One at a time: each may be long, and there may be many.
    private void LeaveLayers()
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
            if (CreditLines.Without(layer, names) is var without && without != layer)
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
    private void Each<T>(string collection, Func<BsonDocument, T> read, Action<ILiteCollection<BsonDocument>, T> change)
    {
        var documents = db.GetCollection(collection);
        foreach (var key in TeachingLookups.KeysOfClub(db, collection, club))
        {
            change(documents, read(documents.FindById(key)));
        }
    }
}
