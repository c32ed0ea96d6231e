using System.Diagnostics;
using System.Text;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;

namespace ShedBot.Storage.Tests.Writing;

/// <summary>Who was forgotten is not in the files any more, byte by byte.</summary>
public sealed class ForgettingTest : IDisposable
{
    private const string Mark = "marked-for-oblivion";
    private static readonly CancellationToken Ct = CancellationToken.None;
    private static readonly ClubId Twelve = new("12");
    private readonly ScratchDirectory scratch = new();

    public void Dispose() => scratch.Dispose();

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Forget_AfterManyTurnsShortAndLong_LeavesNoByteOfItInFileOrLog(bool wholeClub)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data, CheckpointBytes = 1 << 20 }, Ct);
        foreach (var person in new[] { Mark, "stays" })
        {
            await TalkAsync(store, person);
        }

        Assert.True(FilesHold(Mark));

        _ = wholeClub ? await store.ForgetClubAsync(Twelve, Ct) : await store.ForgetMemberAsync(Twelve.Member(Mark), Ct);

        var waited = Stopwatch.StartNew();
        while (store.Health().LogBytes > 0 && waited.Elapsed < TimeSpan.FromSeconds(20))
        {
            await Task.Delay(10);
        }

        Assert.Equal(0, store.Health().LogBytes);
        Assert.False(FilesHold(Mark));
        Assert.Equal(!wholeClub, FilesHold("stays"));
    }

    private static async Task TalkAsync(LiteShedStore store, string person)
    {
        var member = Twelve.Member(person);
        for (var n = 0; n < 5; n++)
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

            var closed = c.Next(phase: CasePhase.Solved);
            await store.SaveAsync(closed.Saying(person) with { Outcome = closed.OutcomeOf() with { Repair = person } }, Ct);
        }
    }

    private bool FilesHold(string text) => Directory.GetFiles(scratch.Path).Where(f => !f.EndsWith(".lock", StringComparison.Ordinal)).Any(f =>
    {
        using var file = new FileStream(f, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        var bytes = new byte[file.Length];
        file.ReadExactly(bytes);
        return bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes(text)) >= 0;
    });
}
