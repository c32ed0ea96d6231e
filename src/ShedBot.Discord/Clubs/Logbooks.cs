using ShedBot.Coaching;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Logbook;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>The logbook of a member's bike: what was ridden and serviced, and what is coming due. All of it is said to the member alone.</summary>
internal sealed class Logbooks(Parts parts)
{
    public static readonly Ways Ways = new(
        Ride: "/ride log",
        Pace: "/ride pace",
        Undo: "/ride undo",
        Plan: "/service plan",
        Whole: "/service plan whole:True",
        Fitted: "/service fitted",
        Done: "/service done task:{0}",
        How: "/service how task:{0}",
        Trouble: "/trouble");

    /// <returns>Whether something was noted.</returns>
    public async Task<bool> HandleAsync(InteractionCame came, CommandOptionValue sub, Acknowledgement live, CancellationToken ct)
    {
        var used = came.Interaction;
        if (used.Who is not { } who || used.GuildId.IsNone)
        {
            await live.TellAsync(Texts.Draw(Texts.OnlyInClub), ct);
            return false;
        }

        var id = Names.Club(used.GuildId);
        var speaker = await SpeakerAsync(id, id.Member(who.Id.ToString()), ct);
        if (Read(used.Data!.Name!, sub, speaker, came.At) is not { } read)
        {
            await live.TellAsync(Texts.Draw(Texts.NotMineAnyMore), ct);
            return false;
        }

        if (read.Refused is { } refused)
        {
            await live.TellAsync(Texts.Draw(Texts.Plain("Not noted", refused.Say)), ct);
            return false;
        }

        var answer = await parts.Logbook.HandleAsync(speaker, Names.UsedEvent(used.Id), read.Must, came.At, ct);
        var drawn = answer.Picture is { } picture ? Painted(picture) : Texts.Draw(answer.Card);
        await live.TellAsync(answer.Files.IsDefaultOrEmpty ? drawn : drawn.WithFiles(answer.Files.Select(f => new Upload(f.Name, f.MediaType, f.Bytes.AsMemory()))), ct);
        return read.Must is BikeEntry && answer.Refused is null;
    }

    /// <summary>The member, in their own days and units where they told them, else the club's.</summary>
    public async Task<Speaker> SpeakerAsync(ClubId id, MemberId member, CancellationToken ct)
    {
        var club = await parts.Clubs.FindClubAsync(id, ct) ?? Coaching.Clubs.Club.New(id);
        return Speaker.Of(await parts.Riders.FindAsync(member, ct), club.Units, club.TimeZone, Ways);
    }

    /// <summary>Offers the tasks that fit what is typed so far.</summary>
    public Task SuggestAsync(Interaction used, Acknowledgement live, CancellationToken ct)
    {
        var typed = used.Data?.Options?.SelectMany(o => o.Options ?? []).FirstOrDefault(o => o.Focused == true)?.Text ?? "";
        var fitting = TaskWords.Offered(parts.Coach().Knowledge, typed, Limits.SelectOptions);
        return live.OfferAsync([.. fitting.Select(r => new CommandChoice(TextRuns.Cut(r.Called, Limits.SelectText), r.Id))], ct);
    }

    /// <returns>Null for a command that was never ours.</returns>
    private Result<BikeRequest>? Read(string command, CommandOptionValue sub, Speaker speaker, DateTimeOffset at)
    {
        var knowledge = parts.Coach().Knowledge;
        return (command, sub.Name) switch
        {
            (ClubCommands.Ride, ClubCommands.Log) => BikeForms.Ride(
                Text(sub, ClubCommands.Distance), Text(sub, ClubCommands.Time), Text(sub, ClubCommands.Weather), Text(sub, ClubCommands.Day), speaker, at),
            (ClubCommands.Ride, ClubCommands.Pause) => BikeForms.Rest(Text(sub, ClubCommands.Until), speaker, at),
            (ClubCommands.Ride, ClubCommands.Again) => (BikeRequest)new RidingAgainEntry(),
            (ClubCommands.Ride, ClubCommands.Pace) => BikeForms.Pace(Text(sub, ClubCommands.DaysAWeek) ?? "", Text(sub, ClubCommands.Distance), Text(sub, ClubCommands.Time), speaker),
            (ClubCommands.Ride or ClubCommands.Service, ClubCommands.Undo) => (BikeRequest)new UndoEntry(),
            (ClubCommands.Service, ClubCommands.Plan) => (BikeRequest)new ShowPlan(Text(sub, ClubCommands.Whole) is "True" or "true"),
            (ClubCommands.Service, ClubCommands.Timeline) => BikeForms.Timeline(Text(sub, ClubCommands.Look)),
            (ClubCommands.Service, ClubCommands.Done) => BikeForms.Done(Text(sub, ClubCommands.Task) ?? "", Text(sub, ClubCommands.Day), knowledge, speaker, at),
            (ClubCommands.Service, ClubCommands.How) => BikeForms.How(Text(sub, ClubCommands.Task) ?? "", knowledge),
            (ClubCommands.Service, ClubCommands.Fitted) => BikeForms.Fitted(Text(sub, ClubCommands.Day) ?? "", speaker, at),
            (ClubCommands.Service, ClubCommands.Export) => (BikeRequest)new TakeCopy(),
            _ => (Result<BikeRequest>?)null,
        };
    }

    /// <summary>Told in words where it cannot be painted, and also where the words are too many for the description of a picture.</summary>
    private Drawn Painted(TimelinePicture picture)
    {
        var timeline = picture.Timeline;
        if (parts.Paint(timeline, picture.Look) is not { } png) return Texts.Draw(TimelineCards.Whole(timeline));
        var (words, whole) = TimelineCards.Describe(timeline, Limits.AltText);
        return Texts.Draw(whole ? TimelineCards.Beside(timeline, Ways) : TimelineCards.Whole(timeline)).WithPicture("timeline.png", new Picture(png.AsMemory(), words));
    }

    private static string? Text(CommandOptionValue sub, string name) => sub.Options?.FirstOrDefault(o => o.Name == name)?.Text;
}
