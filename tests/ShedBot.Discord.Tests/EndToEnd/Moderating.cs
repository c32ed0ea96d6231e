using System.Globalization;
using System.Text;
using ShedBot.Coaching.Clubs;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>What moderators do with a club's rules, in short: a file is handed in, tried and published by the buttons of its card.</summary>
internal static class Moderating
{
    /// <summary>A club's file with one answer to 'how do I'; the answers are invented.</summary>
    /// <param name="name">Of the answer; its id and its words are made of it.</param>
    /// <param name="edition">The edition that the file was made of; null: it does not say.</param>
    public static string HowTo(string name, int? edition = null) => $"""
        about:
          covers: what our club knows better
          author: Mod A
          source: common practice
          date: 2026-05-01
        {(edition is null ? "" : $"  edition: {edition}")}
        how to:
        {Item(name)}
        """;

    public static string Item(string name) => $"""
          - id: {name}
            called: {name} for the winter
            riders ask: [how do I {name} it before the winter]
            answer: [First {name} it well., Then put a cloth over it.]
            author: Mod A
            source: common practice
            date: 2026-05-01
        """;

    public static ClubId ClubOf(Guild guild) => new(guild.Id.ToString(CultureInfo.InvariantCulture));

    public static Task<int> EditionAsync(this ClubHouse house) => house.Store.NewestEditionAsync(ClubOf(house.Guild), default);

    /// <summary>Uses a command; the answer is for this one alone.</summary>
    public static async Task<SeenMessage> AskAsync(this ClubHouse house, Person who, string command, params (string Name, object Value)[] options) =>
        await house.AskAsync(who, house.Lobby, command, options);

    public static async Task<SeenMessage> AskAsync(this ClubHouse house, Person who, Channel where, string command, params (string Name, object Value)[] options)
    {
        var answer = await (await house.Platform.CommandAsync(who, where, command, options.ToDictionary(o => o.Name, o => o.Value))).Settled;
        Assert.True(answer.Message?.Private, $"/{command}: no private answer");
        return answer.Message!;
    }

    public static async Task<SeenMessage> UseCardAsync(this ClubHouse house, Person who, SeenMessage card, string label) =>
        (await (await house.Platform.PressAsync(who, card, card.Control(label).CustomId!)).Settled).Message ?? throw new InvalidOperationException($"[{label}] was not answered.");

    /// <summary>A button that no app would show there.</summary>
    public static async Task<SeenMessage> ForgeAsync(this ClubHouse house, Person who, SeenMessage card, string id) =>
        (await (await house.Platform.ForgedPressAsync(who, card, id)).Settled).Message ?? throw new InvalidOperationException($"'{id}' was not answered.");

    /// <summary>Hands a file in and has it tried.</summary>
    /// <returns>Its card, with the result of the trial.</returns>
    public static async Task<SeenMessage> TriedAsync(this ClubHouse house, Person who, string file)
    {
        var card = await house.AskAsync(who, "rules file-in", ("file", house.Platform.File("own.yaml", Encoding.UTF8.GetBytes(file))));
        Assert.True(card.Usable.Any(c => c.Label == "Try it out"), card.Words);
        card = await house.UseCardAsync(who, card, "Try it out");
        await ClubHouse.UntilAsync(() => house.Platform.Now(card).Usable.Any(c => c.Label is "Publish it" or "Hand it in"), "the trial", ClubHouse.TrialPatience);
        return house.Platform.Now(card);
    }

    public static async Task<SeenMessage> PublishedAsync(this ClubHouse house, Person who, string file) => await house.UseCardAsync(who, await house.TriedAsync(who, file), "Publish it");

    /// <summary>Another one who may do all with the rules.</summary>
    public static async Task<Person> SecondModeratorAsync(this ClubHouse house)
    {
        var role = house.Platform.AddRole(house.Guild, "Rule keepers");
        var second = house.Platform.AddPerson("Nell");
        house.Platform.Join(house.Guild, second, role);
        await house.AskAsync(house.Owner, "rules settings", ("may-publish", role));
        return second;
    }
}
