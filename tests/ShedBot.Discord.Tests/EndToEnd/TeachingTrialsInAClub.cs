using ShedBot.Coaching;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.Faults;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>Trials in the chat: how far they are, what came of them, and that none that was announced is lost.</summary>
public sealed class TeachingTrialsInAClub(ITestOutputHelper output)
{
    private const string EditAnswer = "PATCH /webhooks/{webhook_id}/{webhook_token}/messages/@original";

    [Fact]
    public async Task Trial_ThatTakesItsTime_TellsHowFarItIsAndHoldsUpNobody()
    {
        var held = new HeldTrials();
        await using var house = await ClubHouse.OpenAsync(output, trials: held);
        var card = await BegunAsync(house, held);
        held.Far!.Report(0.25);
        await ClubHouse.UntilAsync(() => house.Platform.Now(card).Words.Contains("About 25 % is done", StringComparison.Ordinal), "how far it is");
        // Meanwhile everything else goes on; a second trial waits.
        Assert.Contains("What waits", (await house.AskAsync(house.Owner, "rules waiting")).Words, StringComparison.Ordinal);
        await house.AskAsync(house.Rider, "tip", ("words", "look at the cable first"));
        var other = await house.AskAsync(house.Owner, "rules file-in", ("file", house.Platform.File("own.yaml", System.Text.Encoding.UTF8.GetBytes(Moderating.HowTo("wrap")))));
        Assert.Contains("A trial of your club is running", (await (await house.Platform.PressAsync(house.Owner, other, other.Control("Try it out").CustomId!)).Settled).Message!.Words, StringComparison.Ordinal);
        held.Finish();
        await ClubHouse.UntilAsync(() => house.Platform.Now(card).Usable.Any(c => c.Label == "Publish it"), "the result");
        Assert.Equal(1, held.Begun);
        house.AssertNoViolations();
    }

    /// <summary>The result is seen before we hear that it is: whoever acts on it at once must not be told that a trial is running.</summary>
    [Fact]
    public async Task Trial_WhoseResultIsActedOnAtOnce_HoldsUpNoNextOne()
    {
        var held = new HeldTrials();
        await using var house = await ClubHouse.OpenAsync(output, trials: held);
        var other = await house.AskAsync(house.Owner, "rules file-in", ("file", house.Platform.File("own.yaml", System.Text.Encoding.UTF8.GetBytes(Moderating.HowTo("wrap")))));
        var card = await BegunAsync(house, held);
        house.Platform.Faults.Delay = TimeSpan.FromSeconds(20);
        house.Platform.Faults.Next(FaultKind.SlowAnswer, EditAnswer);
        held.Finish();
        await ClubHouse.UntilAsync(() => house.Platform.Now(card).Usable.Any(c => c.Label == "Publish it"), "the result");
        await house.UseCardAsync(house.Owner, other, "Try it out");
        await ClubHouse.UntilAsync(() => held.Begun == 2, "the next trial");
        house.AssertNoViolations();
    }

    /// <summary>The report is of a real trial; what paints it is played.</summary>
    [Fact]
    public async Task Trial_ThatCanBePainted_ShowsThePictureWithWordsForThoseWhoDoNotSeeIt()
    {
        await using var house = await ClubHouse.OpenAsync(output, trials: new ClubTrials(() => new CoachOptions(), new RidersTried(4, Stops: 0)));
        byte[] png = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];
        house.PaintTrial = (_, _) => [.. png];
        var card = await house.TriedAsync(house.Owner, Strength);
        var picture = Assert.Single(card.Files);
        Assert.Equal(png, picture.Bytes.ToArray());
        Assert.Contains("If the new rules are right", picture.Description, StringComparison.Ordinal);
        var figures = await house.UseCardAsync(house.Owner, card, "what the trial measured");
        Assert.Contains("Cost of a case:", figures.Words, StringComparison.Ordinal);
        Assert.Empty(figures.Files);
        Assert.Single((await house.UseCardAsync(house.Owner, figures, "back to the proposal")).Files);
        house.AssertNoViolations();
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Trial_CutOffByTheEndOfTheProcess_IsMadeByTheNextAndKept(bool killed)
    {
        var first = new HeldTrials();
        await using var house = await ClubHouse.OpenAsync(output, trials: first);
        await BegunAsync(house, first);
        house.Trials = new QuickTrials();
        if (killed) await house.KillAsync();
        else await house.StopAsync();
        await house.StartAsync();
        await KeptAsync(house);
        var waiting = await house.AskAsync(house.Owner, "rules waiting");
        var looked = await house.UseCardAsync(house.Owner, waiting, waiting.Usable.First().Label);
        Assert.Contains("It was tried.", looked.Words, StringComparison.Ordinal);
        Assert.Contains("is out", (await house.UseCardAsync(house.Owner, looked, "Publish it")).Words, StringComparison.Ordinal);
        // And it is made once only.
        Assert.Empty(await house.Store.ArrivalsAsync(default));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Trial_WhoseAnswerIsGone_IsKeptWithTheProposal()
    {
        var held = new HeldTrials();
        await using var house = await ClubHouse.OpenAsync(output, trials: held);
        var card = await BegunAsync(house, held);
        house.Platform.Faults.RefuseNext(EditAnswer, 404, 10008, "Unknown Message", times: 100);
        held.Finish();
        await KeptAsync(house);
        house.Platform.Faults.Stop();
        Assert.DoesNotContain(house.Platform.Now(card).Usable, c => c.Label == "Publish it");
        var waiting = await house.AskAsync(house.Owner, "rules waiting");
        Assert.Contains("It was tried.", (await house.UseCardAsync(house.Owner, waiting, waiting.Usable.First().Label)).Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    private const string Strength = """
        about: {covers: what our club knows better, author: Mod A, source: common practice, date: 2026-05-01}
        mends:
          - {of: fault, id: slack-too-big, key: how common, now: very common}
        """;

    private static async Task<SeenMessage> BegunAsync(ClubHouse house, HeldTrials held)
    {
        var card = await house.AskAsync(house.Owner, "rules file-in", ("file", house.Platform.File("own.yaml", System.Text.Encoding.UTF8.GetBytes(Moderating.HowTo("polish")))));
        card = await house.UseCardAsync(house.Owner, card, "Try it out");
        Assert.Contains("It is being tried", card.Words, StringComparison.Ordinal);
        await ClubHouse.UntilAsync(() => held.Begun > 0, "the trial to begin");
        return card;
    }

    private static Task KeptAsync(ClubHouse house) => ClubHouse.UntilAsync(
        () => house.Store.ProposalsAsync(Moderating.ClubOf(house.Guild), ProposalState.Draft, 10, default).Result.Single().Trial is not null, "the trial to be kept");
}
