using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace ShedBot.DiscordStandIn.World;

/// <summary>Whom a message rings for: what its words name, narrowed by <c>allowed_mentions</c>.</summary>
internal static partial class Mentions
{
    /// <param name="words">All text that shows.</param>
    /// <param name="allowed">The request's <c>allowed_mentions</c>; null when absent.</param>
    /// <param name="peopleOnlyByDefault">Answers to interactions parse only people when nothing is said; ordinary messages parse all.</param>
    public static Pings Of(string words, JsonElement? allowed, bool peopleOnlyByDefault, Message? repliedTo, Guild? guild, bool mayRingAll)
    {
        var said = allowed is { ValueKind: JsonValueKind.Object };
        var parse = said
            ? allowed.Of("parse").AsItems().Select(p => p.GetString()).ToHashSet()
            : peopleOnlyByDefault ? ["users"] : ["users", "roles", "everyone"];
        var namedPeople = IdsOf(PersonMark(), words);
        var namedRoles = IdsOf(RoleMark(), words);
        var people = parse.Contains("users") ? namedPeople : [.. namedPeople.Intersect(ListOf(allowed, "users"))];
        var roles = parse.Contains("roles") ? namedRoles : [.. namedRoles.Intersect(ListOf(allowed, "roles"))];
        roles.RemoveAll(id => guild?.RoleOf(id) is not { } role || !(role.Mentionable || mayRingAll));
        if (repliedTo is not null && (said ? allowed.Of("replied_user").AsFlag() ?? false : !peopleOnlyByDefault))
            people.Add(repliedTo.Author.Id);
        var everyone = mayRingAll && parse.Contains("everyone") && EveryoneMark().IsMatch(words);
        return new Pings([.. people.Distinct()], [.. roles.Distinct()], everyone);
    }

    /// <summary>Whether the words themselves name the person.</summary>
    public static bool Names(string words, ulong personId) => IdsOf(PersonMark(), words).Contains(personId);

    private static IEnumerable<ulong> ListOf(JsonElement? allowed, string name) =>
        allowed.Of(name).AsItems().Select(i => ((JsonElement?)i).AsId() ?? 0);

    private static List<ulong> IdsOf(Regex mark, string words) =>
        [.. mark.Matches(words).Select(m => ulong.Parse(m.Groups[1].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture))];

    [GeneratedRegex("<@!?([0-9]{1,19})>")]
    private static partial Regex PersonMark();

    [GeneratedRegex("<@&([0-9]{1,19})>")]
    private static partial Regex RoleMark();

    [GeneratedRegex("@(everyone|here)")]
    private static partial Regex EveryoneMark();
}
