using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Teaching;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.World;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>Reports and words that were not understood in the chat: taught with one tap, painted, seen by those who may alone, and never by another club.</summary>
public sealed class ReportsInAClub(ITestOutputHelper output)
{
    private const string Trot = "she fancies a trot when i stop at the lights", NotYours = "for those to whom your club has given it";

    /// <summary>No picture, but it begins as one does.</summary>
    private static readonly byte[] Png = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 1, 2, 3];

    [Fact]
    public async Task Words_TaughtWithOneTapAndPublished_TheNextRiderIsUnderstood()
    {
        await using var house = await OpenAsync();
        await TroubleAsync(house, house.Rider, Trot);
        await TroubleAsync(house, house.Mate, $"{Trot.ToUpperInvariant()}!");
        await TroubleAsync(house, house.Mate, $"trots along at the lights @everyone <@{house.Rider.Id}>, ring 01632 960 123");
        Assert.Empty(house.Platform.Threads(house.Help));

        var list = await UseAsync(house, house.Owner, house.Lobby, "rules words");
        Assert.Contains("by 2 members", list.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("960", list.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(house.Rider.Id.ToString(System.Globalization.CultureInfo.InvariantCulture), list.Words, StringComparison.Ordinal);
        Assert.Empty(list.RangFor);
        var words = await PressAsync(house, list, list.Usable.First().Label);
        var sheet = await PressAsync(house, words, "This means: The clutch drags");
        Assert.Contains("What it changes", sheet.Words, StringComparison.Ordinal);
        var tried = await PressAsync(house, sheet, "Try it out");
        await ClubHouse.UntilAsync(() => house.Platform.Now(tried).Usable.Any(c => c.Label == "Publish it"), "the trial");
        Assert.Contains("Edition 1 is out", (await PressAsync(house, house.Platform.Now(tried), "Publish it")).Words, StringComparison.Ordinal);

        await TroubleAsync(house, house.Rider, Trot);
        Assert.Contains("So the clutch drags.", house.Panel(await house.ThreadAsync())!.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("fancies a trot", (await UseAsync(house, house.Owner, house.Lobby, "rules words")).Words, StringComparison.OrdinalIgnoreCase);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Words_SomethingElseOrNothing_ByAFormAndByATap()
    {
        await using var house = await OpenAsync();
        await TroubleAsync(house, house.Rider, Trot);
        // With one page of one only, the list has it as its first button.
        var words = await PressAsync(house, await UseAsync(house, house.Owner, house.Lobby, "rules words"), $"\"{Trot[..39]}…\"");
        var form = await house.Platform.PressAsync(house.Owner, words, words.Control("It means something else").CustomId!);
        Assert.Equal(9, (await form.Answered).Type);
        var found = (await (await house.Platform.SubmitAsync(form, new Dictionary<string, object> { ["words"] = "slack" })).Settled).Message!;
        Assert.Contains(found.Usable.SelectMany(c => c.Choices), o => o.Label == "The slack keeps coming back");

        words = await PressAsync(house, found, "back to the words");
        var left = await PressAsync(house, words, "It means nothing: drop it");
        Assert.Contains("None", left.Words, StringComparison.Ordinal);
        Assert.Empty(await house.Store.UnheardAsync(ClubOf(house.Guild), 10, default));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Chances_ComeAsAPictureWithTheSameInWords_DarkAndLight()
    {
        await using var house = await OpenAsync();
        var looks = new List<PictureLook>();
        house.PaintCalibration = (_, look) =>
        {
            lock (looks) looks.Add(look);
            return [.. Png];
        };
        for (var i = 0; i < 5; i++) await CloseAsync(house, house.Guild, i % 2 == 0 ? house.Rider : house.Mate, i);

        var shown = await ReportAsync(house, house.Lobby, "Calibration", "5 mended cases");
        var file = Assert.Single(shown.Files);
        Assert.Equal(("chances.png", "image/png"), (file.FileName, file.ContentType));
        Assert.Equal(Png, file.Bytes.ToArray());
        Assert.Contains("5 mended cases", file.Description, StringComparison.Ordinal);
        Assert.Contains("right in", file.Description, StringComparison.Ordinal);

        var light = await PressAsync(house, shown, "the picture light");
        await ClubHouse.UntilAsync(() => house.Platform.Now(light).Files.Count == 1 && looks.Count == 2, "the light picture");
        Assert.Equal([PictureLook.Dark, PictureLook.Light], looks);
        // What is shown next in its place has no picture.
        Assert.Empty((await PressAsync(house, house.Platform.Now(light), "the other reports")).Files);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Unanswered_ATapBeginsTheSheetForIt()
    {
        await using var house = await OpenAsync();
        await CloseAsync(house, house.Guild, house.Rider, 1, CasePhase.HandedOver);
        var report = await ReportAsync(house, house.Lobby, "Unanswered", "1 of 1 case");
        var sheet = await PressAsync(house, report, "A new cause: The clutch drags");
        var begun = Assert.Single(await house.Store.ProposalsAsync(ClubOf(house.Guild), ProposalState.Draft, 10, default));
        Assert.Equal("drags", Assert.Single(begun.Answers["complaint"]));
        Assert.Contains("What is wrong?", sheet.Words, StringComparison.Ordinal);
        house.AssertNoViolations();
    }

    [Fact]
    public async Task Member_ByCommandForgedIdAndOldButton_LearnsNothing()
    {
        await using var house = await OpenAsync();
        await TroubleAsync(house, house.Mate, Trot);
        await CloseAsync(house, house.Guild, house.Mate, 1);
        var role = house.Platform.AddRole(house.Guild, "Rule keepers");
        await UseAsync(house, house.Owner, house.Lobby, "rules settings", ("may-propose", role));
        house.Platform.Join(house.Guild, house.Rider, role);
        var old = await UseAsync(house, house.Rider, house.Lobby, "rules reports");
        var words = await UseAsync(house, house.Rider, house.Lobby, "rules words");
        house.Platform.TakeRole(house.Guild, house.Rider, role);

        foreach (var command in new[] { "rules reports", "rules words" }) Assert.Contains(NotYours, (await UseAsync(house, house.Rider, house.Lobby, command)).Words, StringComparison.Ordinal);
        var list = old.Usable.First(c => c.Choices.Count > 0);
        Assert.Contains(NotYours, (await (await house.Platform.PickAsync(house.Rider, old, list.CustomId!, list.Choices[0].Value)).Settled).Message!.Words, StringComparison.Ordinal);
        foreach (var id in words.Usable.Select(c => c.CustomId!).Concat(list.Choices.Select(c => c.Value)).Concat(["teach|Report|Calibration||", "teach|Report|Unanswered||", "teach|Unheard|||", "teach|Means|0|0|", "teach|MeansNothing|0||", "teach|CauseFor|drags||", "teach|OtherMeaning|0||"]))
        {
            var forged = (await (await house.Platform.ForgedPressAsync(house.Rider, words, id)).Settled).Message!;
            Assert.Contains(NotYours, forged.Words, StringComparison.Ordinal);
            Assert.DoesNotContain("trot", forged.Words, StringComparison.OrdinalIgnoreCase);
            Assert.Empty(forged.Files);
        }

        Assert.Single(await house.Store.UnheardAsync(ClubOf(house.Guild), 10, default));
        house.AssertNoViolations();
    }

    [Fact]
    public async Task AnotherClub_SeesAndReachesNothing()
    {
        await using var house = await OpenAsync();
        await TroubleAsync(house, house.Rider, Trot);
        await CloseAsync(house, house.Guild, house.Rider, 1);
        var own = await UseAsync(house, house.Owner, house.Lobby, "rules words");
        var stranger = house.Platform.AddPerson("Noor of next door");
        var other = await house.Platform.AddGuildAsync("Invented club next door", stranger);
        var lobby = house.Platform.AddTextChannel(other, "tea");

        var list = await UseAsync(house, stranger, lobby, "rules words");
        Assert.DoesNotContain("trot", list.Words, StringComparison.OrdinalIgnoreCase);
        foreach (var id in own.Usable.Select(c => c.CustomId!).Where(c => c.StartsWith("teach|UnheardWords", StringComparison.Ordinal))
            .SelectMany(c => new[] { c, c.Replace("UnheardWords", "MeansNothing", StringComparison.Ordinal), c.Replace("UnheardWords", "Means", StringComparison.Ordinal) }))
        {
            var answer = (await (await house.Platform.ForgedPressAsync(stranger, list, id)).Settled).Message!;
            Assert.DoesNotContain("trot", answer.Words, StringComparison.OrdinalIgnoreCase);
        }

        Assert.Contains("No closed case yet", (await ReportAsync(house, lobby, "WhatFixesWhat", "No closed case", stranger)).Words, StringComparison.Ordinal);
        Assert.Single(await house.Store.UnheardAsync(ClubOf(house.Guild), 10, default));
        Assert.Empty(await house.Store.ProposalsAsync(ClubOf(other), ProposalState.Draft, 10, default));
        house.AssertNoViolations();
    }

    private static ClubId ClubOf(Guild guild) => new(guild.Id.ToString(System.Globalization.CultureInfo.InvariantCulture));

    private Task<ClubHouse> OpenAsync() => ClubHouse.OpenAsync(output, trials: new QuickTrials());

    private static async Task TroubleAsync(ClubHouse house, Person who, string words) =>
        await (await house.Platform.CommandAsync(who, house.Lobby, "trouble", new Dictionary<string, object> { ["words"] = words })).Settled;

    /// <summary>A case of dragging, as it is kept when it is over.</summary>
    private static async Task CloseAsync(ClubHouse house, Guild guild, Person who, int number, CasePhase end = CasePhase.Solved)
    {
        var at = house.Clock.GetUtcNow();
        var (id, member) = (new CaseId($"closed{number}"), ClubOf(guild).Member(who.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        ImmutableArray<CaseEntry> told = [new CaseEntry(1, EntryKind.Complaint, "drags", null, 1, at), .. end == CasePhase.Solved ? [new CaseEntry(2, EntryKind.RepairHeld, "set-slack", null, 1, at)] : ImmutableArray<CaseEntry>.Empty];
        var closed = Case.New(id, member, BikeId.Of(member), "elsewhere", at) with { Phase = end, Entries = told, Turn = 2, Version = 1, ClosedAt = at };
        await house.Store.SaveAsync(new TurnSaved(closed, null, new Outcome(id, end, end == CasePhase.Solved ? "set-slack" : null, [], 1, "rules", at), []), default);
    }

    /// <summary>Asks for a report and waits until it is counted.</summary>
    private static async Task<SeenMessage> ReportAsync(ClubHouse house, Channel channel, string report, string until, Person? who = null)
    {
        var shown = await UseAsync(house, who ?? house.Owner, channel, "rules reports", ("report", report));
        await ClubHouse.UntilAsync(() => house.Platform.Now(shown).Words.Contains(until, StringComparison.Ordinal), $"{report}; it reads: {house.Platform.Now(shown).Words}");
        return house.Platform.Now(shown);
    }

    private static async Task<SeenMessage> UseAsync(ClubHouse house, Person who, Channel channel, string command, params (string Name, object Value)[] options)
    {
        var answer = await (await house.Platform.CommandAsync(who, channel, command, options.ToDictionary(o => o.Name, o => o.Value))).Settled;
        Assert.True(answer.Message?.Private, $"{command}: no private answer");
        return answer.Message!;
    }

    /// <summary>Presses a button, or picks from a list.</summary>
    private static async Task<SeenMessage> PressAsync(ClubHouse house, SeenMessage card, string label)
    {
        var deed = card.Usable.FirstOrDefault(c => c.Label == label) is { CustomId: { } id } ? await house.Platform.PressAsync(house.Owner, card, id)
            : card.Usable.SelectMany(c => c.Choices, (c, o) => (Control: c, Choice: o)).FirstOrDefault(x => x.Choice.Label == label) is { Choice: { } choice } found
                ? await house.Platform.PickAsync(house.Owner, card, found.Control.CustomId!, choice.Value)
                : throw new InvalidOperationException($"No '{label}' among: {string.Join(" | ", ClubHouse.Labels(card))}\n{card.Words}");
        return (await deed.Settled).Message ?? throw new InvalidOperationException($"'{label}' was not answered.");
    }
}
