using System.Text.Json;
using LiteDB;
using ShedBot.Coaching.Cards;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Tests.Documents;

/// <summary>What cannot be read is named.</summary>
public sealed class FieldsTest
{
    [Theory]
    [InlineData("phase", "Dreaming")]
    [InlineData("phase", "1")]
    [InlineData("phase", "Asking, Solved")]
    [InlineData("phase", "asking")]
    public void Case_EnumNameUnknown_NamesFieldAndValue(string field, string value)
    {
        var problem = ProblemOf(d => d[field] = value);

        Assert.Equal("cases", problem.Collection);
        Assert.Equal("case-1", problem.DocumentId);
        Assert.Contains($"'{field}' is '{value}'", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("openingWords")]
    [InlineData("entries")]
    [InlineData("open")]
    [InlineData("turn")]
    [InlineData("lastTurnAt")]
    [InlineData("handled")]
    public void Case_FieldMissingOrOfAnotherKind_NamesIt(string field)
    {
        Assert.Contains($"'{field}'", ProblemOf(d => d.Remove(field)).Message, StringComparison.Ordinal);
        Assert.Contains($"'{field}'", ProblemOf(d => d[field] = true).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Case_AnyFieldChangedWithoutItsSeal_IsNotRead()
    {
        var document = CaseDocument.ToBson(Sample.Opened().Next(), []);
        foreach (var field in document.Keys.Where(k => k != "crc").ToList())
        {
            var changed = BsonSerializer.Deserialize(BsonSerializer.Serialize(document));
            changed[field] = "something else";
            Assert.Throws<StoredDocumentException>(() => CaseDocument.FromBson(changed));
        }
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("null")]
    [InlineData("")]
    [InlineData("{\"title\":\"a\",\"blocks\":[{\"kind\":\"hologram\"}],\"options\":[]}")]
    [InlineData("{\"title\":\"a\",\"blocks\":[],\"options\":[{\"id\":\"a\",\"label\":\"b\",\"role\":\"Shout\"}]}")]
    [InlineData("{\"title\":null,\"blocks\":[],\"options\":[]}")]
    public void Card_TextThatIsNone_IsNotRead(string json)
    {
        Assert.ThrowsAny<JsonException>(() => CardJson.Read(json));

        var message = Sample.Opened().Next().Saying("word").Say[0];
        var document = OutboxDocument.ToBson(message, json, 1);
        Assert.Contains("'card'", Assert.Throws<StoredDocumentException>(() => OutboxDocument.FromBson(document)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("two\nlines")]
    [InlineData("nul\0")]
    public void Key_NotOrdinaryText_IsRefused(string text) => Assert.Throws<ArgumentException>(() => Keys.Checked(text, "place"));

    // Not as a row above: the compiler would mend it on its way into the attribute.
    [Fact]
    public void Key_HalfOfASurrogatePair_IsRefused() => Assert.Throws<ArgumentException>(() => Keys.Checked("half \ud83d pair", "place"));

    [Fact]
    public void Key_Longest_IsTakenAndOneByteMoreIsRefused()
    {
        Assert.Equal(Keys.MaxBytes, Keys.Checked(new string('a', Keys.MaxBytes), "place").Length);
        Assert.Throws<ArgumentException>(() => Keys.Checked(new string('a', Keys.MaxBytes + 1), "place"));
        Assert.Throws<ArgumentException>(() => Keys.Checked(new string('ß', (Keys.MaxBytes / 2) + 1), "place"));
    }

    private static StoredDocumentException ProblemOf(Action<BsonDocument> change)
    {
        var document = CaseDocument.ToBson(Sample.Opened().Next(), []);
        change(document);
        Seal.Close(document);
        return Assert.Throws<StoredDocumentException>(() => CaseDocument.FromBson(document));
    }
}
