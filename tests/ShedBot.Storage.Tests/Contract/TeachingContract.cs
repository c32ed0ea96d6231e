using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;
using static ShedBot.Storage.Tests.SampleTeaching;

namespace ShedBot.Storage.Tests.Contract;

/// <summary>What every store promises of clubs' own rules.</summary>
public abstract class TeachingContract : ForgettingContract
{
    protected static ClubId Thirteen { get; } = new("13");

    protected ITeachingStore Teaching => (ITeachingStore)Shed;

    [Fact]
    public async Task SaveTeaching_AllAtOnce_AllOfItIsFoundAfterReopening()
    {
        var (proposal, tip, settings, edition) = (ProposalOf("p1"), TipOf("t1"), SettingsOf("12"), EditionOf(1));
        var lines = new[] { Line(act: AuditAct.Published), Line(act: AuditAct.TipUsed, subject: "t1") };

        await Teaching.SaveTeachingAsync(new TeachingSaved(Twelve, proposal, tip, settings, edition, [.. lines], [Thanks("one", tip.From), Thanks("two", tip.From)]), Ct);
        await ReopenAsync();

        Same.Assert(proposal, await Teaching.FindProposalAsync(Twelve, "p1", Ct));
        Same.Assert(tip, await Teaching.FindTipAsync(Twelve, "t1", Ct));
        Same.Assert(settings, await Teaching.TeachingSettingsAsync(Twelve, Ct));
        Same.Assert(edition, await Teaching.FindEditionAsync(Twelve, 1, Ct));
        Same.Assert([lines[1] with { Number = 2 }, lines[0] with { Number = 1 }], (await Teaching.AuditAsync(Twelve, long.MaxValue, 100, Ct)).ToArray());
        Assert.Equal(["Thank you: one", "Thank you: two"], (await Shed.UnsaidAsync(TeachingPlace.Of(tip.From), 10, Ct)).Words());
        Assert.Equal(TeachingPlace.Of(tip.From), Assert.Single(await Clubs.UnsaidPlacesAsync(10, Ct)));
    }

    [Fact]
    public async Task Find_NothingSaved_FindsNothing()
    {
        Assert.Equal(0, await Teaching.NewestEditionAsync(Twelve, Ct));
        Assert.Null(await Teaching.FindEditionAsync(Twelve, 1, Ct));
        Assert.Empty(await Teaching.EditionsAsync(Twelve, 100, Ct));
        Assert.Null(await Teaching.FindProposalAsync(Twelve, "p1", Ct));
        Assert.Null(await Teaching.FindTipAsync(Twelve, "t1", Ct));
        Assert.Empty(await Teaching.AuditAsync(Twelve, long.MaxValue, 100, Ct));
        Same.Assert(TeachingSettings.New(Twelve), await Teaching.TeachingSettingsAsync(Twelve, Ct));
    }

    [Fact]
    public async Task Editions_Several_AreListedNewestFirstAndTheNewestIsKnown()
    {
        for (var number = 1; number <= 12; number++)
        {
            await Teaching.SaveTeachingAsync(Act(EditionOf(number)), Ct);
            Assert.Equal(number, await Teaching.NewestEditionAsync(Twelve, Ct));
        }

        Assert.Equal([12, 11, 10], (await Teaching.EditionsAsync(Twelve, 3, Ct)).Select(e => e.Number));
        Same.Assert(EditionOf(7).Head, (await Teaching.EditionsAsync(Twelve, 100, Ct))[5]);
        Same.Assert(EditionOf(7), await Teaching.FindEditionAsync(Twelve, 7, Ct));
        Assert.Null(await Teaching.FindEditionAsync(Twelve, 13, Ct));
    }

    [Fact]
    public async Task SaveTeaching_LayerOfAQuarterMebibyte_ComesBackWhole()
    {
        var layer = string.Concat(Enumerable.Range(0, 8_000).Select(n => $"# {n} grüße, wie öfter 🚲\n"))[..180_000];
        await Teaching.SaveTeachingAsync(Act(EditionOf(1, layer: layer)), Ct);
        await ReopenAsync();

        Assert.Equal(layer, (await Teaching.FindEditionAsync(Twelve, 1, Ct))!.Layer);
        await Assert.ThrowsAnyAsync<ArgumentException>(() => Teaching.SaveTeachingAsync(Act(EditionOf(2, layer: new string('x', (1 << 20) + 1))), Ct));
    }

