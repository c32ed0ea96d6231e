using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>A club's moderators choose how ShedBot works there. Who may is checked here, whatever the platform let through.</summary>
internal sealed class SetUp(Parts parts, RightsCheck rights)
{
    private const int MostTries = 5;

    public static TimeZoneInfo ZoneOf(Coaching.Clubs.Club club) => TimeZoneInfo.TryFindSystemTimeZoneById(club.TimeZone, out var zone) ? zone : TimeZoneInfo.Utc;

    public static bool IsModerator(Interaction used) =>
        (RightsCheck.Read(used.Member?.Permissions) & (Rights.Administrator | Rights.ManageGuild)) != 0;

    public async Task HandleAsync(Interaction used, Acknowledgement live, CancellationToken ct)
    {
        if (used.GuildId.IsNone || !IsModerator(used))
        {
            await live.TellAsync(Texts.Draw(Texts.ModeratorsOnly), ct);
            return;
        }

        await live.AnnounceAsync(ct);
        var sub = used.Data?.Options?.FirstOrDefault(o => o.Type == OptionTypes.SubCommand);
        var chosen = sub?.Name == ClubCommands.SetUp ? sub.Options ?? [] : [];
        if (Refuse(chosen) is { } refusal)
        {
            await live.TellAsync(Texts.Draw(refusal), ct);
            return;
        }

        var club = await ChangeAsync(Names.Club(used.GuildId), c => chosen.Aggregate(c, (before, o) => Choose(before, o, used.Id)), chosen.Count > 0, ct);
        var missing = club.HelpChannel is { } help ? await rights.MissingAsync(club.Id, help, ct) : [];
        await live.TellAsync(Texts.Draw(Card(club, missing), Links(club)), ct);
    }

    /// <summary>Changes a club as it is by then; a club not yet known is begun.</summary>
    public async Task<Coaching.Clubs.Club> ChangeAsync(ClubId id, Func<Coaching.Clubs.Club, Coaching.Clubs.Club> change, bool save, CancellationToken ct)
    {
        for (var tries = 1; ; tries++)
        {
            var before = await parts.Clubs.FindClubAsync(id, ct) ?? Coaching.Clubs.Club.New(id);
            if (!save) return before;
            var after = change(before) with { Version = before.Version + 1 };
            try
            {
                await parts.Clubs.SaveClubAsync(after, ct);
                return after;
            }
            catch (StaleSaveException) when (tries < MostTries)
            {
                // Somebody else changed it since it was read: the change is made to the club as it is now.
            }
        }
    }

    private static Card? Refuse(IReadOnlyList<CommandOptionValue> chosen) =>
        chosen.FirstOrDefault(o => o.Name == ClubCommands.TimeZone) is { Text: { } zone } && !TimeZoneInfo.TryFindSystemTimeZoneById(zone.Trim(), out _)
            ? Texts.Plain("I do not know that time zone", $"\"{zone}\" is not in the list of the world's time zones. Write it as region and city, such as Europe/Lisbon or America/Denver. Nothing was changed.")
            : null;

    private static Coaching.Clubs.Club Choose(Coaching.Clubs.Club club, CommandOptionValue option, Snowflake now) => option.Name switch
    {
        ClubCommands.HelpChannel => club with { HelpChannel = option.Text, LastHeard = now.ToString() },
        ClubCommands.HelperRole => club with { HelperRole = option.Text },
        ClubCommands.Units when Enum.TryParse<Units>(option.Text, out var units) && Enum.IsDefined(units) => club with { Units = units },
        ClubCommands.TimeZone when option.Text is { } zone => club with { TimeZone = zone.Trim() },
        _ => club,
    };

    private static string? Links(Coaching.Clubs.Club club)
    {
        var links = new[] { club.HelpChannel is null ? null : $"Help channel: <#{club.HelpChannel}>", club.HelperRole is null ? null : $"Helpers: <@&{club.HelperRole}>" };
        return links.Any(l => l is not null) ? string.Join("   ", links.OfType<string>()) : null;
    }

    private static Card Card(Coaching.Clubs.Club club, ImmutableArray<string> missing)
    {
        var how = new List<string>
        {
            club.HelpChannel is null ? "No help channel yet: choose one with /club set-up help-channel" : "Help is given in the channel above, and in threads under it",
            club.HelperRole is null ? "Nobody is called when a case needs a human: choose with /club set-up helper-role" : "The role above is called when a case needs a human. If nobody is pinged: allow everybody to mention that role in its settings",
            $"Units: {(club.Units == Units.Metric ? "millimetres and kilometres" : "inches and miles")}",
            $"Time zone: {club.TimeZone}",
        };
        CardBlock allowed = missing.IsEmpty
            ? new TextBlock(club.HelpChannel is null ? "Once a channel is chosen I tell what I must be allowed to do there." : "I may do all that I must in the help channel.")
            : new ListBlock("In the help channel I still lack (a moderator can give it to my role in the channel's settings)", missing);
        return new Card("How I work in this club", [new ListBlock("", [.. how]), allowed], []);
    }
}
