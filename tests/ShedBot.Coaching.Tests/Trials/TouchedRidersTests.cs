using ShedBot.Coaching.Simulating.Riders;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Coaching.Trials;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Tests.Trials;

/// <summary>Whom a change touches.</summary>
public class TouchedRidersTests
{
    private static readonly TrialScope Nothing = new([], [], [], [], [], false, false);

    [Fact]
    public void Of_Nothing_IsNobody() => Assert.Empty(Of(Nothing));

    [Fact]
    public void Of_WordsOnly_IsNobody() => Assert.Empty(Of(Nothing with { Words = true, Rescaled = true }));

    [Fact]
    public void Of_Cause_IsWhoHasIt() => Assert.Equal([new(With: "wheel-worn")], Of(Nothing with { Faults = ["wheel-worn"] }));

    [Fact]
    public void Of_CauseThatTheWorldDoesNotKnow_IsWhoComplainsOfWhatItGives() => Assert.Equal(
        [new(Complaint: "hums"), new(Complaint: "no-water")], Of(Nothing with { Faults = ["strainer-blocked"] }, Pump.Knowledge, PumpEdits.WithStrainer));

    [Fact]
    public void Of_Complaint_IsWhoTellsIt() => Assert.Equal([new(Complaint: "hums")], Of(Nothing with { Complaints = ["hums", "unheard-of"] }));

    [Fact]
    public void Of_Repair_IsWhoNeedsIt()
    {
        Assert.Equal([new(With: "hose-kinked")], Of(Nothing with { Repairs = ["straighten-hose"] }));
        // Only the other rules know this one, and the cause that it is for.
        Assert.Empty(Of(Nothing with { Repairs = ["clean-strainer"] }, Pump.Knowledge, PumpEdits.WithStrainer));
        Assert.Equal([new(With: "strainer-blocked")], Of(Nothing with { Repairs = ["clean-strainer"] }, PumpEdits.WithStrainer, Pump.Knowledge));
    }

    [Fact]
    public void Of_CheckOrSign_IsWhoHasACauseBehindIt()
    {
        Assert.Equal([new(With: "bearing-dry")], Of(Nothing with { Checks = ["turn-shaft"] }));
        Assert.Equal([new(With: "bearing-dry")], Of(Nothing with { Findings = ["bearing"] }));
        Assert.Empty(Of(Nothing with { Checks = ["look-strainer"] }, Pump.Knowledge, PumpEdits.WithStrainer));
        Assert.Equal([new(With: "strainer-blocked")], Of(Nothing with { Checks = ["look-strainer"] }, PumpEdits.WithStrainer, Pump.Knowledge));
    }

    [Fact]
    public void Of_SameRidersTwice_AreTakenOnce() =>
        Assert.Equal([new(With: "bearing-dry")], Of(Nothing with { Faults = ["bearing-dry"], Checks = ["turn-shaft"], Findings = ["bearing"], Repairs = ["new-bearing"] }));

    /// <summary>Four causes behind one sign: the three likeliest by how common they are times how often they show it, the likeliest first.</summary>
    [Fact]
    public void Of_SignOfManyCauses_IsTheLikeliestThree()
    {
        var world = Pump.Load(Pump.Text
            .Replace("      hose: {kinked: almost certain}", "      hose: {kinked: almost certain}\n      tap: {shut: unlikely}", StringComparison.Ordinal)
            .Replace("      wheel: {worn: very likely}", "      wheel: {worn: very likely}\n      tap: {shut: likely}", StringComparison.Ordinal)
            .Replace("      bearing: {gritty: very likely}", "      bearing: {gritty: very likely}\n      tap: {shut: very likely}", StringComparison.Ordinal));
        Assert.Equal([new(With: "tap-shut"), new(With: "bearing-dry"), new(With: "wheel-worn")], Of(Nothing with { Findings = ["tap"] }, world, world));
    }

    /// <summary>All that is not the usual state counts together: twice 'likely' is more than 'almost certain' once.</summary>
    [Fact]
    public void Of_SignOfSeveralStates_CountsThemTogether()
    {
        var world = Pump.Load(Pump.Text
            .Replace("      wheel: {worn: very likely}", "      wheel: {worn: roughly even chance, cracked: roughly even chance}", StringComparison.Ordinal)
            .Replace("      bearing: {gritty: very likely}", "      bearing: {gritty: very likely}\n      wheel: {worn: likely}", StringComparison.Ordinal));
        Assert.Equal([new(With: "wheel-worn"), new(With: "bearing-dry")], Of(Nothing with { Findings = ["wheel"] }, world, world));
    }

    [Fact]
    public void Of_RepairForTwoCauses_IsBothInOrder()
    {
        var world = PumpEdits.Changed("    mends: {hose-kinked: very likely}", "    mends: {tap-shut: likely, hose-kinked: very likely}");
        Assert.Equal([new(With: "hose-kinked"), new(With: "tap-shut")], Of(Nothing with { Repairs = ["straighten-hose"] }, world, world));
    }

    private static RidersWanted[] Of(TrialScope scope) => Of(scope, Pump.Knowledge, Pump.Knowledge);

    private static RidersWanted[] Of(TrialScope scope, KnowledgeBase world, KnowledgeBase other) => [.. TouchedRiders.Of(scope, world, other)];
}