    [Fact]
    public async Task SaveTeaching_EditionThatIsNotTheNext_IsStaleAndNothingIsKept()
    {
        await Teaching.SaveTeachingAsync(Act(EditionOf(1)), Ct);

        foreach (var number in new[] { 1, 3 })
        {
            await Assert.ThrowsAsync<StaleSaveException>(() => Teaching.SaveTeachingAsync(
                Act(EditionOf(number, person: "2")) with { Proposal = ProposalOf("p1"), Say = [Thanks("x", Twelve.Member("7"))] }, Ct));
        }

        Assert.Equal(1, await Teaching.NewestEditionAsync(Twelve, Ct));
        Assert.Null(await Teaching.FindProposalAsync(Twelve, "p1", Ct));
        Assert.Single(await Teaching.AuditAsync(Twelve, long.MaxValue, 100, Ct));
        Assert.Empty(await Clubs.UnsaidPlacesAsync(10, Ct));
    }

    [Fact]
    public async Task SaveTeaching_SavedBySomebodyElseMeanwhile_IsStale()
    {
        var (proposal, tip, settings) = (ProposalOf("p1"), TipOf("t1"), SettingsOf("12"));
        await Teaching.SaveTeachingAsync(Act(proposal) with { Tip = tip, Settings = settings }, Ct);

        foreach (var late in new[]
        {
            Act(proposal with { Title = "another" }), Act(tip with { Answer = "another" }), Act(settings with { TwoPeople = false }),
            Act(proposal with { Version = 3 }), Act(ProposalOf("p9") with { Version = 2 }),
        })
        {
            await Assert.ThrowsAsync<StaleSaveException>(() => Teaching.SaveTeachingAsync(late, Ct));
        }

        Same.Assert(proposal, await Teaching.FindProposalAsync(Twelve, "p1", Ct));
        Assert.Single(await Teaching.AuditAsync(Twelve, long.MaxValue, 100, Ct));
        await Teaching.SaveTeachingAsync(Act(proposal with { Title = "next", Version = 2 }), Ct);
        Assert.Equal("next", (await Teaching.FindProposalAsync(Twelve, "p1", Ct))!.Title);
    }

    [Fact]
    public async Task SaveTeaching_TheSameActAgain_ChangesNothingAndSaysNothingTwice()
    {
        var act = Act(EditionOf(1)) with { Proposal = ProposalOf("p1"), Say = [Thanks("x", Twelve.Member("7"))] };
        await Teaching.SaveTeachingAsync(act, Ct);
        await Shed.MarkSaidAsync("x", Ct);

        // Done twice from the same state, a second later; and the very same save.
        await Teaching.SaveTeachingAsync(act, Ct);
        await Teaching.SaveTeachingAsync(
            act with { Edition = act.Edition! with { At = Sample.Noon.AddHours(1) }, Audit = [act.Audit[0] with { At = Sample.Noon.AddHours(1) }] }, Ct);

        Assert.Equal(1, await Teaching.NewestEditionAsync(Twelve, Ct));
        Assert.Single(await Teaching.AuditAsync(Twelve, long.MaxValue, 100, Ct));
        Assert.Empty(await Clubs.UnsaidPlacesAsync(10, Ct));
    }

    [Fact]
    public async Task SaveTeaching_TheSameDoneByAnother_IsStale()
    {
        var refused = ProposalOf("p1") with { State = ProposalState.Refused, Reason = "we know" };
        await Teaching.SaveTeachingAsync(Act(refused), Ct);

        await Assert.ThrowsAsync<StaleSaveException>(() => Teaching.SaveTeachingAsync(Act(refused) with { Audit = [Line(person: "2")] }, Ct));
    }

    [Fact]
    public async Task Proposals_ByState_AreListedLastChangedFirst()
    {
        for (var n = 0; n < 5; n++)
        {
            await Teaching.SaveTeachingAsync(Act(ProposalOf($"p{n}", minute: n % 2 == 0 ? n : 60 - n)), Ct);
        }

        await Teaching.SaveTeachingAsync(Act(ProposalOf("p3", minute: 90) with { State = ProposalState.Proposed, Version = 2 }), Ct);

        Assert.Equal(["p1", "p4", "p2", "p0"], (await Teaching.ProposalsAsync(Twelve, ProposalState.Draft, 100, Ct)).Select(p => p.Id));
        Assert.Equal(["p3"], (await Teaching.ProposalsAsync(Twelve, ProposalState.Proposed, 100, Ct)).Select(p => p.Id));
        Assert.Equal(["p1", "p4"], (await Teaching.ProposalsAsync(Twelve, ProposalState.Draft, 2, Ct)).Select(p => p.Id));
        Assert.Empty(await Teaching.ProposalsAsync(Twelve, ProposalState.Published, 100, Ct));
    }

