using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.DiscordStandIn.World;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>
/// The approved conversation of docs/conversations/in-a-club/learning.md: a moderator reads what a club's closed cases tell, says what some words mean, takes over
/// what the cases teach but for one number, and takes it back. The same is had at the practice terminal in docs/conversations/learning.md.
/// </summary>
public sealed class LearningToldInAClub(ITestOutputHelper output)
{
    private const string Trot = "she fancies a trot when i stop at the lights", Others = "the other reports";

    /// <summary>No picture, but it begins as one does.</summary>
    private static readonly ImmutableArray<byte> Png = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 1];

    [Fact]
    public Task Cases_ReadTaughtLearntAndTakenBack_ReadsAsApproved() => ToldPage.CheckAsync("learning.md", PlayAsync);

    private async Task<string> PlayAsync()
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new ClubTrials(() => new CoachOptions(), new RidersTried(4, Stops: 0)));
        house.PaintCalibration = (_, _) => Png;
        var (talk, marlo) = (new ChatTalk(house), house.Owner);
        // ShedBot would put up a proposal of its own before anybody has looked.
        await talk.CommandAsync(marlo, "rules settings");
        await talk.UseAsync(marlo, "Learning: only count");
        var club = new ClubId(house.Guild.Id.ToString(CultureInfo.InvariantCulture));
        foreach (var closed in HeavyLevers.Closed(club.Member, house.Clock.GetUtcNow())) await house.Store.SaveAsync(closed, default);

        await talk.CommandAsync(house.Rider, "trouble", ("words", Trot));
        await talk.CommandAsync(house.Mate, "trouble", ("words", $"S{Trot[1..]}!"));

        await talk.CommandAsync(marlo, "rules reports");
        await ReportAsync(talk, marlo, "What fixes what", "Wrong first guesses", "Could its chances be taken at their word?");
        await WordsAsync(talk, marlo);
        var published = await LearnAsync(talk, marlo);
        await talk.CommandAsync(marlo, "rules log");
        talk.GoBackTo(published);
        await talk.UseAsync(marlo, "take it back");
        await talk.UseAsync(marlo, talk.Card.Usable.First().Label);
        await talk.CommandAsync(marlo, "rules settings");
        await talk.UseAsync(marlo, "Learning: make proposals");
        house.Clock.ComeRound();
        await talk.CommandAsync(marlo, "rules waiting");
        Assert.Contains("Nothing waits", talk.Card.Words, StringComparison.Ordinal);
        house.AssertNoViolations();
        return talk.Text;
    }

    private static async Task ReportAsync(ChatTalk talk, Person marlo, params string[] reports)
    {
        foreach (var report in reports)
        {
            if (report != reports[0]) await talk.UseAsync(marlo, Others);
            await talk.UseToCountAsync(marlo, report, Others);
        }
    }

    /// <summary>Words that were not understood, taught with one tap.</summary>
    private static async Task WordsAsync(ChatTalk talk, Person marlo)
    {
        await talk.CommandAsync(marlo, "rules words");
        await talk.UseAsync(marlo, talk.Card.Usable.First().Label);
        await talk.UseAsync(marlo, "This means: The clutch drags");
        await talk.UseAsync(marlo, "Try it out");
        await talk.WaitForAsync(marlo, "Publish it");
        await talk.UseAsync(marlo, "Publish it");
    }

    /// <returns>What was shown when it was published.</returns>
    private static async Task<DiscordStandIn.Driving.SeenMessage> LearnAsync(ChatTalk talk, Person marlo)
    {
        await talk.CountAsync(marlo, "rules learn", "Make it a proposal");
        await talk.UseToCountAsync(marlo, "Make it a proposal", "Try it out");
        await talk.UseAsync(marlo, "One number after the other");
        await talk.UseAsync(marlo, "how common it is that water or ice in the cable holds the clutch half out");
        await talk.UseAsync(marlo, "Leave it out");
        await talk.UseAsync(marlo, "the whole proposal");
        await talk.UseAsync(marlo, "Try it out");
        await talk.WaitForAsync(marlo, "Publish it");
        await talk.UseAsync(marlo, "Publish it");
        return talk.Card;
    }
}
