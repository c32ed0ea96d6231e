using System.Text;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.World;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>A club's rules, looked after in the chat: by those who may, seen by whoever acts alone, and by nobody else however they try.</summary>
public sealed class RulesInAClub(ITestOutputHelper output)
{
    [Fact]
    public async Task Phrase_WrittenTriedAndPublished_IsTheClubsAndIsTakenBack()
    {
        await using var house = await OpenAsync();
        var card = await UseAsync(house, house.Owner, "rules write", ("sheet", "phrase"));
        for (var left = 10; left > 0 && card.Usable.All(c => c.Label != "Try it out"); left--) card = await AnswerAsync(house, card);
        card = await PressAsync(house, card, "Try it out");
        await ClubHouse.UntilAsync(() => house.Platform.Now(card).Usable.Any(c => c.Label == "Publish it"), "the trial");
        card = await PressAsync(house, house.Platform.Now(card), "Publish it");
        Assert.Contains("Edition 1 is out", card.Words, StringComparison.Ordinal);
        Assert.Equal((1, 0), (await house.Store.NewestEditionAsync(ClubOf(house), default), await house.Store.NewestEditionAsync(new ClubId("1"), default)));
        card = await PressAsync(house, card, "take it back");
        card = await PressAsync(house, card, card.Usable.First().Label);
        Assert.Equal(2, await house.Store.NewestEditionAsync(ClubOf(house), default));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task NonModerator_ByCommandForgedIdOldButtonAndCompletion_GetsNothing()
    {
        await using var house = await OpenAsync();
        var role = house.Platform.AddRole(house.Guild, "Rule keepers");
        house.Platform.Join(house.Guild, house.Rider, role);
        Assert.Contains("Not done", (await UseAsync(house, house.Rider, "rules show")).Words, StringComparison.Ordinal);
        await UseAsync(house, house.Owner, "rules settings", ("may-publish", role));
        var old = await UseAsync(house, house.Rider, "rules write", ("sheet", "phrase"));
        house.Platform.TakeRole(house.Guild, house.Rider, role);
        // The role is gone between the opening of the card and the press on it.
        var deed = await house.Platform.PressAsync(house.Rider, old, old.Usable.First(c => c.Kind == 2).CustomId!);
        Assert.Contains("Not done", (await deed.Settled).Message!.Words, StringComparison.Ordinal);
        foreach (var id in new[] { "teach|Publish|P1|1|", "teach|TakeBack|0|1|", "teach|Download|||", "sb1:rulesopen:P1:phrase", "teach|TwoPeople|on||" })
        {
            var forged = await (await house.Platform.ForgedPressAsync(house.Rider, old, id)).Settled;
            Assert.Contains("Not done", forged.Message!.Words, StringComparison.Ordinal);
            Assert.Empty(forged.Message.Files);
        }

        var offered = await (await house.Platform.CompleteAsync(house.Rider, house.Lobby, "rules write", "sheet", "")).Answered;
        Assert.DoesNotContain("phrase", offered.Shown?.GetRawText() ?? "", StringComparison.Ordinal);
        Assert.Equal(0, await house.Store.NewestEditionAsync(ClubOf(house), default));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Upload_HugeForeignBombOrOddUnicode_ChangesNothing()
    {
        await using var house = await OpenAsync();
        var anchors = "a: &a [x,x,x,x]\nb: &b [*a,*a,*a,*a]\nc: [*b,*b,*b,*b]\n"u8.ToArray();
        foreach (var file in new[]
        {
            house.Platform.File("big.yaml", new byte[300_000]),
            house.Platform.File("liar.yaml", new byte[300_000], toldSize: 10),
            house.Platform.File("bomb.yaml", anchors),
            house.Platform.File("odd.yaml", Encoding.UTF8.GetBytes("faults:\n- id: \u202Eevil\u0000\n")),
        })
        {
            Assert.True((await UseAsync(house, house.Owner, "rules file-in", ("file", file))).Private);
        }

        var fetched = house.Platform.FilesFetched;
        foreach (var address in new[] { "http://127.0.0.1:1/ephemeral-attachments/1/2/x", "http://169.254.169.254/attachments/1/2/x", house.Platform.Address + "/control/world" })
        {
            var told = await UseAsync(house, house.Owner, "rules file-in", ("file", house.Platform.File("far.yaml", "x"u8.ToArray(), toldAddress: address)));
            Assert.Contains("only files that are sent in the chat", told.Words, StringComparison.Ordinal);
        }

        Assert.Equal(fetched, house.Platform.FilesFetched);
        Assert.Empty(await house.Store.ProposalsAsync(ClubOf(house), ProposalState.Draft, 10, default));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Tip_WithMentions_PingsNobodyAndItsGiverHearsAloneOnce()
    {
        await using var house = await OpenAsync();
        await UseAsync(house, house.Rider, "tip", ("words", $"@everyone <@{house.Mate.Id}> grease **it**"));
        var tips = await UseAsync(house, house.Owner, "rules tips");
        var tip = await PressAsync(house, tips, tips.Usable.First().Label);
        Assert.Empty(tip.RangFor);
        Assert.False(tip.RangForEveryone);
        var form = await house.Platform.PressAsync(house.Owner, tip, tip.Control("Decline it kindly").CustomId!);
        Assert.Equal(9, (await form.Answered).Type);
        await (await house.Platform.SubmitAsync(form, new Dictionary<string, object> { ["words"] = "Known already, thank you." })).Settled;
        var direct = house.Platform.DirectChannel(house.Rider);
        await ClubHouse.UntilAsync(() => house.Platform.Messages(direct).Count > 0, "the word");
        await house.RestartAsync();
        var said = Assert.Single(house.Platform.Messages(direct));
        Assert.Contains("Known already", said.Words, StringComparison.Ordinal);
        Assert.Empty(said.RangFor);
        house.AssertNoViolations();
    }

    private static ClubId ClubOf(ClubHouse house) => new(house.Guild.Id.ToString(System.Globalization.CultureInfo.InvariantCulture));

    private async Task<ClubHouse> OpenAsync()
    {
        var house = await ClubHouse.OpenAsync(output, trials: new QuickTrials());
        return house;
    }

    private static async Task<SeenMessage> UseAsync(ClubHouse house, Person who, string command, params (string Name, object Value)[] options)
    {
        var answer = await (await house.Platform.CommandAsync(who, house.Lobby, command, options.ToDictionary(o => o.Name, o => o.Value))).Settled;
        Assert.True(answer.Message?.Private, $"{command}: no private answer");
        return answer.Message!;
    }

    private static async Task<SeenMessage> PressAsync(ClubHouse house, SeenMessage card, string label)
    {
        var deed = card.Usable.FirstOrDefault(c => c.Label == label) is { CustomId: { } id } ? await house.Platform.PressAsync(house.Owner, card, id) : throw new InvalidOperationException($"No '{label}' among: {string.Join(" | ", card.Usable.Select(c => c.Label))}\n{card.Words}");
        var answer = await deed.Settled;
        return answer.Message ?? throw new InvalidOperationException($"'{label}' was not answered.");
    }

    /// <summary>Answers whatever is asked next: with the first of a list, or with words of our own.</summary>
    private static async Task<SeenMessage> AnswerAsync(ClubHouse house, SeenMessage card)
    {
        if (card.Usable.FirstOrDefault(c => c.Label is "Write it" or "Answer these") is not { CustomId: { } id })
        {
            var list = card.Usable.FirstOrDefault(c => c.Choices.Count > 0);
            return list is null
                ? await PressAsync(house, card, card.Usable.First(c => c.CustomId!.StartsWith("teach|Say", StringComparison.Ordinal)).Label)
                : (await (await house.Platform.PickAsync(house.Owner, card, list.CustomId!, list.Choices[0].Value)).Settled).Message!;
        }

        var opened = await house.Platform.PressAsync(house.Owner, card, id);
        var form = (await opened.Answered).Shown!.Value;
        var values = new Dictionary<string, object>();
        foreach (var field in form.GetProperty("components").EnumerateArray().Select(c => c.GetProperty("component")))
        {
            var name = field.GetProperty("custom_id").GetString()!;
            if (field.GetProperty("type").GetInt32() == 3) values[name] = new[] { field.GetProperty("options")[0].GetProperty("value").GetString()! };
            else if (!field.TryGetProperty("value", out _)) values[name] = "the wheel grumbles like an old bear";
        }

        return (await (await house.Platform.SubmitAsync(opened, values)).Settled).Message!;
    }
}