    [Fact]
    public async Task Tips_ByState_AreListedOldestFirst()
    {
        foreach (var (id, minute) in new[] { ("t1", 9), ("t2", 3), ("T2", 3), ("t3", 6) })
        {
            await Teaching.SaveTeachingAsync(Act(TipOf(id, minute: minute)), Ct);
        }

        await Teaching.SaveTeachingAsync(Act(TipOf("t3", minute: 6) with { State = TipState.Declined, Answer = "known", Version = 2 }), Ct);

        Assert.Equal(["T2", "t2", "t1"], (await Teaching.TipsAsync(Twelve, TipState.Waiting, 100, Ct)).Select(t => t.Id));
        Assert.Equal(["t3"], (await Teaching.TipsAsync(Twelve, TipState.Declined, 100, Ct)).Select(t => t.Id));
    }

    [Fact]
    public async Task Audit_Pages_GoBackOneByOne()
    {
        for (var n = 0; n < 11; n++)
        {
            await Teaching.SaveTeachingAsync(Act(Line(subject: $"s{n}")), Ct);
        }

        await Teaching.SaveTeachingAsync(Act(Line("13")), Ct);

        Assert.Equal([11L, 10, 9], (await Teaching.AuditAsync(Twelve, long.MaxValue, 3, Ct)).Select(a => a.Number));
        Assert.Equal([8L, 7, 6], (await Teaching.AuditAsync(Twelve, 9, 3, Ct)).Select(a => a.Number));
        Assert.Equal([1L], (await Teaching.AuditAsync(Twelve, 2, 3, Ct)).Select(a => a.Number));
        Assert.Empty(await Teaching.AuditAsync(Twelve, 1, 3, Ct));
        Assert.Empty(await Teaching.AuditAsync(Twelve, long.MinValue, 3, Ct));
        Assert.Equal([1L], (await Teaching.AuditAsync(Thirteen, long.MaxValue, 3, Ct)).Select(a => a.Number));
    }

    [Fact]
    public async Task Find_UnderAnotherClub_FindsNothing()
    {
        // "12" begins like "1" and "120" like "12"; what divides club from number is tried as part of an id.
        foreach (var club in new[] { "12", "120" })
        {
            await Teaching.SaveTeachingAsync(
                new TeachingSaved(new ClubId(club), ProposalOf("p1", club), TipOf("t1", club), SettingsOf(club), EditionOf(1, club), [Line(club)], []), Ct);
        }

        foreach (var other in new[] { "1", "2", "121", "p1", "practice" }.Select(c => new ClubId(c)))
        {
            Assert.Equal(0, await Teaching.NewestEditionAsync(other, Ct));
            Assert.Null(await Teaching.FindEditionAsync(other, 1, Ct));
            Assert.Empty(await Teaching.EditionsAsync(other, 100, Ct));
            foreach (var id in new[] { "p1", "t1", "2\np1", "12\np1", "\n12\np1", "", new string('p', 5_000) })
            {
                Assert.Null(await Teaching.FindProposalAsync(other, id, Ct));
                Assert.Null(await Teaching.FindTipAsync(other, id, Ct));
            }

            Assert.Empty(await Teaching.ProposalsAsync(other, ProposalState.Draft, 100, Ct));
            Assert.Empty(await Teaching.TipsAsync(other, TipState.Waiting, 100, Ct));
            Assert.Empty(await Teaching.AuditAsync(other, long.MaxValue, 100, Ct));
            Assert.Equal(0, (await Teaching.TeachingSettingsAsync(other, Ct)).Version);
        }

        Assert.Equal(new ClubId("120"), (await Teaching.FindProposalAsync(new ClubId("120"), "p1", Ct))!.Club);
        foreach (var none in new[] { default, new ClubId("12/1"), new ClubId("12\np1") })
        {
            await Assert.ThrowsAnyAsync<ArgumentException>(() => Teaching.FindProposalAsync(none, "p1", Ct));
            await Assert.ThrowsAnyAsync<ArgumentException>(() => Teaching.NewestEditionAsync(none, Ct));
        }
    }

