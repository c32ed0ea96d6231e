using ShedBot.DiscordStandIn.World;

namespace ShedBot.Discord.Tests.Campaign;

/// <summary>An invented member without a trouble: chats about something else, and looks at what ShedBot shows without a case. Nothing of it is a turn.</summary>
internal sealed class Bystander(CampaignClub club, Person who, Random chance)
{
    private static readonly TimeSpan Between = TimeSpan.FromMilliseconds(250);

    public async Task IdleAsync(Task until)
    {
        while (await Task.WhenAny(until, Task.Delay(Between)) != until)
        {
            var dice = chance.NextDouble();
            if (dice < 0.6) await club.Platform.SayAsync(who, club.Lobby, "who brings the cake on Sunday?");
            else await club.Platform.CommandAsync(who, club.Lobby, dice < 0.85 ? "shedbot about" : "bike show");
        }
    }
}
