using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Nudging;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Wire;
using ShedBot.Knowledge;

namespace ShedBot.Discord.Clubs;

/// <summary>The guided set-up of a bike: three short forms behind buttons, filled in beforehand with what is known. All of it is seen by the member alone.</summary>
internal sealed class BikeSheets(Parts parts, Logbooks logbooks)
{
    /// <summary>Opens a form, and the form that was sent in; the rest is the part of the sheet and the short id of the bike.</summary>
    public const string Open = "sheet", Filled = "sheetform";

    private const char Between = '|';

    private const int MostValue = 100, MostLabel = 45, MostHint = 100;

    public static bool Is(string verb) => verb is Open or Filled;

    /// <param name="bike">The bike that was named, or null: the one in use.</param>
    public async Task BeginAsync(Speaker speaker, string? bike, Acknowledgement live, CancellationToken ct)
    {
        var bikes = await parts.Store.BikesOfAsync(speaker.Member, ct);
        var found = bike is null ? await parts.Logbook.BikeAsync(speaker.Member, ct) : Garage.Find(bikes, bike);
        if (found.Refused is { } refused)
        {
            await live.TellAsync(Texts.Draw(Texts.Plain("Which bike?", refused.Say)), ct);
            return;
        }

        var card = new Card(
            bikes.Length > 1 ? $"What is known of {Garage.NameOf(found.Must)}" : "What is known of your bike",
            [new TextBlock("Three short forms, in any order. Every field may stay empty; what you don't know can wait until it is apart anyway.")],
            []);
        var buttons = Enum.GetValues<SheetPart>().Select(p => new Component(
            ComponentTypes.Button,
            CustomId: Id(Open, p, NudgeAnswer.ShortOf(found.Must)).ToString(),
            Style: ButtonStyles.Secondary,
            Label: Title(p)));
        await live.TellAsync(CardDrawing.Single([card], [new Component(ComponentTypes.Row, Components: [.. buttons])], null, null, AllowedMentions.None), ct);
    }

    public async Task HandleAsync(InteractionCame came, CustomId id, Acknowledgement live, CancellationToken ct)
    {
        var used = came.Interaction;
        if (used.Who is not { } who || used.GuildId.IsNone || id.Rest.Split(Between) is not [var named, var bike] || !Enum.TryParse<SheetPart>(named, out var part) || !Enum.IsDefined(part))
        {
            await live.TellAsync(Texts.Draw(Texts.NotMineAnyMore), ct);
            return;
        }

        var club = Names.Club(used.GuildId);
        var speaker = await logbooks.SpeakerAsync(club, club.Member(who.Id.ToString()), ct);
        if (id.Verb == Open) await live.ShowFormAsync(Form(part, bike, await BikeAsync(speaker, bike, ct), (await parts.Coaches.OfAsync(speaker.Member, ct)).Knowledge), ct);
        else await TakeAsync(came, part, bike, speaker, live, ct);
    }

    private async Task TakeAsync(InteractionCame came, SheetPart part, string bike, Speaker speaker, Acknowledgement live, CancellationToken ct)
    {
        var known = await BikeAsync(speaker, bike, ct);
        var (facts, wrong) = SheetForms.Read(part, Forms.Written(came.Interaction), known, (await parts.Coaches.OfAsync(speaker.Member, ct)).Knowledge, speaker, came.At);
        Card[] said = [];
        if (!facts.IsEmpty)
            said = [(await parts.Logbook.HandleAsync(speaker, Names.UsedEvent(came.Interaction.Id), new TellEntry(facts), came.At, ct, known is null ? null : bike)).Card];
        if (!wrong.IsEmpty) said = [.. said, new Card("Not noted", [new ListBlock("", wrong)], [])];
        if (said.Length == 0) said = [Texts.Plain("Nothing changed", "It is as it was.")];
        await live.TellAsync(CardDrawing.Single(said, [], null, null, AllowedMentions.None), ct);
    }

    private static InteractionAnswer Form(SheetPart part, string bike, BikeProfile? known, KnowledgeBase rules) => Forms.Sheet(
        Id(Filled, part, bike),
        Title(part),
        SheetForms.Of(part, known, rules)
            .Select(l => new SheetInput(l.Field, TextRuns.Cut(l.Called, MostLabel), TextRuns.Cut(l.Hint, MostHint), l.Value is { } value ? TextRuns.Cut(value, MostValue) : null, MostValue)));

    private async Task<BikeProfile?> BikeAsync(Speaker speaker, string bike, CancellationToken ct) =>
        (await parts.Store.BikesOfAsync(speaker.Member, ct)).FirstOrDefault(b => NudgeAnswer.ShortOf(b) == bike);

    private static CustomId Id(string verb, SheetPart part, string bike) => new(verb, new CaseId(Forms.NoCase), $"{part}{Between}{bike}");

    private static string Title(SheetPart part) => part switch
    {
        SheetPart.EngineAndFuel => "Engine and fuel",
        SheetPart.DriveAndWheel => "Drive and wheel",
        SheetPart.Clutch => "Clutch",
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "A new part of the sheet needs a title."),
    };
}
