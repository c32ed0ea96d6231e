using ShedBot.DiscordStandIn;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.Discord.Tests.StandInRules;

/// <summary>An invented club with one room and one member, and the bare bot logged in.</summary>
internal sealed record Scene(StandIn Platform, BareBot Bot, Guild Club, Channel Room, Person Ann) : IAsyncDisposable
{
    public static async Task<Scene> SetAsync(StandInOptions? options = null)
    {
        var platform = await StandIn.StartAsync(options);
        var club = await platform.AddGuildAsync("Invented club");
        var room = platform.AddTextChannel(club, "workshop");
        var ann = platform.AddPerson("invented-ann");
        platform.Join(club, ann);
        return new Scene(platform, await BareBot.LoggedInAsync(platform), club, room, ann);
    }

    /// <summary>The bot posts a message; it is given back as members see it.</summary>
    public async Task<SeenMessage> PanelAsync(string json)
    {
        Assert.Equal(200, (await Bot.CallAsync("POST", $"channels/{Room.Id}/messages", json)).Status);
        return Platform.Messages(Room)[^1];
    }

    public async ValueTask DisposeAsync()
    {
        await Bot.DisposeAsync();
        await Platform.DisposeAsync();
    }
}
