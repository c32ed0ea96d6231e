using ShedBot.Coaching;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.Storage;

namespace ShedBot.Tests.Practice;

/// <summary>What mended cases teach the practice club: ShedBot puts it up, or lets it go live by itself, as chosen at the terminal.</summary>
public sealed class LearningTests : IDisposable
{
    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Proposals_AfterEnoughWereMended_OneWaitsAndIsLookedAtTriedPublishedAndTakenBack()
    {
        await FillAsync(Data, 40);
        var told = await SitAsync("rules", "rules waiting", "1", "rules try", "rules publish", "rules", "rules learn", "rules back 0", "1", "rules log");

        AssertInOrder(
            told,
            "Learnt from mended cases", "It is a proposal and waits for you: rules waiting.", "Handed in by ShedBot", "40 closed cases of 12 members, 40 of them mended", "kinked or bent too tightly",
            "Edition 1 is out", "learnt from its own cases", "Nothing new to learn", "the rules' own word", "Taken back to the project's rules alone", "ShedBot put up");
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = Data, Durable = false }, CancellationToken.None);
        Assert.Equal(2, await store.NewestEditionAsync(ClubId.Practice, CancellationToken.None));
    }

    [Fact]
    public async Task Numbers_LeftOutAndNeverLearnt_ByTheNumbersOfTheCards()
    {
        await FillAsync(Data, 40);
        var told = await SitAsync("rules learning off", "rules learn", "1", "p", "1", "1", "2", "rules settings");

        AssertInOrder(
            told, "it is only counted, and only when somebody asks", "Make it a proposal", "A draft of Rider's", "Pick one to see what it rests on", "Leave it out", "It is left out of this proposal", "Never learnt",
            "Numbers that are never learnt: 1", "Learn again");
        Assert.DoesNotContain("waits for you", told, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Automatic_AsTheClockGoes_GoesLiveOnceAndIsTold()
    {
        // Mended a few days ago: they do not count yet, because they may still come back.
        await FillAsync(Data, 40, Sitting.Noon.AddDays(-5));
        var told = await SitAsync("rules learning automatic", "rules", "skip 2 weeks", "rules", "skip 2 days", "rules editions", "rules log");

        AssertInOrder(told, "goes live by itself within the limits", "by the project's rules alone", "It is tried before it goes live by itself", "Edition 1 is out by itself, as you chose", "Learnt by itself", "ShedBot: Learnt by itself", "ShedBot learnt by itself, as the club has chosen");
        Assert.Equal(1, told.Split("is out by itself").Length - 1);
    }

    [Fact]
    public async Task Choose_WhatIsOutOfItsRangeOrUnclear_IsTold()
    {
        var told = await SitAsync("rules learning at most 30", "rules learning share 200 %", "rules learning at most lots", "rules learning at most 2.5", "rules learning share 10 %");
        AssertInOrder(told, "from 1 to 10 times", "at most 100 %", "Try: rules learning at most 3", "by 2.5 times at most", "10 % of all at most");
    }

    /// <summary>Closed cases are tried in full, made-up riders hardly: here it is what comes of a trial that counts.</summary>
    private static ITrials Trials { get; } = new ClubTrials(() => new CoachOptions(), new RidersTried(4, Stops: 0));

    private string Data => folder.File("practice.shed");

    private Task<string> SitAsync(params string[] lines) => Sitting.AtAsync(Data, Path.Combine(Repository.Root, "knowledge"), lines, trials: Trials);

    /// <summary>Levers that were heavy because of kinked cables, by invented members of the practice club.</summary>
    internal static async Task FillAsync(string data, int count, DateTimeOffset? at = null)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = data, Durable = false }, CancellationToken.None);
        foreach (var n in Enumerable.Range(0, count))
        {
            var (then, id, member) = ((at ?? Sitting.Noon.AddDays(-30)).AddMinutes(n), new CaseId($"made-{n:0000}"), new MemberId($"Invented{n % 12}"));
            CaseEntry Line(EntryKind kind, string subject, string? value = null) => new(1, kind, subject, value, 1, then);
            var closed = Case.New(id, member, BikeId.Of(member), $"made/{n}", then) with
            {
                Phase = CasePhase.Solved,
                Entries = [Line(EntryKind.Complaint, "lever-heavy"), Line(EntryKind.Answer, "follow-cable", "tight"), Line(EntryKind.RepairHeld, "reroute-cable")],
                ClosedAt = then,
                Turn = 1,
                Version = 1,
            };
            await store.SaveAsync(new TurnSaved(closed, null, new Outcome(id, CasePhase.Solved, "reroute-cable", [], 1, "made up", then), []), CancellationToken.None);
        }
    }

    private static void AssertInOrder(string told, params string[] parts)
    {
        if (Environment.GetEnvironmentVariable("LOOK") is { } look) File.AppendAllText(look, told + "\n=========\n");
        var at = 0;
        foreach (var part in parts)
        {
            var found = told.IndexOf(part, at, StringComparison.Ordinal);
            Assert.True(found >= 0, $"'{part}' is not told, or not in its order:\n{told}");
            at = found + part.Length;
        }
    }
}
