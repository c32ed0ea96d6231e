using System.Text;
using LiteDB;
using ShedBot.Coaching.Cases;
using ShedBot.Storage.Documents;
using ShedBot.Storage.Opening;

namespace ShedBot.Storage.Tests.Opening;

/// <summary>A damaged file never passes for a sound one.</summary>
public sealed class DamageTest : IDisposable
{
    private static readonly CancellationToken Ct = CancellationToken.None;
    private readonly ScratchDirectory scratch = new();

    public void Dispose() => scratch.Dispose();

    [Fact]
    public async Task Open_SoundStore_TellsWhatIsInIt()
    {
        await FillAsync(30);
        await using var store = await OpenAsync();

        Assert.True(store.Integrity.IsSound);
        Assert.Equal(30, store.Integrity.Counts["cases"]);
        Assert.Equal(60, store.Integrity.Counts["outbox"]);
        Assert.StartsWith("sound; about 1, arrivals 0, audit 0, bikes 30, cases 30, clubs 0, editions 0, layers 0, learning 0, outbox 60, outcomes 0, proposals 0, riders 0, rooms 30, teaching 0, tips 0, unheard 0; schema 7;", store.Integrity.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Open_OneLetterOfACaseChanged_IsRefusedUntouched()
    {
        await FillAsync(30);
        var bytes = File.ReadAllBytes(scratch.Data);
        var at = bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes("clutch wont"));
        bytes[at] = (byte)'k';
        File.WriteAllBytes(scratch.Data, bytes);

        var refusal = await AssertRefusedUntouched();
        Assert.Contains("check sum", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("backup", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Open_AnyPageAfterTheFirstFilledWithRubbish_IsRefusedUntouchedOrHeldNothing()
    {
        await FillAsync(30);
        var whole = File.ReadAllBytes(scratch.Data);
        var found = 0;
        for (var page = 1; page < whole.Length / 8192; page++)
        {
            var bytes = (byte[])whole.Clone();
            bytes.AsSpan(page * 8192, 8192).Fill(0xA5);
            File.WriteAllBytes(scratch.Data, bytes);
            var before = scratch.Contents();
            try
            {
                await (await OpenAsync()).DisposeAsync();
                // Only an empty page may be rubbish and nobody the wiser: every document was read whole, so all of them are there.
                await AssertAllThereAsync(30);
            }
            catch (StoreRefusedException e)
            {
                Assert.Equal(RefusalCodes.Damaged, e.Code);
                Assert.Equal(before, scratch.Contents());
                found++;
            }
        }

        Assert.True(found > whole.Length / 8192 / 2, $"{found} of {(whole.Length / 8192) - 1} pages");
    }

    [Fact]
    public async Task Open_CutInTheMiddle_IsRefusedUntouched()
    {
        await FillAsync(60);
        using (var file = new FileStream(scratch.Data, FileMode.Open))
        {
            file.SetLength(file.Length / 2 / 8192 * 8192);
        }

        await AssertRefusedUntouched();
    }

    [Fact]
    public async Task Open_IndexMissing_IsRefusedUntouched()
    {
        await FillAsync(3);
        using (var db = Lite.Open(scratch.Data))
        {
            db.GetCollection(CaseDocument.Collection).DropIndex(CaseDocument.ByMember);
            db.Checkpoint();
        }

        Assert.Contains(CaseDocument.ByMember, (await AssertRefusedUntouched()).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(CaseDocument.ByOpenPlace)]
    [InlineData(CaseDocument.ByPlace)]
    public async Task Open_OneLetterOfAnIndexKeyChanged_IsRefusedUntouched(string index)
    {
        await FillAsync(3);
        var bytes = File.ReadAllBytes(scratch.Data);
        var key = Encoding.UTF8.GetBytes("member-2\nshed-corner");
        // The key stands in the document and in the index; the fifth byte of a page says what kind it is, and 3 is an index page.
        // The longer of the two keys goes on with a line feed.
        var at = Enumerable.Range(0, bytes.Length - key.Length)
            .Single(n => bytes.AsSpan(n, key.Length).SequenceEqual(key) && bytes[(n / 8192 * 8192) + 4] == 3
                && (bytes[n + key.Length] == '\n') == (index == CaseDocument.ByPlace));
        bytes[at + 7] = (byte)'7';
        File.WriteAllBytes(scratch.Data, bytes);

        Assert.Contains($"index {index} ", (await AssertRefusedUntouched()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Open_OneLetterOfARoomChanged_IsRefusedUntouched()
    {
        await FillAsync(1);
        var bytes = File.ReadAllBytes(scratch.Data);
        bytes[bytes.AsSpan().IndexOf("Rattling gears"u8)] = (byte)'B';
        File.WriteAllBytes(scratch.Data, bytes);

        Assert.Contains("In rooms, 'place-1'", (await AssertRefusedUntouched()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Open_PhaseOfANewerVersion_IsRefusedAndNamed()
    {
        await FillAsync(3);
        using (var db = Lite.Open(scratch.Data))
        {
            var cases = db.GetCollection(CaseDocument.Collection);
            var document = cases.FindById("case-1");
            document["phase"] = "Dreaming";
            cases.Update(Seal.Close(document));
            db.Checkpoint();
        }

        var refusal = await AssertRefusedUntouched();
        Assert.Contains("'case-1'", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("'Dreaming'", refusal.Message, StringComparison.Ordinal);
    }

    private async Task<StoreRefusedException> AssertRefusedUntouched()
    {
        var before = scratch.Contents();
        var refusal = await Assert.ThrowsAsync<StoreRefusedException>(OpenAsync);

        Assert.Equal(RefusalCodes.Damaged, refusal.Code);
        Assert.Equal(before, scratch.Contents());
        return refusal;
    }

    private async Task FillAsync(int cases)
    {
        await using var store = await OpenAsync();
        for (var n = 1; n <= cases; n++)
        {
            var c = Sample.Opened($"case-{n}", $"member-{n}").Next();
            await store.SaveAsync(c.Saying("one", "two") with { Bike = c.BikeOf().Next() }, Ct);
            await store.SaveRoomAsync(Sample.RoomOf("12", $"member-{n}", $"place-{n}") with { Name = "Rattling gears" }, [], Ct);
        }
    }

    private async Task AssertAllThereAsync(int cases)
    {
        await using var store = await OpenAsync();
        for (var n = 1; n <= cases; n++)
        {
            Same.Assert(Sample.Opened($"case-{n}", $"member-{n}").Next(), await store.FindCaseAsync(new CaseId($"case-{n}"), Ct));
        }
    }

    private Task<LiteShedStore> OpenAsync() => LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, Ct);
}
