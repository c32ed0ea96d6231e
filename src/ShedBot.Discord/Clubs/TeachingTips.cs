using System.Text;
using ShedBot.Coaching.Teaching;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>What members know, passed on by a command or from the menu of a message.</summary>
internal static class TeachingTips
{
    private const string Digits = "0123456789abcdefghijklmnopqrstuvwxyz";

    public static (TeachRequest? Request, Drawn? Instead) Own(Interaction used) => (
        new PassTip(
            used.Data?.Options?.FirstOrDefault(o => o.Name == TeachingCommands.Words)?.Text ?? "",
            Where: TeachingLinks.To(used.GuildId, used.ChannelId, default),
            Id: IdOf(used)),
        null);

    public static (TeachRequest? Request, Drawn? Instead) PassedOn(Interaction used, Teacher teacher)
    {
        var target = used.Data?.Resolved?.Messages?.GetValueOrDefault(used.Data.TargetId.ToString());
        if (target?.Author is not { IsBot: false } author || !target.WebhookId.IsNone) return (null, Texts.Draw(TeachingTexts.NoTip));
        return (
            new PassTip(
                target.Content ?? "",
                teacher.Club.Member(author.Id.ToString()),
                People.NameOf(target.Member, author) ?? "",
                TeachingLinks.To(used.GuildId, used.ChannelId, target.Id),
                IdOf(used)),
            null);
    }

    /// <summary>Of the very event, so that one that comes twice is one tip.</summary>
    private static string IdOf(Interaction used)
    {
        var text = new StringBuilder();
        for (var left = used.Id.Value; left > 0; left /= (ulong)Digits.Length) text.Insert(0, Digits[(int)(left % (ulong)Digits.Length)]);
        return "T" + text;
    }
}
