using System.Text.Json;
using Microsoft.VisualBasic.FileIO;
using Moq;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Tests.Samples;

namespace ShedBot.Coaching.Tests.Logbook;

public sealed class BikeDeskTests
{
    private static readonly RideEntry Ride = new(new RiddenDay(Bench.Today, 12, null, Weather.Wet));
    private readonly Mock<IShedStore> store = new();
    private readonly Mock<IRiderStore> riders = new();
    private BikeProfile? kept;
    private int saves;

    public BikeDeskTests()
    {
        store.Setup(s => s.BikesOfAsync(Bench.Speaker.Member, default)).ReturnsAsync(() => kept is null ? [] : [kept]);
        store.Setup(s => s.SaveBikeAsync(It.IsAny<BikeProfile>(), default)).Callback((BikeProfile b, CancellationToken _) => (kept, saves) = (b, saves + 1)).Returns(Task.CompletedTask);
    }

    [Fact]
    public async Task HandleAsync_TheSameEventTwice_CountsOnce()
    {
        using var desk = Desk();
        await TakeAsync(desk, Ride, "e1");
        var again = await TakeAsync(desk, Ride, "e1");
        Assert.Equal("That is noted already", again.Card.Title);
        Assert.Equal((1, 12.0), (saves, kept!.Riding.On(Bench.Today)!.Kilometres));
        await TakeAsync(desk, Ride, "e2");
        Assert.Equal((2, 24.0, 2), (saves, kept.Riding.On(Bench.Today)!.Kilometres, kept.Version));
    }

    [Fact]
    public async Task HandleAsync_ManyEvents_RemembersABoundedNumber()
    {
        using var desk = Desk();
        for (var i = 0; i < BikeProfile.MostHandled + 5; i++) await TakeAsync(desk, new PaceEntry(4, null, null), "e" + i);
        Assert.Equal(BikeProfile.MostHandled, kept!.Handled.Length);
        Assert.Equal("e5", kept.Handled[0]);
    }

    [Fact]
    public async Task HandleAsync_SomebodySavedFirst_MakesTheEntryAnew()
    {
        var tries = 0;
        store.Setup(s => s.SaveBikeAsync(It.IsAny<BikeProfile>(), default)).Returns(() => ++tries == 1 ? throw new StaleSaveException("The bike") : Task.CompletedTask);
        using var desk = Desk();
        Assert.Null((await TakeAsync(desk, Ride, "e1")).Refused);
        Assert.Equal(2, tries);
    }

    /// <summary>What is due can have changed, so the member is looked at anew, in the save of the entry; whoever did not agree is left as they are.</summary>
    [Theory]
    [InlineData(Consent.Given, 4)]
    [InlineData(Consent.Asked, 3)]
    public async Task HandleAsync_AMemberWhoAgreed_IsHeardInTheSameSave(Consent consent, int version)
    {
        var shelf = new Shelf();
        shelf.Riders[Bench.Speaker.Member] = Rider.New(Bench.Speaker.Member) with { Consent = consent, Unanswered = 2, Version = 3 };
        using var desk = new BikeDesk(shelf, shelf, Bench.Coaches);
        await TakeAsync(desk, Ride, "e1");
        var rider = shelf.Riders[Bench.Speaker.Member];
        Assert.Equal((1, version, 12.0), (shelf.Saves, rider.Version, shelf.Bikes[Bench.Bike.Id].Riding.On(Bench.Today)!.Kilometres));
        if (consent == Consent.Given) Assert.Equal((0, Bench.Now), (rider.Unanswered, rider.NextLook));
    }

    /// <summary>A round saved the member between reading and saving: the entry is made anew and counts once.</summary>
    [Fact]
    public async Task HandleAsync_TheMemberWasSavedFirst_MakesTheEntryOnce()
    {
        var shelf = new Shelf();
        var member = Bench.Speaker.Member;
        shelf.Riders[member] = Rider.New(member) with { Consent = Consent.Given, Version = 3 };
        shelf.Meanwhile = () => shelf.Riders[member] = shelf.Riders[member] with { Unanswered = 1, LastAt = Bench.Now, Version = 4 };
        using var desk = new BikeDesk(shelf, shelf, Bench.Coaches);
        await TakeAsync(desk, Ride, "e1");
        Assert.Equal((1, 5, Bench.Now, 0), (shelf.Saves, shelf.Riders[member].Version, shelf.Riders[member].LastAt, shelf.Riders[member].Unanswered));
        Assert.Equal((1, 12.0), (shelf.Bikes[Bench.Bike.Id].Version, shelf.Bikes[Bench.Bike.Id].Riding.On(Bench.Today)!.Kilometres));
    }

