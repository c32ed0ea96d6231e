using System.Globalization;
using ShedBot.Discord.Drawing;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.Discord.Tests.Campaign;

/// <summary>What the platform shows of ours in a thread.</summary>
internal static class Panels
{
    /// <summary>The least number that marks a message; the platform's own numbering stays far below.</summary>
    private const int LeastMark = 1 << 30;

    public static IReadOnlyList<SeenMessage> Ours(CampaignClub club, Channel thread) =>
        [.. club.Platform.Messages(thread, removed: false).Where(m => m.AuthorId == club.Platform.Bot.Id && !m.Private)];

    /// <summary>The newest message of ours that can be answered.</summary>
    public static SeenMessage? Last(CampaignClub club, Channel thread) => Ours(club, thread).LastOrDefault(m => m.Usable.Any());

    public static IEnumerable<int> Marks(SeenMessage message) => message.Parts.EnumerateArray()
        .Select(p => p.TryGetProperty("id", out var id) ? id.GetInt32() : 0)
        .Where(id => id >= LeastMark);

    /// <summary>Case and number of the question that a message asks.</summary>
    public static (string Case, int Serial)? Asks(SeenMessage message) => message.Usable
        .Select(c => CustomId.Read(c.CustomId))
        .Where(id => id is not null)
        .Select(id => (id!.Value.Case.Value, Serial: string.Concat(id.Value.Rest.TakeWhile(char.IsAsciiDigit))))
        .Where(x => x.Serial.Length > 0)
        .Select(x => ((string, int)?)(x.Value, int.Parse(x.Serial, CultureInfo.InvariantCulture)))
        .FirstOrDefault();
}
