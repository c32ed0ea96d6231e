using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Turns;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>The members' commands, and the form that asks for the trouble.</summary>
internal sealed class Commanding(Parts parts, Rooms rooms, Starting starting, Turns turns, Delivery delivery, CaseEyes eyes, Logbooks logbooks, BikeSheets sheets, Reminders reminders)
{
    /// <returns>Whether something was noted that can fall due.</returns>
    public async Task<bool> HandleAsync(InteractionCame came, Acknowledgement live, CancellationToken ct)
    {
        var (used, data) = (came.Interaction, came.Interaction.Data!);
        var sub = data.Options?.FirstOrDefault(o => o.Type == OptionTypes.SubCommand);
        switch (data.Name, sub?.Name)
        {
            case (ClubCommands.Trouble, _):
                await TroubleAsync(came, Text(data.Options, ClubCommands.Words), Flag(data.Options, ClubCommands.Private), Text(data.Options, ClubCommands.Bike), live, ct);
                break;
            case (ClubCommands.Bike, ClubCommands.SetUp) when used is { GuildId.IsNone: false, Who: { } who }:
                var club = Names.Club(used.GuildId);
                await sheets.BeginAsync(await logbooks.SpeakerAsync(club, club.Member(who.Id.ToString()), ct), Logbooks.Text(sub!, ClubCommands.Bike), live, ct);
                break;
            case (ClubCommands.Case, { } about):
                await CaseAsync(came, about, sub, live, ct);
                break;
            case (ClubCommands.Bike or ClubCommands.Ride or ClubCommands.Service, { }):
                return await logbooks.HandleAsync(came, sub, live, ct);
            case (ClubCommands.Reminders, { }):
                await reminders.HandleAsync(came, sub, live, ct);
                break;
            case (ClubCommands.ShedBot, ClubCommands.About):
                await live.TellAsync(Texts.Draw(AboutCards.About), ct);
                break;
            case (ClubCommands.ShedBot, ClubCommands.Privacy):
                await live.TellAsync(Texts.Draw(AboutCards.Privacy), ct);
                break;
            case (ClubCommands.ShedBot, ClubCommands.Leave):
                await live.TellAsync(Leaving.Ask(), ct);
                break;
            default:
                await live.TellAsync(Texts.Draw(Texts.NotMineAnyMore), ct);
                break;
        }

        return false;
    }

    /// <summary>Whether the answer will be a form: that one cannot be announced.</summary>
    public static bool AnswersWithForm(Interaction used) =>
        used.Data is { Name: ClubCommands.Trouble } data && string.IsNullOrWhiteSpace(Text(data.Options, ClubCommands.Words));

    /// <param name="words">Empty: a form asks for them.</param>
    /// <param name="bike">The bike that is named, or null: the one in use.</param>
    public async Task TroubleAsync(InteractionCame came, string? words, bool @private, string? bike, Acknowledgement live, CancellationToken ct)
    {
        var used = came.Interaction;
        if (used.Who is not { } who || used.GuildId.IsNone)
        {
            await live.TellAsync(Texts.Draw(Texts.OnlyInClub), ct);
            return;
        }

        if (string.IsNullOrWhiteSpace(words))
        {
            await live.ShowFormAsync(Forms.Trouble(@private, bike), ct);
            return;
        }

        BikeId? about = null;
        if (!string.IsNullOrWhiteSpace(bike))
        {
            var found = Garage.Find(await parts.Logbook.BikesAsync(Names.Club(used.GuildId).Member(who.Id.ToString()), ct), bike);
            if (found.Refused is { } refused)
            {
                await live.TellAsync(Texts.Draw(Texts.Plain("Which bike?", refused.Say)), ct);
                return;
            }

            about = found.Must.Id;
        }

        if (await rooms.FindByThreadAsync(used.ChannelId, ct) is { State: RoomState.Open } here && here.MayAnswer(here.Club.Member(who.Id.ToString())))
        {
            await live.AnnounceAsync(ct);
            await turns.TakeAsync(here, new MemberSaid(Names.OpeningEvent(used.Id), words), null, null, came.At, ct);
            await live.TellAsync(Texts.Draw(Texts.Opened, $"<#{here.Thread}>"), ct);
            return;
        }

        var club = Names.Club(used.GuildId);
        if (await parts.Clubs.FindClubAsync(club, ct) is not { HelpChannel: { } help } || Snowflake.Read(help) is not { } channel)
        {
            await live.TellAsync(Texts.Draw(Texts.NoHelpChannel), ct);
            return;
        }

        await live.AnnounceAsync(ct);
        if (@private && ChannelTypes.IsForum((await parts.Rest.GetChannelAsync(channel, ct)).Type))
        {
            await live.TellAsync(Texts.Draw(Texts.NoPrivateForum, $"<#{channel}>"), ct);
            return;
        }

        var wish = new StartWish(club, who.Id, People.NameOf(used.Member, who), used.Id, words, channel, default, default, @private, came.At)
        {
            About = about,
        };
        var started = await starting.StartAsync(wish, live, ct);
        foreach (var card in started.Instead) await live.TellAsync(Texts.Draw(card, started.Link), ct);
        if (started.Room?.Thread is { } thread) await live.TellAsync(Texts.Draw(Texts.Opened, $"<#{thread}>"), ct);
    }

