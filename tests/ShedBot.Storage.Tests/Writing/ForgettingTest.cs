using System.Diagnostics;
using System.Text;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Service;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Storage.Tests.Writing;

/// <summary>Who was forgotten is not in the files any more, byte by byte.</summary>
public sealed class ForgettingTest : IDisposable
{
    private const string Mark = "marked-for-oblivion";
    private static readonly CancellationToken Ct = CancellationToken.None;
    private static readonly ClubId Twelve = new("12");
    private readonly ScratchDirectory scratch = new();

    private string Log => scratch.File("shed-log.db");

    public void Dispose() => scratch.Dispose();

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Forget_AfterManyTurnsShortAndLong_LeavesNoByteOfItInFileOrLog(bool wholeClub)
    {
        await using (var first = await OpenAsync())
        {
            await TalkAsync(first, Mark, cases: 4);
            await TalkAsync(first, "stays", cases: 4);
        }

        await using var store = await OpenAsync();
        await TalkAsync(store, Mark + "-too", cases: 1);
        Assert.True(FileHolds(scratch.Data, Mark));
        Assert.True(FileHolds(Log, Mark));

        foreach (var person in new[] { Mark, Mark + "-too" }.Where(_ => !wholeClub))
        {
            await store.ForgetMemberAsync(Twelve.Member(person), Ct);
        }

        if (wholeClub)
        {
            await store.ForgetClubAsync(Twelve, Ct);
        }

        await AwaitNoLogAsync(store);
        Assert.False(FileHolds(scratch.Data, Mark));
        Assert.Equal(!wholeClub, FileHolds(scratch.Data, "stays"));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Forget_WhoTaughtMuch_LeavesNoByteOfItInFileOrLog(bool wholeClub)
    {
        await using (var first = await OpenAsync())
        {
            await TeachAsync(first, Mark, from: 1);
            await TeachAsync(first, "stays", from: 10);
        }

        await using var store = await OpenAsync();
        await TeachAsync(store, Mark + "-too", from: 19);
        Assert.True(FileHolds(scratch.Data, Mark));
        Assert.True(FileHolds(Log, Mark));

        foreach (var person in new[] { Mark, Mark + "-too" }.Where(_ => !wholeClub))
        {
            await store.ForgetMemberAsync(Twelve.Member(person), Ct);
        }

        if (wholeClub)
        {
            await store.ForgetClubAsync(Twelve, Ct);
        }

        await AwaitNoLogAsync(store);
        Assert.False(FileHolds(scratch.Data, Mark));
        Assert.Equal(!wholeClub, FileHolds(scratch.Data, "stays"));
        Assert.Equal(wholeClub ? 0 : 27, await store.NewestEditionAsync(Twelve, Ct));
    }

    /// <summary>Nine editions with texts of a line up to half a mebibyte, a tip, proposals, and words that were not understood.</summary>
    private static async Task TeachAsync(LiteShedStore store, string person, int from)
    {
        for (var n = from; n < from + 9; n++)
        {
            var layer = string.Concat(Enumerable.Range(0, 1 << Math.Max(0, (2 * (n - from)) - 3)).Select(i => $"- id: rule-{i}\n  author: {person}\n  said by: \"{person}\"\n"));
            var edition = SampleTeaching.EditionOf(n, person: person, layer: layer) with { ByName = person };
            var line = SampleTeaching.Line(person: person, name: person) with { What = $"published what {person} said" };
            await store.SaveTeachingAsync(SampleTeaching.Act(line) with { Edition = edition }, Ct);
            var proposal = SampleTeaching.ProposalOf($"p{n}", person: person) with
            {
                ByName = person,
                State = n % 2 == 0 ? ProposalState.Published : ProposalState.Draft,
                Changes = "[{\"yaml\":\"author: NAME\",\"credit\":{\"author\":\"NAME\"}}]".Replace("NAME", person, StringComparison.Ordinal),
                Answers = SampleTeaching.NoAnswers.Add("said by", [person]),
            };
            await store.SaveTeachingAsync(SampleTeaching.Act(line) with { Proposal = proposal }, Ct);
            await store.SaveTeachingAsync(
                SampleTeaching.Act(line with { Subject = $"t{n}" }) with { Tip = SampleTeaching.TipOf($"t{n}", person: person) with { FromName = person, Words = layer } }, Ct);
            var c = Sample.Opened($"{person}-{n}", Twelve.Member(person).Value, $"{person}-{n}").Next();
            await store.SaveAsync(c.Saying() with { Unheard = SampleTeaching.Unheard(person, Twelve.Member(person).Value) }, Ct);
        }
    }

    private static async Task AwaitNoLogAsync(LiteShedStore store)
    {
        var waited = Stopwatch.StartNew();
        while (store.Health().LogBytes > 0 && waited.Elapsed < TimeSpan.FromSeconds(20))
        {
            await Task.Delay(10);
        }

        Assert.Equal(0, store.Health().LogBytes);
    }

    private static async Task TalkAsync(LiteShedStore store, string person, int cases)
    {
        var member = Twelve.Member(person);
        for (var n = 0; n < cases; n++)
        {
            var c = Sample.Opened($"{person}-{n}", member.Value, $"{person}-{n}").Next();
            var bike = c.BikeOf().Next(value: person) with { Id = new BikeId($"{person}-bike-{n}") };
            c = c with { Bike = bike.Id };
            await store.SaveAsync(c.Saying(person) with { Bike = bike }, Ct);
            var room = Sample.RoomOf("12", person, c.Place) with { Name = person, Thread = $"{person}-{n}" };
            await store.SaveRoomAsync(room, [], Ct);
            // From a line to several pages of the file, so that the document moves as it grows.
            for (var turn = 0; turn < 12; turn++)
            {
                c = c.Next(string.Concat(Enumerable.Repeat(person + " ", 1 << turn)));
                await store.SaveAsync(c.Saying(person, new string('w', 2_000) + person), Ct);
                room = room with { Name = string.Concat(Enumerable.Repeat(person, turn + 1)), Version = room.Version + 1 };
                await store.SaveRoomAsync(room, [c.Saying("").Say[0].Id], Ct);
            }

            // A log that grows over many pages, saved by itself.
            for (var day = 0; day < 40; day++)
            {
                var done = new ServiceDone($"{person}-{new string('d', 10 * day)}", Sample.Today.PlusDays(day), Sample.Noon, person, null);
                bike = bike.Ridden(1) with { Done = bike.Done.Add(done), Version = bike.Version + 1 };
                await store.SaveBikeAsync(bike, Ct);
            }

            var closed = c.Next(phase: CasePhase.Solved);
            await store.SaveAsync(closed.Saying(person) with { Outcome = closed.OutcomeOf() with { Repair = person } }, Ct);
        }
    }

    /// <summary>Its log is put away by forgetting and by closing only.</summary>
    private Task<LiteShedStore> OpenAsync() => LiteShedStore.OpenAsync(
        new StoreOptions { Path = scratch.Data, CheckpointBytes = 64L << 20, LogAlarmBytes = 128L << 20 }, Ct);

    private static bool FileHolds(string path, string text)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        var bytes = new byte[file.Length];
        file.ReadExactly(bytes);
        return bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes(text)) >= 0;
    }
}
