using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching.Moves;
using static ShedBot.Storage.Tests.SampleTeaching;

namespace ShedBot.Storage.Tests.Contract;

/// <summary>What every store promises of the notes of clubs' learning, and of which cases are closed.</summary>
public abstract class LearningContract : TaughtForgettingContract
{
    private static readonly TeachingSaved Nothing = new(Twelve, null, null, null, null, [], []);

    [Fact]
    public async Task LearningBook_Saved_IsFoundAfterReopeningByItsOwnClub()
    {
        Same.Assert(LearningBook.New(Twelve), await Teaching.LearningBookAsync(Twelve, Ct));
        await Teaching.SaveTeachingAsync(Nothing with { Book = BookOf(1) }, Ct);
        await ReopenAsync();

        Same.Assert(BookOf(1), await Teaching.LearningBookAsync(Twelve, Ct));
        Same.Assert(LearningBook.New(Thirteen), await Teaching.LearningBookAsync(Thirteen, Ct));
        Assert.Empty(await Teaching.AuditAsync(Twelve, long.MaxValue, 10, Ct));
    }

    [Fact]
    public async Task LearningBook_SavedBySomebodyElseMeanwhile_IsStaleAndNothingIsKept()
    {
        await Teaching.SaveTeachingAsync(Nothing with { Book = BookOf(1) }, Ct);

        foreach (var late in new[] { BookOf(1) with { Anew = "" }, BookOf(3) })
        {
            await Assert.ThrowsAsync<StaleSaveException>(() => Teaching.SaveTeachingAsync(Act(EditionOf(1)) with { Book = late }, Ct));
        }

        Assert.Equal(0, await Teaching.NewestEditionAsync(Twelve, Ct));
        await Teaching.SaveTeachingAsync(Act(EditionOf(1)) with { Book = BookOf(2) }, Ct);
        // Two processes did the same round: the second one's edition and notes are both too late.
        await Assert.ThrowsAsync<StaleSaveException>(() => Teaching.SaveTeachingAsync(Act(EditionOf(1, person: "2")) with { Book = BookOf(2) with { Looked = "else" } }, Ct));
        Assert.Equal(1, await Teaching.NewestEditionAsync(Twelve, Ct));
    }

