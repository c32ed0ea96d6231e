using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Tests.Logbook;
using ShedBot.Coaching.Tests.Samples;

namespace ShedBot.Coaching.Tests.Bikes;

public sealed class GuidedSetUpTests
{
    private static readonly GuidedSetUp Whole = GuidedSetUp.Begin(Bench.Bike, Bench.Knowledge, Bench.Speaker, Bench.Now)!;

    [Fact]
    public void Begin_WhereNothingIsKnown_AsksTheWholeSheetTheMostUsefulFirst() => Assert.Equal(BikeSheet.Of(Bench.Knowledge).Select(f => f.Id), Whole.Fields);

    [Fact]
    public void Begin_WhereMuchIsKnown_AsksWhatIsMissingStaleOrNotExact()
    {
        var bike = Whole.Fields.Where(f => f is not "main-jet").Aggregate(Bench.Bike, (b, f) => Telling.Tell(b, [new FactTold(f, f is "wheel" ? "26in" : "x")], Bench.Now, Telling.Told));
        Assert.Equal(["wheel", "main-jet"], GuidedSetUp.Begin(bike, Bench.Knowledge, Bench.Speaker, Bench.Now.AddDays(100))!.Fields.AsEnumerable());
        Assert.Contains("bar-length", GuidedSetUp.Begin(bike, Bench.Knowledge, Bench.Speaker, Bench.Now.AddDays(200))!.Fields);
    }

    [Fact]
    public void Begin_WhereAllIsKnown_IsNothing()
    {
        var bike = Whole.Fields.Aggregate(Bench.Bike, (b, f) => Telling.Tell(b, [new FactTold(f, f is "wheel" ? "54-559" : "x")], Bench.Now, Telling.Told));
        Assert.Null(GuidedSetUp.Begin(bike, Bench.Knowledge, Bench.Speaker, Bench.Now));
    }

    [Fact]
    public void Question_TheFirst_SaysWhyAndHowManyAreLeft()
    {
        var card = Whole.Question(Bench.Bike, Bench.Knowledge, Bench.Speaker, Bench.Now)!;
        Assert.Equal("When was the engine kit fitted?", card.Title);
        Assert.Contains($"{Whole.Fields.Length - 1} more after this", Talk.Text(card), StringComparison.Ordinal);
    }

    [Fact]
    public void Question_OfAChoice_OffersItsValues()
    {
        var spring = Whole with { At = Whole.Fields.IndexOf("return-spring") };
        var options = spring.Question(Bench.Bike, Bench.Knowledge, Bench.Speaker, Bench.Now)!.Options;
        Assert.Equal([new FactTold("return-spring", "fitted"), new FactTold("return-spring", "none")], options.Select(o => GuidedSetUp.Picked(o.Id)!));
    }

    [Fact]
    public void Read_AnAnswer_IsTheFactAnd_AnythingElseSaysWhatToWrite()
    {
        var bar = Whole with { At = Whole.Fields.IndexOf("bar-length") };
        Assert.Equal(new SetUpTold(new FactTold("bar-length", "18.2")), Read(bar, "18,2 mm"));
        Assert.Contains("Or skip, or stop.", Assert.IsType<SetUpUnclear>(Read(bar, "rather long")).Say, StringComparison.Ordinal);
        Assert.IsType<SetUpSkip>(Read(bar, "Skip."));
        Assert.IsType<SetUpSkip>(Read(bar, "I don't know"));
        Assert.IsType<SetUpSkip>(Read(bar, "I don't have the tools here"));
        Assert.IsType<SetUpBack>(Read(bar, "back"));
        Assert.IsType<SetUpStop>(Read(bar, "enough"));
    }

    [Fact]
    public void Next_PastTheLast_IsOverAnd_BackStopsAtTheFirst()
    {
        var end = Whole.Fields.Aggregate(Whole, (s, _) => s.Next());
        Assert.True(end.IsOver);
        Assert.Null(end.Question(Bench.Bike, Bench.Knowledge, Bench.Speaker, Bench.Now));
        Assert.Equal(0, Whole.Back().At);
        Assert.False(end.Back().IsOver);
    }

    private static SetUpAnswer Read(GuidedSetUp at, string line) => at.Read(line, Bench.Knowledge, Bench.Speaker, Bench.Now);
}
