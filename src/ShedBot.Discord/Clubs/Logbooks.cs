using ShedBot.Coaching;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Nudging;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>The logbook of a member's bike: what was ridden and serviced, and what is coming due. All of it is said to the member alone.</summary>
internal sealed class Logbooks(Parts parts)
{
    /// <summary>Answers a question about bikes; the rest is the id of the option.</summary>
    public const string Verb = "garage";

    private const int MostFiles = 10;

    public static readonly Ways Ways = new(
        Ride: "/ride log",
        Pace: "/ride pace",
        Undo: "/ride undo",
        Plan: "/service plan",
        Whole: "/service plan whole:True",
        Fitted: "/service fitted",
        Done: "/service done task:{0}",
        How: "/service how task:{0}",
        Trouble: "/trouble",
        SetUp: "/bike set-up",
        NewBike: "/bike new",
        UseBike: "/bike use");

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
        if (await ReadAsync(used.Data!.Name!, sub, speaker, came.At, ct) is not { } read)
        {
            await live.TellAsync(Texts.Draw(Texts.NotMineAnyMore), ct);
            return false;
        }

        if (read.Refused is { } refused)
        {
            await live.TellAsync(Texts.Draw(Texts.Plain("Not noted", refused.Say)), ct);
            return false;
        }

        // Where a command is about bikes as a whole, its option is what it is about.
        var named = read.Must is GarageRequest ? null : Text(sub, ClubCommands.Bike);
        var answer = await parts.Logbook.HandleAsync(speaker, Names.UsedEvent(used.Id), read.Must, came.At, ct, named);
        var drawn = answer.Picture is { } picture ? Painted(picture) : Asked(answer.Card);
        if (answer.Files.IsDefaultOrEmpty) await live.TellAsync(drawn, ct);
        // A message takes so many files at most, and several bikes have more.
        else foreach (var files in answer.Files.Chunk(MostFiles)) await live.TellAsync(drawn.WithFiles(files.Select(f => new Upload(f.Name, f.MediaType, f.Bytes.AsMemory()))), ct);
        return read.Must is BikeEntry and not TellEntry && answer.Refused is null;
    }

    /// <summary>A question about bikes was answered.</summary>
    public async Task AnswerAsync(InteractionCame came, CustomId id, Acknowledgement live, CancellationToken ct)
    {
        if (came.Interaction is not { GuildId.IsNone: false, Who: { } who } press) return;
        var card = GarageCards.Kept;
        if (GarageCards.Sure(id.Rest) is { } remove)
        {
            var club = Names.Club(press.GuildId);
            var speaker = await SpeakerAsync(club, club.Member(who.Id.ToString()), ct);
            card = (await parts.Logbook.HandleAsync(speaker, Names.UsedEvent(press.Id), remove, came.At, ct)).Card;
        }

        if (!await live.ReplaceAsync(Texts.Draw(card), ct)) await live.TellAsync(Texts.Draw(card), ct);
    }

    /// <summary>The member, in their own days and units where they told them, else the club's.</summary>
    public async Task<Speaker> SpeakerAsync(ClubId id, MemberId member, CancellationToken ct)
    {
        var club = await parts.Clubs.FindClubAsync(id, ct) ?? Coaching.Clubs.Club.New(id);
        return Speaker.Of(await parts.Riders.FindAsync(member, ct), club.Units, club.TimeZone, Ways);
    }

    /// <summary>Offers what fits what is typed so far: tasks, fields of the sheet, the member's bikes.</summary>
    public async Task SuggestAsync(Interaction used, Acknowledgement live, CancellationToken ct)
    {
        var options = used.Data?.Options ?? [];
        var focused = options.Concat(options.SelectMany(o => o.Options ?? [])).FirstOrDefault(o => o.Focused == true);
        var (typed, knowledge) = (focused?.Text ?? "", (await parts.Coaches.OfAsync(Names.Club(used.GuildId), ct)).Knowledge);
        IEnumerable<(string Called, string Id)> fitting = focused?.Name switch
        {
            ClubCommands.What => BikeSheet.Of(knowledge).Where(f => Holds(f.Called, typed) || f.Names.Any(n => Holds(n, typed))).Select(f => (f.Called, f.Id)),
            ClubCommands.Bike when used is { GuildId.IsNone: false, Who: { } who } => (await parts.Logbook.BikesAsync(Names.Club(used.GuildId).Member(who.Id.ToString()), ct))
                .Where(b => Holds(Garage.NameOf(b), typed)).Select(b => (Garage.NameOf(b), NudgeAnswer.ShortOf(b))),
            ClubCommands.Task => TaskWords.Offered(knowledge, typed, Limits.SelectOptions).Select(r => (r.Called, r.Id)),
            _ => [],
        };
        await live.OfferAsync([.. fitting.Take(Limits.SelectOptions).Select(f => new CommandChoice(TextRuns.Cut(f.Called, Limits.SelectText), f.Id))], ct);
    }

    /// <returns>Null for a command that was never ours.</returns>
    private async Task<Result<BikeRequest>?> ReadAsync(string command, CommandOptionValue sub, Speaker speaker, DateTimeOffset at, CancellationToken ct)
    {
        var knowledge = (await parts.Coaches.OfAsync(speaker.Member, ct)).Knowledge;
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
            (ClubCommands.Bike, ClubCommands.Show) => (BikeRequest)new ShowBike(),
            (ClubCommands.Bike, ClubCommands.Tell) => SheetWords.Tell(Text(sub, ClubCommands.What) ?? "", Text(sub, ClubCommands.Value) ?? "", knowledge, speaker, at),
            (ClubCommands.Bike, ClubCommands.List) => (BikeRequest)new ShowBikes(),
            (ClubCommands.Bike, ClubCommands.New) => (BikeRequest)new NewBike(Text(sub, ClubCommands.Name) ?? ""),
            (ClubCommands.Bike, ClubCommands.Use) => (BikeRequest)new UseBike(Text(sub, ClubCommands.Bike) ?? ""),
            (ClubCommands.Bike, ClubCommands.Name) => (BikeRequest)new NameBike(Text(sub, ClubCommands.Name) ?? ""),
            (ClubCommands.Bike, ClubCommands.Remove) => (BikeRequest)new RemoveBike(Text(sub, ClubCommands.Bike) ?? "", Sure: false),
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

    /// <summary>A card that asks, with a button for each answer.</summary>
    private static Drawn Asked(Card card) => card.Options.Aggregate(
        Texts.Draw(card with { Options = [] }), (drawn, o) => drawn.WithButton(new CustomId(Verb, new CaseId(Forms.NoCase), o.Id), TextRuns.Cut(o.Label, Limits.ButtonLabel)));

    private static bool Holds(string text, string typed) => text.Contains(typed.Trim(), StringComparison.OrdinalIgnoreCase);

    internal static string? Text(CommandOptionValue sub, string name) => sub.Options?.FirstOrDefault(o => o.Name == name)?.Text;
}
