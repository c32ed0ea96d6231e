using System.Text.Json;
using CsCheck;
using LiteDB;
using ShedBot.Coaching.Cards;
using ShedBot.Storage.Documents;
using JsonSerializer = System.Text.Json.JsonSerializer;

namespace ShedBot.Storage.Tests.Documents;

/// <summary>What is read is what was written, through the very bytes that go into the file.</summary>
public sealed class RoundTripTest
{
    [Fact]
    public void Case_Any_ComesBackWhole() =>
        Generated.Case.Sample(c => AssertSame(c, CaseDocument.FromBson(ThroughBytes(CaseDocument.ToBson(c, ["one", "two"])))));

    [Fact]
    public void Bike_Any_ComesBackWhole() =>
        Generated.Bike.Sample(b => AssertSame(b, BikeDocument.FromBson(ThroughBytes(BikeDocument.ToBson(b)))));

    [Fact]
    public void Outcome_Any_ComesBackWhole() =>
        Generated.Outcome.Sample(o => AssertSame(o, OutcomeDocument.FromBson(ThroughBytes(OutcomeDocument.ToBson(o)))));

    [Fact]
    public void Message_Any_ComesBackWhole() =>
        Generated.Message.Sample(m =>
            AssertSame(m, OutboxDocument.FromBson(ThroughBytes(OutboxDocument.ToBson(m, CardJson.Write(m.Card), 7)))));

    [Fact]
    public void Club_Any_ComesBackWhole() =>
        Generated.Club.Sample(c => AssertSame(c, ClubDocument.FromBson(ThroughBytes(ClubDocument.ToBson(c)))));

    [Fact]
    public void Room_Any_ComesBackWhole() =>
        Generated.Room.Sample(r => AssertSame(r, RoomDocument.FromBson(ThroughBytes(RoomDocument.ToBson(r)))));

    [Fact]
    public void Rider_Any_ComesBackWhole() =>
        GeneratedRider.Rider.Sample(r => AssertSame(r, RiderDocument.FromBson(ThroughBytes(RiderDocument.ToBson(r)))));

    [Fact]
    public void Card_Any_ComesBackWholeAndReadsTheSameTwice() =>
        Generated.Card.Sample(c =>
        {
            var text = CardJson.Write(c);
            AssertSame(c, CardJson.Read(text));
            Assert.Equal(text, CardJson.Write(CardJson.Read(text)));
        });

    [Fact]
    public void Time_WithOffsetAndFractions_IsTheSameInstantInUtcToTheMillisecond()
    {
        var time = new DateTimeOffset(2026, 5, 2, 12, 0, 0, TimeSpan.FromHours(5.5)).AddTicks(12_345);
        var back = Times.FromBson(Times.ToBson(time));

        Assert.Equal(TimeSpan.Zero, back.Offset);
        Assert.Equal(new DateTimeOffset(2026, 5, 2, 6, 30, 0, 1, TimeSpan.Zero), back);
    }

    [Fact]
    public void TimeKey_AnyTwo_SortsAsTheTimesDo() =>
        Gen.Select(Gen.DateTimeOffset, Gen.DateTimeOffset).Sample((a, b) =>
            Assert.Equal(
                Math.Sign(a.ToUnixTimeMilliseconds().CompareTo(b.ToUnixTimeMilliseconds())),
                Math.Sign(string.CompareOrdinal(Times.Key(a), Times.Key(b)))));

    /// <summary>A field that is added to a record and forgotten in the mapping keeps its default, so it never varies here.</summary>
    [Fact]
    public void Generated_EveryProperty_TakesMoreThanOneValue()
    {
        var seen = new Dictionary<string, HashSet<string>>();
        Generated.Case.Sample(c => Collect("case", JsonSerializer.SerializeToElement(c, Same.Plain), seen), iter: 200, threads: 1);
        Generated.Bike.Sample(b => Collect("bike", JsonSerializer.SerializeToElement(b, Same.Plain), seen), iter: 200, threads: 1);
        Generated.Outcome.Sample(o => Collect("outcome", JsonSerializer.SerializeToElement(o, Same.Plain), seen), iter: 200, threads: 1);
        Generated.Message.Sample(m => Collect("message", JsonSerializer.SerializeToElement(m, Same.Plain), seen), iter: 200, threads: 1);
        Generated.Club.Sample(c => Collect("club", JsonSerializer.SerializeToElement(c, Same.Plain), seen), iter: 200, threads: 1);
        GeneratedRider.Rider.Sample(r => Collect("rider", JsonSerializer.SerializeToElement(r, Same.Plain), seen), iter: 200, threads: 1);
        Generated.Room.Sample(r => Collect("room", JsonSerializer.SerializeToElement(r, Same.Plain), seen), iter: 200, threads: 1);

        Assert.Contains("case.Open.Serial", seen.Keys);
        // Standing is worked out, and the others are parts that may be missing: their own fields are looked at.
        string[] parts = ["Progress", "Folded", "Pace", "Last", "Before", "Case", "Bike"];
        Assert.Contains("bike.Riding.Last.Before.Kilometres", seen.Keys);
        Assert.Contains("rider.Bike.Value", seen.Keys);
        Assert.Equal([], seen.Where(s => s.Value.Count < 2 && !s.Key.Contains(".Standing", StringComparison.Ordinal)).Select(s => s.Key)
            .Where(k => !parts.Contains(k[(k.LastIndexOf('.') + 1)..])));
    }

    // A lone half of a surrogate pair is no text; UTF-8 has no bytes for it. The Unicode standard, chapter 3.9, says to put U+FFFD.
    [Fact]
    public void Case_LoneSurrogateInTheWords_BecomesTheReplacementCharacterAndStaysReadable()
    {
        var c = Sample.Opened() with { OpeningWords = "a\ud83db" };

        Assert.Equal("a\ufffdb", CaseDocument.FromBson(ThroughBytes(CaseDocument.ToBson(c, []))).OpeningWords);
    }

    private static void Collect(string path, JsonElement value, Dictionary<string, HashSet<string>> seen)
    {
        if (value.ValueKind == JsonValueKind.Object && !path.EndsWith("Facts", StringComparison.Ordinal))
        {
            foreach (var property in value.EnumerateObject())
            {
                Collect($"{path}.{property.Name}", property.Value, seen);
            }

            return;
        }

        if (value.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in value.EnumerateArray())
            {
                Collect(path + "[]", item, seen);
            }

            return;
        }

        (seen.TryGetValue(path, out var values) ? values : seen[path] = []).Add(value.ToString());
    }

    private static BsonDocument ThroughBytes(BsonDocument document) => BsonSerializer.Deserialize(BsonSerializer.Serialize(document));

    private static void AssertSame<T>(T expected, T actual) => Same.Assert(expected, actual);
}