    [Fact]
    public async Task SaveTeaching_NotAllOfOneClubOrNoMember_IsRefused()
    {
        foreach (var wrong in new[]
        {
            Act(Line("13")) with { Club = Twelve }, Act(ProposalOf("p1", "13")) with { Audit = [Line()], Club = Twelve }, Act(Line()) with { Tip = TipOf("t1", "13") },
            Act(Line()) with { Settings = SettingsOf("13") }, Act(Line()) with { Edition = EditionOf(1, "13") },
            Act(ProposalOf("p1") with { By = Thirteen.Member("1") }), Act(TipOf("t1") with { From = new("somebody") }), Act(TipOf("t1") with { PassedOnBy = default }),
            Act(EditionOf(1) with { By = Thirteen.Member("1") }), Act(Line() with { Who = Thirteen.Member("1") }), Act(Line() with { Number = 4 }),
            Act(Line()) with { Audit = [] }, Act(ProposalOf("p1") with { Version = 0 }), Act(EditionOf(0)), Act(ProposalOf("p\n1")),
        })
        {
            await Assert.ThrowsAnyAsync<ArgumentException>(() => Teaching.SaveTeachingAsync(wrong, Ct));
        }

        Assert.Empty(await Teaching.AuditAsync(Twelve, long.MaxValue, 100, Ct));
    }

    [Fact]
    public async Task SaveTeaching_InNoClub_IsKeptForPractice()
    {
        var wren = new Teacher(ClubId.Practice, Sample.Wren, "Wren", TeachingRights.All);
        var proposal = Proposal.New("p1", wren, "mend", Sample.Noon) with { Version = 1 };
        var line = new AuditEntry(ClubId.Practice, 0, wren.Who, "Wren", AuditAct.Began, "p1", "", Sample.Noon);

        await Teaching.SaveTeachingAsync(Act(line) with { Proposal = proposal }, Ct);

        Same.Assert(proposal, await Teaching.FindProposalAsync(ClubId.Practice, "p1", Ct));
    }

    [Fact]
    public async Task Lists_LimitOutOfRange_Throws()
    {
        foreach (var limit in new[] { 0, 101 })
        {
            await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => Teaching.EditionsAsync(Twelve, limit, Ct));
            await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => Teaching.ProposalsAsync(Twelve, ProposalState.Draft, limit, Ct));
            await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => Teaching.TipsAsync(Twelve, TipState.Waiting, limit, Ct));
            await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => Teaching.AuditAsync(Twelve, 9, limit, Ct));
        }

        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => Teaching.UnheardAsync(Twelve, 2_001, Ct));
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => Teaching.ClosedCasesAsync(Twelve, 20_001, Ct));
    }

    [Fact]
    public async Task SaveTeaching_ManyPublishAtOnce_OneGetsEachNumberAndTheOthersAreTold()
    {
        const int Moderators = 8, Each = 12;
        var stale = 0;
        await Task.WhenAll(Enumerable.Range(0, Moderators).Select(m => Task.Run(async () =>
        {
            for (var done = 0; done < Each;)
            {
                var next = await Teaching.NewestEditionAsync(Twelve, Ct) + 1;
                try
                {
                    await Teaching.SaveTeachingAsync(Act(EditionOf(next, person: $"{m}") with { What = $"{m}/{done}" }) with { Audit = [Line(person: $"{m}", subject: $"{m}/{done}")] }, Ct);
                    done++;
                }
                catch (StaleSaveException)
                {
                    Interlocked.Increment(ref stale);
                }
            }
        })));

        var editions = await Teaching.EditionsAsync(Twelve, 100, Ct);
        var audit = await Teaching.AuditAsync(Twelve, long.MaxValue, 100, Ct);
        Assert.Equal(Enumerable.Range(1, Moderators * Each).Reverse(), editions.Select(e => e.Number));
        Assert.Equal(Moderators * Each, editions.Select(e => e.What).Distinct().Count());
        Assert.Equal(editions.Select(e => ((long)e.Number, e.What)), audit.Select(a => (a.Number, a.Subject)));
        Assert.True(stale > 0, "nobody ever came too late, so nothing was tried");
    }

    [Fact]
    public async Task SaveTeaching_TwoChangeOneProposalAtOnce_OneIsTold()
    {
        await Teaching.SaveTeachingAsync(Act(ProposalOf("p1")), Ct);

        var tries = await Task.WhenAll(Enumerable.Range(0, 16).Select(m => Task.Run(async () =>
        {
            try
            {
                await Teaching.SaveTeachingAsync(Act(ProposalOf("p1") with { Title = $"of {m}", Version = 2 }) with { Audit = [Line(person: $"{m}")] }, Ct);
                return m;
            }
            catch (StaleSaveException)
            {
                return -1;
            }
        })));

        var won = Assert.Single(tries, t => t >= 0);
        Assert.Equal($"of {won}", (await Teaching.FindProposalAsync(Twelve, "p1", Ct))!.Title);
        Assert.Equal([Twelve.Member($"{won}"), Twelve.Member("1")], (await Teaching.AuditAsync(Twelve, long.MaxValue, 100, Ct)).Select(a => a.Who!.Value));
    }
}
