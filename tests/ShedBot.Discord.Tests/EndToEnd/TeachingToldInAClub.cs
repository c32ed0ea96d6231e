using ShedBot.Coaching;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.DiscordStandIn.World;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>
/// The approved conversation of docs/conversations/in-a-club: a tip of a member's becomes a rule by the hand of a moderator who does not know the file format,
/// a rider's case finds it, and it is taken back. The same is had at the practice terminal in docs/conversations/teaching.md. With SHEDBOT_APPROVE=1 the page
/// is written anew, to be read before it is committed.
/// </summary>
public sealed class TeachingToldInAClub(ITestOutputHelper output)
{
    private const string Complaint = "the clutch arm sits half way in at rest";

    [Fact]
    public Task Tip_WrittenTriedPublishedFoundAndTakenBack_ReadsAsApproved() => ToldPage.CheckAsync("teaching.md", PlayAsync);

    private async Task<string> PlayAsync()
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new ClubTrials(() => new CoachOptions(), new RidersTried(4, Stops: 0)));
        var (talk, robin, marlo, sam) = (new ChatTalk(house), house.Rider, house.Owner, house.Mate);
        var words = await talk.SaysAsync(robin, house.Lobby, "arm on my engine stood half way in for a week and I took half the clutch apart. it was only the strap of my frame bag lying on the arm");
        await talk.MenuAsync(sam, "Pass on as a tip", words);

        await talk.CommandAsync(marlo, "rules show");
        await talk.UseAsync(marlo, "Look at the tips");
        await talk.UseAsync(marlo, talk.Card.Usable.First().Label);
        await talk.UseAsync(marlo, "Write a rule from it");
        await talk.UseAsync(marlo, "A new cause");
        await talk.FillAsync(marlo, "Search by its words", "half-way");
        await talk.FillAsync(marlo, "Answer these", "The strap of a frame bag lies on the clutch arm and holds it.", "The strap keeps the arm from going home, so it stands half-way in.", "very likely", "now and then");
        await talk.UseAsync(marlo, "Something that nobody looks at yet");
        await talk.FillAsync(marlo, "Answer these", "What lies against the clutch arm", "Nothing touches it", "Something leans on it, such as a strap or a bag", "", "almost no chance");
        await talk.FillAsync(marlo, "Answer these", "Does anything lean on the clutch arm, such as a strap, a bag or a lock?", "", "", "", "1");
        await talk.FillAsync(marlo, "Answer these", "none", "plain to see");
        await talk.UseAsync(marlo, "skip");
        await talk.UseAsync(marlo, "A new repair");
        await talk.FillAsync(
            marlo, "Answer these", "Fasten the bag so that nothing reaches the arm",
            "Take the bag or strap off that leans on the arm.\nFasten it again out of the way. -- Pull the lever and look: nothing touches arm or wire over the whole pull.", "", "", "10");
        await talk.UseAsync(marlo, "None: nobody can be hurt");
        await talk.FillAsync(marlo, "Answer these", "The arm goes home by itself each time, with the bag on.", "", "very likely");
        await talk.FillAsync(marlo, "Answer these");
        await talk.UseAsync(marlo, talk.Card.Usable.First(c => c.Label.StartsWith("Mend:", StringComparison.Ordinal)).Label);
        await talk.UseAsync(marlo, "Almost certain (95 to 99 %): you can hardly have one without the other");

        await talk.UseAsync(marlo, "Try it out");
        await talk.WaitForAsync(marlo, "Publish it");
        await talk.UseAsync(marlo, "Publish it");
        var published = talk.Card;
        var direct = house.Platform.DirectChannel(robin);
        await ClubHouse.UntilAsync(() => house.Platform.Messages(direct).Count > 0, "the word to Robin");
        talk.Gets(robin, Assert.Single(house.Platform.Messages(direct)));

        await FoundAsync(house, talk, sam);
        talk.GoBackTo(published);
        await talk.UseAsync(marlo, "take it back");
        await talk.UseAsync(marlo, talk.Card.Usable.First().Label);
        var thread = await BeginsAsync(house, talk, robin, 1);
        await AnswersAsync(house, talk, robin, thread, "No, not lately");
        Assert.DoesNotContain("lean on the clutch arm", house.Text(thread), StringComparison.Ordinal);
        house.AssertNoViolations();
        return talk.Text;
    }

    /// <summary>The next rider with that trouble is led to it.</summary>
    private static async Task FoundAsync(ClubHouse house, ChatTalk talk, Person rider)
    {
        var thread = await BeginsAsync(house, talk, rider, 0);
        foreach (var answer in new[] { "No, not lately", "Settled, it has run for a good while", "Something leans on it, such as a strap or a bag", "Yes, all of it", "Done, now let me prove it", "It holds, the trouble is gone" })
            await AnswersAsync(house, talk, rider, thread, answer);
        Assert.Contains("Good. That is that mended.", house.Text(thread), StringComparison.Ordinal);
    }

    private static async Task<Channel> BeginsAsync(ClubHouse house, ChatTalk talk, Person rider, int number)
    {
        await talk.CommandAsync(rider, "trouble", ("words", Complaint));
        var thread = await house.ThreadAsync(number);
        talk.Shows(thread, house.Panel(thread)!);
        return thread;
    }

    private static async Task AnswersAsync(ClubHouse house, ChatTalk talk, Person rider, Channel thread, string answer)
    {
        talk.Does(rider, $"[{answer}]");
        await house.AnswerAsync(rider, thread, answer);
        talk.Shows(thread, house.Platform.Messages(thread, removed: false).Last(m => m.AuthorId == house.Platform.Bot.Id && !m.Private));
    }
}
