using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.World;
using ShedBot.Knowledge;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>What a club's mended cases teach it, in the chat: looked at and proposed by those who may, put up or live by itself as the club has chosen, and counted anew when a member goes.</summary>
public sealed class LearningInAClub(ITestOutputHelper output)
{
    private const string Fault = "cable-kinked";

    [Fact]
    public async Task Learn_ByCommand_BecomesAProposalThatIsTriedPublishedAndTakenBack()
    {
        await using var house = await OpenAsync();
        await CloseAsync(house, 40);
        var look = await UseAsync(house, house.Owner, "rules learn");
        await ClubHouse.UntilAsync(() => Shows(house, look, "Make it a proposal"), "the count");
        Assert.Contains("40 closed cases of 12 members", house.Platform.Now(look).Words, StringComparison.Ordinal);
        var card = await PressAsync(house, house.Platform.Now(look), "Make it a proposal");
        await ClubHouse.UntilAsync(() => Shows(house, card, "Try it out"), "the proposal");
        card = await PressAsync(house, house.Platform.Now(card), "Try it out");
        await ClubHouse.UntilAsync(() => Shows(house, card, "Publish it"), "the trial");
        card = await PressAsync(house, house.Platform.Now(card), "Publish it");
        Assert.Contains("Edition 1 is out", card.Words, StringComparison.Ordinal);
        Assert.True((await TimesAsync(house, 1)) > 1.25);
        card = await PressAsync(house, card, "take it back");
        Assert.Contains("rules' own word", card.Words, StringComparison.Ordinal);
        await PressAsync(house, card, card.Usable.First().Label);
        Assert.Equal(1, await TimesAsync(house, 2));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Learn_ByWhoMayNot_CountsNothing()
    {
        await using var house = await OpenAsync();
        await CloseAsync(house, 40);
        Assert.Contains("Not done", (await UseAsync(house, house.Rider, "rules learn")).Words, StringComparison.Ordinal);
        var settings = await UseAsync(house, house.Owner, "rules settings");
        foreach (var id in new[] { "teach|Learn|||", "teach|ProposeLearnt|||", "teach|Learning|Automatic||", "teach|Never|0123456789|on|" })
        {
            var forged = await (await house.Platform.ForgedPressAsync(house.Rider, settings, id)).Settled;
            Assert.Contains("Not done", forged.Message!.Words, StringComparison.Ordinal);
        }

        Assert.Equal(LearningMode.Proposals, (await house.Store.TeachingSettingsAsync(ClubOf(house), default)).Learning);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Settings_OfLearning_AreCheckedAndKept()
    {
        await using var house = await OpenAsync();
        Assert.Contains("from 1 to 10", (await UseAsync(house, house.Owner, "rules settings", ("most-times", 25))).Words, StringComparison.Ordinal);
        var told = await UseAsync(house, house.Owner, "rules settings", ("learning", "Automatic"), ("most-times", 2.5), ("member-share", 10));
        Assert.Contains("goes live by itself", told.Words, StringComparison.Ordinal);
        var settings = await house.Store.TeachingSettingsAsync(ClubOf(house), default);
        Assert.Equal((LearningMode.Automatic, 2.5, 0.1), (settings.Learning, settings.MostFactor, settings.MemberShare));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Round_WithNewCases_PutsOneProposalUpAlsoOverARestart()
    {
        await using var house = await OpenAsync();
        await CloseAsync(house, 40);
        await RoundUntilAsync(house, () => Open(house).Length == 1, "the proposal");
        var waiting = await UseAsync(house, house.Owner, "rules waiting");
        Assert.Contains("by ShedBot", string.Join('|', ClubHouse.Labels(waiting)), StringComparison.Ordinal);
        await house.RestartAsync();
        house.Clock.Move(TimeSpan.FromDays(2));
        await Task.Delay(500);
        Assert.Single(Open(house));
        Assert.DoesNotContain(house.Platform.Messages(house.Lobby), m => !m.Private && m.Words.Contains("Learnt", StringComparison.Ordinal));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Round_Automatic_PublishesOnceAndAMemberWhoLeavesIsCountedOut()
    {
        await using var house = await OpenAsync();
        await LearnByItselfAsync(house);
        var edition = (await house.Store.FindEditionAsync(ClubOf(house), 1, default))!;
        Assert.Equal((null, "ShedBot"), (edition.By, edition.ByName));
        Assert.Contains("ShedBot: Learnt by itself", (await UseAsync(house, house.Owner, "rules editions")).Words, StringComparison.Ordinal);

        await LeaveAsync(house);
        await RoundUntilAsync(house, () => Newest(house) == 2, "the count without them");

        Assert.NotEqual(await TimesAsync(house, 1), await TimesAsync(house, 2));
        Assert.Equal("", (await house.Store.LearningBookAsync(ClubOf(house), default)).Anew);
        Assert.Contains("counted anew", (await UseAsync(house, house.Owner, "rules log")).Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Leave_AndThenKilled_IsCountedOutByTheNextProcess()
    {
        await using var house = await OpenAsync();
        await LearnByItselfAsync(house);

        await LeaveAsync(house);
        await house.KillAsync();
        await house.StartAsync();
        await RoundUntilAsync(house, () => Newest(house) == 2, "the count without them");

        Assert.NotEqual(await TimesAsync(house, 1), await TimesAsync(house, 2));
        house.AssertNoViolations();
    }

    private static async Task LeaveAsync(ClubHouse house)
    {
        var asked = (await (await house.Platform.CommandAsync(house.Rider, house.Lobby, "shedbot leave")).Settled).Message!;
        await (await house.Platform.PressLabelAsync(house.Rider, asked, "Remove all of it")).Answered;
        await ClubHouse.UntilAsync(() => house.Platform.Now(asked).Words.Contains("Forgotten", StringComparison.Ordinal), "the end to be told");
    }

    private static ClubId ClubOf(ClubHouse house) => new(house.Guild.Id.ToString(CultureInfo.InvariantCulture));

    private static int Newest(ClubHouse house) => house.Store.NewestEditionAsync(ClubOf(house), default).Result;

    private static ImmutableArray<Proposal> Open(ClubHouse house) => house.Store.ProposalsAsync(ClubOf(house), ProposalState.Proposed, 10, default).Result;

    private static async Task<double> TimesAsync(ClubHouse house, int edition) => (await house.Store.FindEditionAsync(ClubOf(house), edition, default))!.ReadLearnt().TimesOf(Fault);

    private static bool Shows(ClubHouse house, SeenMessage card, string label) => house.Platform.Now(card).Usable.Any(c => c.Label == label);

    private async Task<ClubHouse> OpenAsync() => await ClubHouse.OpenAsync(output, trials: new NoHarm());

    /// <summary>A club that learns by itself, with some of the rider's own cases among those that its first edition rests on.</summary>
    private static async Task LearnByItselfAsync(ClubHouse house)
    {
        await CloseAsync(house, 40);
        await CloseDryAsync(house);
        var theirs = ClubOf(house).Member(house.Rider.Id.ToString(CultureInfo.InvariantCulture));
        for (var n = 0; n < 6; n++) await CloseAsync(house, theirs, 900 + n);
        await UseAsync(house, house.Owner, "rules settings", ("learning", "Automatic"), ("most-times", 10));
        await RoundUntilAsync(house, () => Newest(house) == 1, "the edition");
    }

    /// <summary>Lets what comes round again and again come round until it has done something.</summary>
    private static async Task RoundUntilAsync(ClubHouse house, Func<bool> so, string what)
    {
        house.Clock.ComeRound();
        await ClubHouse.UntilAsync(
            () =>
            {
                if (so()) return true;
                house.Clock.ComeRound();
                return false;
            },
            what);
    }

    private static async Task CloseAsync(ClubHouse house, int count)
    {
        foreach (var n in Enumerable.Range(0, count)) await CloseAsync(house, ClubOf(house).Member($"m{n % 12}"), n);
    }

    /// <summary>Some whose cable was dry, so that the numbers stay within the club's limit.</summary>
    private static async Task CloseDryAsync(ClubHouse house)
    {
        foreach (var n in Enumerable.Range(700, 15)) await CloseAsync(house, ClubOf(house).Member($"m{n % 12}"), n, "slide-wire", "stiff", "free-cable");
    }

    /// <summary>A lever that was heavy, mended a month ago; left out: because of a kinked cable.</summary>
    private static Task CloseAsync(ClubHouse house, MemberId member, int number, string check = "follow-cable", string seen = "tight", string repair = "reroute-cable")
    {
        var (at, id) = (house.Clock.GetUtcNow().AddDays(-30).AddMinutes(number), new CaseId($"made-{number:0000}"));
        CaseEntry Line(EntryKind kind, string subject, string? value = null) => new(1, kind, subject, value, 1, at);
        var closed = Case.New(id, member, BikeId.Of(member), $"made/{number}", at) with
        {
            Phase = CasePhase.Solved,
            Entries = [Line(EntryKind.Complaint, "lever-heavy"), Line(EntryKind.Answer, check, seen), Line(EntryKind.RepairHeld, repair)],
            ClosedAt = at,
            Turn = 1,
            Version = 1,
        };
        return house.Store.SaveAsync(new TurnSaved(closed, null, new Outcome(id, CasePhase.Solved, repair, [], 1, "made up", at), []), default);
    }

    private static async Task<SeenMessage> UseAsync(ClubHouse house, Person who, string command, params (string Name, object Value)[] options)
    {
        var answer = await (await house.Platform.CommandAsync(who, house.Lobby, command, options.ToDictionary(o => o.Name, o => o.Value))).Settled;
        Assert.True(answer.Message?.Private, $"{command}: no private answer");
        return answer.Message!;
    }

    private static async Task<SeenMessage> PressAsync(ClubHouse house, SeenMessage card, string label)
    {
        var deed = await house.Platform.PressAsync(house.Owner, card, card.Control(label).CustomId!);
        return (await deed.Settled).Message ?? throw new InvalidOperationException($"'{label}' was not answered.");
    }

    /// <summary>A trial that finds no harm, at once.</summary>
    private sealed class NoHarm : ITrials
    {
        public Task<TriedOut> TryAsync(KnowledgeBase old, KnowledgeBase changed, ImmutableArray<ClosedCase> cases, IProgress<double>? progress, CancellationToken ct) => Task.FromResult(new TriedOut("none", []));

        public ImmutableArray<CardBlock> Show(string report, KnowledgeBase old, KnowledgeBase changed) => [new TextBlock("It was tried.")];
    }
}