    [Fact]
    public async Task SaveTeaching_AnActWithoutALineOfAudit_IsRefusedUnlessItIsTheNotesAlone()
    {
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Teaching.SaveTeachingAsync(Nothing, Ct));
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Teaching.SaveTeachingAsync(Nothing with { Book = BookOf(1), Edition = EditionOf(1) }, Ct));
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Teaching.SaveTeachingAsync(Nothing with { Book = BookOf(1) with { Club = Thirteen } }, Ct));
    }

    [Fact]
    public async Task ClosedMark_CountsWhatIsClosedByThenInTheOneClub()
    {
        foreach (var (id, member, minute) in new[] { ("a", "12/1", 5), ("b", "12/2", 9), ("c", "120/1", 6), ("d", "1/2", 6) })
        {
            await CloseAsync(id, member, minute);
        }

        await Shed.SaveAsync(Sample.Opened("open", "12/1").Next().Saying(), Ct);

        Assert.Equal((0, 1, 1, 2), ((await MarkAsync(4)).Count, (await MarkAsync(5)).Count, (await MarkAsync(8)).Count, (await MarkAsync(9)).Count));
        Assert.Equal(await MarkAsync(5), await MarkAsync(8));
        Assert.NotEqual((await MarkAsync(8)).Of, (await MarkAsync(9)).Of);
        Assert.Equal(1, (await Teaching.ClosedMarkAsync(new("1"), Sample.Noon.AddDays(1), Ct)).Count);
    }

    [Fact]
    public async Task ClosedMark_OfCasesThatCameBackOrWereTakenOut_IsAnother()
    {
        var first = await CloseAsync("a", "12/1", 5);
        await CloseAsync("b", "12/2", 6);
        var before = await MarkAsync(10);

        await Shed.SaveAsync(first.Next("came back").Saying(), Ct);
        var back = await MarkAsync(10);
        await Clubs.ForgetMemberAsync(Twelve.Member("2"), Ct);

        Assert.Equal((2, 1, 0), (before.Count, back.Count, (await MarkAsync(10)).Count));
        Assert.Equal(2, new[] { before.Of, back.Of }.Distinct().Count());
    }

    [Fact]
    public async Task ForgetMember_WithClosedCases_NotesThatWhatWasLearntIsToBeCountedAnew()
    {
        await Teaching.SaveTeachingAsync(Act(EditionOf(1)), Ct);
        await Teaching.SaveTeachingAsync(Act(EditionOf(2) with { Learnt = "learnt 1\nodds lost-ball 2\n" }) with { Book = BookOf(1) with { Anew = "" } }, Ct);
        await CloseAsync("a", "12/7", 5);

        await Clubs.ForgetMemberAsync(Twelve.Member("7"), Ct);
        await ReopenAsync();

        var book = await Teaching.LearningBookAsync(Twelve, Ct);
        Assert.Equal(("learnt 1\nodds lost-ball 2\n", 2, (DateTimeOffset?)null, "", 2), (book.Anew, book.Forgotten, book.LookedAt, book.Looked, book.Version));
        Assert.Equal(12, book.QuietUntil);
        // Nobody who read the notes before takes the wish away.
        await Assert.ThrowsAsync<StaleSaveException>(() => Teaching.SaveTeachingAsync(Nothing with { Book = BookOf(2) with { Anew = "" } }, Ct));
        Same.Assert(LearningBook.New(Thirteen), await Teaching.LearningBookAsync(Thirteen, Ct));
    }

    [Fact]
    public async Task ForgetMember_WhileACountAnewStillWaits_KeepsWhatIsToBeCounted()
    {
        await Teaching.SaveTeachingAsync(Act(EditionOf(1) with { Learnt = "" }) with { Book = BookOf(1) with { Anew = "learnt 1\nodds lost-ball 3\n" } }, Ct);
        await CloseAsync("a", "12/7", 5);

        await Clubs.ForgetMemberAsync(Twelve.Member("7"), Ct);

        Assert.Equal("learnt 1\nodds lost-ball 3\n", (await Teaching.LearningBookAsync(Twelve, Ct)).Anew);
    }

    [Fact]
    public async Task ForgetMember_WithoutClosedCases_NotesNothing()
    {
        await Teaching.SaveTeachingAsync(Act(EditionOf(1)), Ct);
        await Shed.SaveAsync(Sample.Opened("open", "12/7").Next().Saying(), Ct);

        await Clubs.ForgetMemberAsync(Twelve.Member("7"), Ct);

        Same.Assert(LearningBook.New(Twelve), await Teaching.LearningBookAsync(Twelve, Ct));
    }

    [Fact]
    public async Task ForgetMember_CalledLikeANumber_LeavesWhatWasCountedAsItIs()
    {
        var counted = ProposalOf("p1") with { Sheet = "", Learnt = "learnt 1\n", Answers = NoAnswers.Add("size", ["40", "38", "12"]), By = Twelve.Member("2") };
        await Teaching.SaveTeachingAsync(Act(counted) with { Audit = [Line(person: "2")] }, Ct);
        await Teaching.SaveTeachingAsync(Act(TipOf("t2") with { FromName = "12" }), Ct);

        await Clubs.ForgetMemberAsync(Twelve.Member("7"), Ct);

        Assert.Equal(new[] { "40", "38", "12" }, (await Teaching.FindProposalAsync(Twelve, "p1", Ct))!.Answers["size"].ToArray());
    }

    [Fact]
    public async Task ForgetClub_ThatLearnt_LeavesNoNotes()
    {
        await Teaching.SaveTeachingAsync(Nothing with { Book = BookOf(1) }, Ct);
        await Teaching.SaveTeachingAsync(Nothing with { Club = Thirteen, Book = BookOf(1) with { Club = Thirteen } }, Ct);

        await Clubs.ForgetClubAsync(Twelve, Ct);

        Same.Assert(LearningBook.New(Twelve), await Teaching.LearningBookAsync(Twelve, Ct));
        Assert.Equal(1, (await Teaching.LearningBookAsync(Thirteen, Ct)).Version);
    }

    private static LearningBook BookOf(int version) => new(
        Twelve, Sample.Noon, "Proposals 2-ab", "learnt 1\nodds lost-ball 3\n", 1, 12, version);

    private Task<ClosedMark> MarkAsync(int minute) => Teaching.ClosedMarkAsync(Twelve, Sample.Noon.AddMinutes(minute), Ct);

    private async Task<Case> CloseAsync(string id, string member, int minute)
    {
        var at = Sample.Noon.AddMinutes(minute);
        var closed = Sample.Opened(id, member).Next(phase: CasePhase.Solved) with { LastTurnAt = at, ClosedAt = at };
        await Shed.SaveAsync(closed.Saying() with { Outcome = closed.OutcomeOf() }, Ct);
        return closed;
    }
}
