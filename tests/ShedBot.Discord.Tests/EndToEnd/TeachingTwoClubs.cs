using ShedBot.Coaching.Teaching;
using ShedBot.DiscordStandIn.World;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>Clubs are separate worlds: what has a name or a number in one of them is nothing in another, even for somebody who may do all there.</summary>
public sealed class TeachingTwoClubs(ITestOutputHelper output)
{
    [Fact]
    public async Task Ids_OfOneClub_AreNothingInAnother()
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new QuickTrials());
        var club = Moderating.ClubOf(house.Guild);
        await house.PublishedAsync(house.Owner, Moderating.HowTo("polish"));
        await house.TriedAsync(house.Owner, Moderating.HowTo("wrap"));
        await house.AskAsync(house.Rider, "tip", ("words", "a secret of our own yard"));
        var proposals = await house.Store.ProposalsAsync(club, ProposalState.Draft, 10, default);
        var (proposal, tip, audit) = (proposals.Single(), (await house.Store.TipsAsync(club, TipState.Waiting, 10, default)).Single(), await house.Store.AuditAsync(club, long.MaxValue, 100, default));

        var (other, keeper) = await OtherAsync(house);
        var card = await house.AskAsync(keeper, other, "rules show");
        foreach (var id in new[]
        {
            $"teach|Look|{proposal.Id}||", $"teach|GoOn|{proposal.Id}||", $"teach|Sheet|{proposal.Id}||", $"teach|Try|{proposal.Id}||", $"teach|Figures|{proposal.Id}||", $"teach|HandIn|{proposal.Id}||",
            $"teach|Publish|{proposal.Id}|{proposal.Version}|", $"teach|Withdraw|{proposal.Id}||", $"teach|Say|{proposal.Id}|called|x", $"teach|Tip|{tip.Id}||", $"teach|Begin|cause|{tip.Id}|",
            $"sb1:rulesopen:{proposal.Id}:called",
        })
        {
            var told = await house.ForgeAsync(keeper, card, id);
            // A trial is announced first; what came of it stands there a little later.
            await ClubHouse.UntilAsync(() => !house.Platform.Now(told).Words.Contains("is being tried", StringComparison.Ordinal), "the end of a trial");
            told = house.Platform.Now(told);
            Assert.True(told.Words.Contains("I cannot find that here", StringComparison.Ordinal), $"{id}:\n{told.Words}");
            card = await house.AskAsync(keeper, other, "rules show");
        }

        Assert.Contains("There is no such edition", (await house.ForgeAsync(keeper, card, "teach|TakeBack|1|0|")).Words, StringComparison.Ordinal);
        Assert.Contains("There is no such edition", (await house.AskAsync(keeper, other, "rules take-back", ("edition", 1))).Words, StringComparison.Ordinal);
        Assert.Contains("I cannot find that here", (await house.AskAsync(keeper, other, "rules go-on", ("proposal", proposal.Id))).Words, StringComparison.Ordinal);
        foreach (var command in new[] { "rules show", "rules waiting", "rules tips", "rules log", "rules editions", "rules file-out" })
        {
            var shown = await house.AskAsync(keeper, other, command);
            Assert.All(new[] { "polish", "wrap", "secret", house.Owner.Name, house.Rider.Name }, w => Assert.DoesNotContain(w, shown.Words, StringComparison.Ordinal));
            Assert.All(shown.Files, f => Assert.DoesNotContain("polish", System.Text.Encoding.UTF8.GetString(f.Bytes.Span), StringComparison.Ordinal));
        }

        var offered = await (await house.Platform.CompleteAsync(keeper, other, "rules go-on", "proposal", "")).Answered;
        Assert.DoesNotContain(proposal.Id, offered.Shown?.GetRawText() ?? "", StringComparison.Ordinal);

        // Nothing of it has touched the club itself.
        Assert.Equal(audit.AsEnumerable(), await house.Store.AuditAsync(club, long.MaxValue, 100, default));
        Assert.Equal(proposal.Version, (await house.Store.FindProposalAsync(club, proposal.Id, default))!.Version);
        Assert.Equal(0, await house.Store.NewestEditionAsync(Moderating.ClubOf(other.Guild!), default));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Rule_OfOneClub_IsNotInAnothersCases()
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new QuickTrials());
        await house.PublishedAsync(house.Owner, Moderating.HowTo("polish"));
        var (other, keeper) = await OtherAsync(house);
        Assert.Contains("First polish it well", await AskedAsync(house, house.Rider, house.Lobby), StringComparison.Ordinal);
        Assert.DoesNotContain("First polish it well", await AskedAsync(house, keeper, other), StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    private static async Task<string> AskedAsync(ClubHouse house, Person who, Channel where)
    {
        var answer = await house.AskAsync(who, where, "trouble", ("words", "how do I polish it before the winter"));
        return string.Join('\n', house.Platform.Threads(where.Guild == house.Guild ? house.Help : where).Select(house.Text).Prepend(answer.Words));
    }

    private static async Task<(Channel Help, Person Keeper)> OtherAsync(ClubHouse house)
    {
        var keeper = house.Platform.AddPerson("Nell of the other club");
        var guild = await house.Platform.AddGuildAsync("Another Invented Club", keeper);
        var help = house.Platform.AddTextChannel(guild, "their-help");
        await ClubHouse.UntilAsync(() => house.Store.FindClubAsync(Moderating.ClubOf(guild), default).Result is not null, "the other club");
        await house.Platform.CommandAsync(keeper, help, "club set-up", new Dictionary<string, object> { ["help-channel"] = help });
        await ClubHouse.UntilAsync(() => house.Store.FindClubAsync(Moderating.ClubOf(guild), default).Result?.HelpChannel is not null, "its help channel");
        return (help, keeper);
    }
}
