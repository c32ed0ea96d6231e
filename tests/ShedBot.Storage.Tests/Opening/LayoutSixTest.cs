using System.Collections.Immutable;
using ShedBot.Coaching.Teaching.Moves;
using static ShedBot.Storage.Tests.SampleTeaching;

namespace ShedBot.Storage.Tests.Opening;

/// <summary>A file that the last program of layout 6 wrote, kept here as it was: a club with an edition, a proposal, a tip and choices, another with choices, and closed cases.</summary>
public sealed class LayoutSixTest : IDisposable
{
    private static readonly CancellationToken Ct = CancellationToken.None;
    private readonly ScratchDirectory scratch = new();

    public LayoutSixTest() => Packed.File(6, scratch);

    public void Dispose() => scratch.Dispose();

    [Fact]
    public async Task Open_FileOfLayoutSix_HasAllThatWasInItAndNothingThatIsNeverLearnt()
    {
        await (await OpenAsync()).DisposeAsync();
        await using var store = await OpenAsync();

        Assert.StartsWith(
            "sound; about 1, arrivals 0, audit 2, bikes 0, cases 3, clubs 0, editions 1, layers 1, learning 0, outbox 0, outcomes 3, proposals 1, riders 0, rooms 0, "
            + "teaching 2, tips 1, unheard 0; schema 7;",
            store.Integrity.ToString(), StringComparison.Ordinal);
        Same.Assert(SettingsOf("12"), await store.TeachingSettingsAsync(Twelve, Ct));
        Same.Assert(SettingsOf("13"), await store.TeachingSettingsAsync(new("13"), Ct));
        Same.Assert(EditionOf(1), await store.FindEditionAsync(Twelve, 1, Ct));
        Same.Assert(LearningBook.New(Twelve), await store.LearningBookAsync(Twelve, Ct));
    }

    [Fact]
    public async Task Open_FileOfLayoutSix_TakesChoicesAndNotesFromNowOn()
    {
        await using (var store = await OpenAsync())
        {
            var never = SettingsOf("12", version: 2) with { Off = ImmutableSortedSet.Create(StringComparer.Ordinal, "odds lost-ball") };
            await store.SaveTeachingAsync(Act(never) with { Book = LearningBook.New(Twelve).Next() }, Ct);
            await store.ForgetMemberAsync(Twelve.Member("7"), Ct);
        }

        await using var again = await OpenAsync();
        Assert.Equal(["odds lost-ball"], (await again.TeachingSettingsAsync(Twelve, Ct)).Off);
        Assert.Equal((EditionOf(1).Learnt, 1), ((await again.LearningBookAsync(Twelve, Ct)).Anew, (await again.LearningBookAsync(Twelve, Ct)).Forgotten));
    }

    private Task<LiteShedStore> OpenAsync() => LiteShedStore.OpenAsync(new StoreOptions { Path = scratch.Data }, Ct);
}
