using ShedBot.Coaching.Teaching;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>What was done by somebody whose name is gone, because they have left.</summary>
public class LeftMembersTests
{
    [Fact]
    public void Editions_OfSomebodyWhoHasLeft_SayNotThatTheyAreAMember()
    {
        var text = School.Text(LookCards.Editions([new EditionHead(School.Club, 3, "New words", "", School.Noon)], School.Ada));
        Assert.Contains("3, 2026-05-01, somebody who has left: New words (counts now)", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Standing_OfWhatSomebodyLeftBehind_HasNoGapWhereTheNameWas()
    {
        var published = Proposal.New("P1", School.Ada, "", School.Noon) with { ByName = "", State = ProposalState.Published, Edition = 3 };
        Assert.Equal("Published as edition 3. Written by somebody who has left.", ProposalCards.Standing(published));
    }
}
