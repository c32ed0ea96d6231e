using CsCheck;
using LiteDB;
using ShedBot.Storage.Documents;
using JsonSerializer = System.Text.Json.JsonSerializer;

namespace ShedBot.Storage.Tests.Documents;

/// <summary>What is read of a club's rules is what was written, through the very bytes that go into the file.</summary>
public sealed class TeachingRoundTripTest
{
    [Fact]
    public void Edition_Any_ComesBackWholeFromHeadAndTexts() => GeneratedTeaching.Edition.Sample(e =>
    {
        var (layer, learnt) = LayerDocument.FromBson(ThroughBytes(LayerDocument.ToBson(e)));
        Same.Assert(e, EditionDocument.FromBson(ThroughBytes(Marked(EditionDocument.ToBson(e))), layer, learnt));
    });

    [Fact]
    public void Proposal_Any_ComesBackWhole() =>
        GeneratedTeaching.Proposal.Sample(p => Same.Assert(p, ProposalDocument.FromBson(ThroughBytes(Marked(ProposalDocument.ToBson(p))))));

    [Fact]
    public void Tip_Any_ComesBackWhole() => GeneratedTeaching.Tip.Sample(t => Same.Assert(t, TipDocument.FromBson(ThroughBytes(Marked(TipDocument.ToBson(t))))));

    [Fact]
    public void Settings_Any_ComeBackWhole() =>
        GeneratedTeaching.Settings.Sample(s => Same.Assert(s, TeachingSettingsDocument.FromBson(ThroughBytes(Marked(TeachingSettingsDocument.ToBson(s))))));

    [Fact]
    public void Book_Any_ComesBackWhole() =>
        GeneratedTeaching.Book.Sample(b => Same.Assert(b, LearningBookDocument.FromBson(ThroughBytes(Marked(LearningBookDocument.ToBson(b))))));

    [Fact]
    public void Audit_Any_ComesBackWhole() => GeneratedTeaching.Audit.Sample(a => Same.Assert(a, AuditDocument.FromBson(ThroughBytes(AuditDocument.ToBson(a)))));

    [Fact]
    public void Unheard_Any_ComesBackWhole() =>
        GeneratedTeaching.Unheard.Sample(u => Same.Assert(u, UnheardDocument.FromBson(ThroughBytes(UnheardDocument.ToBson(u, 7)))));

    /// <summary>A field that is added to a record and forgotten in the mapping keeps its default, so it never varies here.</summary>
    [Fact]
    public void Generated_EveryProperty_TakesMoreThanOneValue()
    {
        var seen = new Dictionary<string, HashSet<string>>(StringComparer.Ordinal);
        Collect(GeneratedTeaching.Edition, seen);
        Collect(GeneratedTeaching.Proposal, seen);
        Collect(GeneratedTeaching.Tip, seen);
        Collect(GeneratedTeaching.Settings, seen);
        Collect(GeneratedTeaching.Book, seen);
        Collect(GeneratedTeaching.Audit, seen);
        Collect(GeneratedTeaching.Unheard, seen);

        Assert.Equal(69, seen.Count);
        Assert.DoesNotContain(seen, s => s.Value.Count < 2);
    }

    private static void Collect<T>(Gen<T> generated, Dictionary<string, HashSet<string>> seen) => generated.Sample(
        item =>
        {
            foreach (var property in JsonSerializer.SerializeToElement(item, Same.Plain).EnumerateObject())
            {
                var path = typeof(T).Name + "." + property.Name;
                (seen.TryGetValue(path, out var values) ? values : seen[path] = []).Add(property.Value.ToString());
            }
        },
        iter: 200, threads: 1);

    private static BsonDocument Marked(BsonDocument document)
    {
        SaveMark.Put([document], [], []);
        return document;
    }

    private static BsonDocument ThroughBytes(BsonDocument document) => BsonSerializer.Deserialize(BsonSerializer.Serialize(document));
}