    [Fact]
    public async Task HandleAsync_ARefusedEntry_KeepsNothing()
    {
        using var desk = Desk();
        var answer = await TakeAsync(desk, new RideEntry(Ride.Ride with { Day = Bench.Today.PlusDays(1) }), "e1");
        Assert.Equal(("future", 0), (answer.Refused!.Code, saves));
    }

    [Fact]
    public async Task HandleAsync_Plan_ShowsFiveAndThenAll()
    {
        kept = Bench.Bike.With(new FittedEntry(Bench.Today.PlusDays(-3))).With(Ride);
        using var desk = Desk();
        Assert.Equal(5, Lines((await TakeAsync(desk, new ShowPlan(false), "e1")).Card));
        Assert.True(Lines((await TakeAsync(desk, new ShowPlan(true), "e2")).Card) > 15);
        Assert.Equal(0, saves);
    }

    [Fact]
    public async Task HandleAsync_How_ShowsCautionsBeforeSteps()
    {
        using var desk = Desk();
        var card = (await TakeAsync(desk, new ShowHow("grease-bar-ball-cam"), "e1")).Card;
        var kinds = card.Blocks.Select(b => b.GetType()).ToList();
        Assert.True(kinds.LastIndexOf(typeof(CautionBlock)) is >= 0 and var last && last < kinds.IndexOf(typeof(StepsBlock)));
    }

    /// <summary>Read by parsers that are not ours: the TextFieldParser of the .NET libraries and System.Text.Json.</summary>
    [Fact]
    public async Task HandleAsync_Copy_ReadsInOtherPrograms()
    {
        var work = new WorkDone("new-bar", "a \"new\" bar, and a ball\nboth", new CaseId("c1"), Bench.Now);
        kept = Bench.Bike.With(new FittedEntry(Bench.Today)).With(Ride).With(new PaceEntry(4, 10, null)).With(new DoneEntry("spokes", Bench.Today)) with { Work = [work] };
        using var desk = Desk();
        var files = (await TakeAsync(desk, new TakeCopy(), "e1")).Files.ToDictionary(f => f.Name, f => f.Bytes.ToArray());
        Assert.Equal([["id", "what", "value", "learnt", "how"], ["fitted", "kit fitted", "2026-05-01", "2026-05-01T18:00:00Z", "told"]], Table(files["facts.csv"]));
        Assert.Equal([["day", "kilometres", "hours", "weather"], ["2026-05-01", "12", "", "wet"]], Table(files["rides.csv"]));
        Assert.Equal(
            [["day", "kind", "id", "what", "how"], ["2026-05-01", "repair", "new-bar", work.What, "case"], ["2026-05-01", "service", "spokes", "the spokes", "told"]],
            Table(files["work.csv"]));
        var json = JsonDocument.Parse(files["bike.json"]).RootElement;
        Assert.Equal(12, json.GetProperty("rides")[0].GetProperty("kilometres").GetDouble());
        Assert.Equal("2026-05-01", json.GetProperty("facts").GetProperty("fitted").GetProperty("value").GetString());
        Assert.Equal(work.What, json.GetProperty("repairs")[0].GetProperty("what").GetString());
    }

    private BikeDesk Desk() => new(store.Object, riders.Object, Bench.Coaches);

    private static Task<BikeAnswer> TakeAsync(BikeDesk desk, BikeRequest request, string e) => desk.HandleAsync(Bench.Speaker, e, request, Bench.Now, default);

    private static int Lines(Card card) => card.Blocks.OfType<ListBlock>().First().Items.Length;

    private static List<string[]> Table(byte[] csv)
    {
        using var parser = new TextFieldParser(new MemoryStream(csv)) { Delimiters = [","], HasFieldsEnclosedInQuotes = true, TrimWhiteSpace = false };
        var rows = new List<string[]>();
        while (!parser.EndOfData) rows.Add(parser.ReadFields()!);
        return rows;
    }
}
