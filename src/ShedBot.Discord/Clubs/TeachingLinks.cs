using System.Text.RegularExpressions;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>Where something was said, as the platform links it: club, channel or thread, and the message where there is one.</summary>
internal static partial class TeachingLinks
{
    private const string Begin = "https://discord.com/channels/";

    public static string To(Snowflake guild, Snowflake channel, Snowflake message) => $"{Begin}{guild}/{channel}{(message.IsNone ? "" : $"/{message}")}";

    /// <returns>A line in the platform's markup; null when the text is no such link, or one into another club.</returns>
    public static string? Line(string where, Snowflake guild) => Parts().Match(where) is { Success: true } link && link.Groups["guild"].Value == guild.ToString()
        ? $"-# Said in <#{link.Groups["channel"].Value}>: <{where}>"
        : null;

    [GeneratedRegex(@"\Ahttps://discord\.com/channels/(?<guild>[0-9]{1,20})/(?<channel>[0-9]{1,20})(/[0-9]{1,20})?\z", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture)]
    private static partial Regex Parts();
}
