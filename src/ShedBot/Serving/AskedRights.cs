using System.Collections.Immutable;
using System.Globalization;
using System.Web;

namespace ShedBot.Serving;

/// <summary>What a link asks to be allowed, in words.</summary>
/// <remarks>Bits: the platform's published list of permissions. Names: as its own screens show them, so that a moderator finds them.</remarks>
internal static class AskedRights
{
    private static readonly ImmutableArray<(int Bit, string Name, string Why)> Known =
    [
        (10, "View Channels", "to see the help channel"),
        (11, "Send Messages", "to answer there"),
        (14, "Embed Links", "to show cards that are easy to read"),
        (15, "Attach Files", "to show drawings"),
        (16, "Read Message History", "to see what a reply answers, and what came while it was away"),
        (35, "Create Public Threads", "to give each case a thread"),
        (36, "Create Private Threads", "for members who ask for one"),
        (38, "Send Messages in Threads", "to talk a case through"),
    ];

    /// <exception cref="InvalidOperationException">The link asks for something that has no words here: then it must not be handed out.</exception>
    public static ImmutableArray<(string Name, string Why)> Of(Uri link)
    {
        var asked = ulong.Parse(HttpUtility.ParseQueryString(link.Query)["permissions"]!, CultureInfo.InvariantCulture);
        var unknown = Known.Aggregate(asked, (left, k) => left & ~(1UL << k.Bit));
        return unknown == 0
            ? [.. Known.Where(k => (asked & (1UL << k.Bit)) != 0).Select(k => (k.Name, k.Why))]
            : throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"No words for the permissions {unknown}."));
    }
}