    private async Task CaseAsync(InteractionCame came, string about, CommandOptionValue sub, Acknowledgement live, CancellationToken ct)
    {
        var used = came.Interaction;
        if (used.Who is not { } who
            || await rooms.FindByThreadAsync(used.ChannelId, ct) is not { State: not RoomState.Gone } room
            || await parts.Store.FindLastCaseAsync(room.Member, room.Place, ct) is not { } @case)
        {
            await live.TellAsync(Texts.Draw(Texts.NoCaseHere), ct);
            return;
        }

        var caller = room.Club.Member(who.Id.ToString());
        if (about == ClubCommands.Thoughts)
        {
            // Anybody in the thread has read all of it: what follows from it is no secret.
            await live.TellAsync(Texts.Draw(await eyes.BeliefAsync(@case, ct)), ct);
            return;
        }

        if (about == ClubCommands.Helper ? caller != room.Member : !room.MayAnswer(caller))
        {
            await live.TellAsync(Texts.Draw(Texts.NotYours, $"<@{Names.Person(room.Member)}>"), ct);
            return;
        }

        await live.AnnounceAsync(ct);
        switch (about)
        {
            case ClubCommands.GoOn:
                await delivery.PutAnewAsync(room, used.Id, ct);
                await live.TellAsync(Texts.Draw(@case.IsClosed ? Texts.CaseClosed : Texts.Anew), ct);
                break;
            case ClubCommands.Helper when Snowflake.Read(Text(sub.Options, ClubCommands.Who)) is { } helper:
                await rooms.ChangeAsync(room.Place, r => r with { Helpers = r.Helpers.Contains(r.Club.Member(helper.ToString())) ? r.Helpers : r.Helpers.Add(r.Club.Member(helper.ToString())) }, ct);
                await live.TellAsync(Texts.Draw(Texts.HelperNamed, $"<@{helper}>"), ct);
                break;
            case ClubCommands.Leave:
                await turns.TakeAsync(room, new MemberLeft(Names.OpeningEvent(used.Id)), null, null, came.At, ct);
                await live.TellAsync(Texts.Draw(Texts.CaseClosed), ct);
                break;
            default:
                await live.TellAsync(Texts.Draw(Texts.NotMineAnyMore), ct);
                break;
        }
    }

    private static string? Text(IReadOnlyList<CommandOptionValue>? options, string name) => options?.FirstOrDefault(o => o.Name == name)?.Text;

    private static bool Flag(IReadOnlyList<CommandOptionValue>? options, string name) =>
        options?.FirstOrDefault(o => o.Name == name)?.Value is { ValueKind: System.Text.Json.JsonValueKind.True };
}
