using ShedBot.Coaching.Teaching;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.World;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>Two moderators at once: nothing of the first is overwritten, and the second is told.</summary>
public sealed class TeachingAtOnceInAClub(ITestOutputHelper output)
{
    [Fact]
    public async Task Publish_ByTwoAtOnceOfOneProposal_IsOneEdition()
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new QuickTrials());
        var nell = await house.SecondModeratorAsync();
        var card = await house.TriedAsync(house.Owner, Moderating.HowTo("polish"));
        await house.UseCardAsync(house.Owner, card, "Hand it in");
        var (mine, hers) = (await LookedAtAsync(house, house.Owner), await LookedAtAsync(house, nell));
        var both = await Task.WhenAll(house.UseCardAsync(house.Owner, mine, "Publish it"), house.UseCardAsync(nell, hers, "Publish it"));
        Assert.Single(both, c => c.Words.Contains("Edition 1 is out", StringComparison.Ordinal));
        Assert.Single(both, c => c.Words.Contains("Published as edition 1", StringComparison.Ordinal));
        Assert.Equal(1, await house.EditionAsync());
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Publish_OfTwoProposalsTriedBeside0_TheSecondIsTriedOnceMore()
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new QuickTrials());
        var nell = await house.SecondModeratorAsync();
        var (mine, hers) = (await house.TriedAsync(house.Owner, Moderating.HowTo("polish")), await house.TriedAsync(nell, Moderating.HowTo("wrap")));
        var both = await Task.WhenAll(house.UseCardAsync(house.Owner, mine, "Publish it"), house.UseCardAsync(nell, hers, "Publish it"));
        Assert.Single(both, c => c.Words.Contains("Edition 1 is out", StringComparison.Ordinal));
        var told = Assert.Single(both, c => c.Words.Contains("The rules have changed since it was tried. Try it once more.", StringComparison.Ordinal));
        var second = told == both[0] ? house.Owner : nell;
        await house.UseCardAsync(second, told, "Try it out");
        await ClubHouse.UntilAsync(() => house.Platform.Now(told).Usable.Any(c => c.Label == "Publish it"), "the second trial");
        await house.UseCardAsync(second, house.Platform.Now(told), "Publish it");
        var layer = (await house.Store.FindEditionAsync(Moderating.ClubOf(house.Guild), 2, default))!.Layer;
        Assert.Contains("id: polish", layer, StringComparison.Ordinal);
        Assert.Contains("id: wrap", layer, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Publish_WhileItsAuthorChangesIt_IsNotWhatWasLookedAt()
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new QuickTrials());
        var nell = await house.SecondModeratorAsync();
        var talk = new ChatTalk(house);
        await talk.CommandAsync(nell, "rules write", ("sheet", "how-to"));
        await talk.FillAsync(nell, "Answer these", "when to polish the tank", "how often do I polish the tank", "Once a month.");
        await talk.UseAsync(nell, "None: nobody can be hurt");
        await talk.FillAsync(nell, "Answer these", "", "");
        await talk.UseAsync(nell, "Try it out");
        await talk.WaitForAsync(nell, "Hand it in");
        await talk.UseAsync(nell, "Hand it in");
        var looked = await LookedAtAsync(house, house.Owner);
        var proposal = (await house.Store.ProposalsAsync(Moderating.ClubOf(house.Guild), ProposalState.Proposed, 10, default)).Single();
        await house.AskAsync(nell, "rules go-on", ("proposal", proposal.Id));
        await talk.UseAsync(nell, "Change an answer");
        await talk.UseAsync(nell, talk.Card.Usable.SelectMany(c => c.Choices.Select(o => o.Label).Append(c.Label)).First(l => l.StartsWith("Change: The answer", StringComparison.Ordinal)));
        await talk.FillAsync(nell, "Answer these", "", "", "Never.");
        var told = await house.UseCardAsync(house.Owner, looked, "Publish it");
        Assert.DoesNotContain("is out", told.Words, StringComparison.Ordinal);
        Assert.Equal(0, await house.EditionAsync());
        house.AssertNoViolations();
    }

    [Fact]
    public async Task TakeBack_ByTwoAtOnce_IsOneEdition()
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new QuickTrials());
        var nell = await house.SecondModeratorAsync();
        await house.PublishedAsync(house.Owner, Moderating.HowTo("polish"));
        const string Yes = "Yes, take back to the project's rules alone";
        var (mine, hers) = (await house.AskAsync(house.Owner, "rules take-back", ("edition", 0)), await house.AskAsync(nell, "rules take-back", ("edition", 0)));
        var both = await Task.WhenAll(house.UseCardAsync(house.Owner, mine, Yes), house.UseCardAsync(nell, hers, Yes));
        Assert.Single(both, c => c.Words.Contains("It is edition 2 now", StringComparison.Ordinal));
        Assert.Single(both, c => c.Words.Contains("Somebody has published edition 2 in the meantime", StringComparison.Ordinal));
        Assert.Equal(2, await house.EditionAsync());
        house.AssertNoViolations();
    }

    private static async Task<SeenMessage> LookedAtAsync(ClubHouse house, Person who)
    {
        var waiting = await house.AskAsync(who, "rules waiting");
        return await house.UseCardAsync(who, waiting, waiting.Usable.First().Label);
    }
}
