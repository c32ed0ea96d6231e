using NodaTime;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Riding;
using ShedBot.Coaching.Tests.Samples;

namespace ShedBot.Coaching.Tests.Logbook;

/// <summary>Today is Friday, 1 May 2026.</summary>
public sealed class BikeWordsTests
{
    [Theory]
    [InlineData("rode", null, null, Weather.Dry, "2026-05-01")]
    [InlineData("rode 12 km wet yesterday", 12.0, null, Weather.Wet, "2026-04-30")]
    [InlineData("Rode 12km in the rain on sunday.", 12.0, null, Weather.Wet, "2026-04-26")]
    [InlineData("i rode 40 min", null, 40 / 60.0, Weather.Dry, "2026-05-01")]
    [InlineData("rode 1 h 20", null, 80 / 60.0, Weather.Dry, "2026-05-01")]
    [InlineData("rode 1 hour and 20 minutes, 15 km", 15.0, 80 / 60.0, Weather.Dry, "2026-05-01")]
    [InlineData("rode 10,5 km dusty 3 days ago", 10.5, null, Weather.Dusty, "2026-04-28")]
    [InlineData("rode 2026-03-01 7 km", 7.0, null, Weather.Dry, "2026-03-01")]
    [InlineData("rode 7 km on 1 march", 7.0, null, Weather.Dry, "2026-03-01")]
    [InlineData("rode 7 km on the 1st of december", 7.0, null, Weather.Dry, "2025-12-01")]
    [InlineData("rode 7 km march 1st 2026", 7.0, null, Weather.Dry, "2026-03-01")]
    [InlineData("i rode 12 kms to work and back", 12.0, null, Weather.Dry, "2026-05-01")]
    [InlineData("rode 12km/40min", 12.0, 40 / 60.0, Weather.Dry, "2026-05-01")]
    [InlineData("i went for a ride", null, null, Weather.Dry, "2026-05-01")]
    [InlineData("log 12 km", 12.0, null, Weather.Dry, "2026-05-01")]
    [InlineData("12 km wet", 12.0, null, Weather.Wet, "2026-05-01")]
    [InlineData("rode today half an hour", null, 0.5, Weather.Dry, "2026-05-01")]
    public void Read_ARide_IsWhatWasRidden(string line, double? km, double? hours, Weather weather, string day)
    {
        var ride = Assert.IsType<RideEntry>(Bench.Read(line)!.Value.Must).Ride;
        Assert.Equal((km, weather, day), (ride.Kilometres, ride.Weather, Iso(ride.Day)));
        Assert.Equal(hours ?? 0, ride.Hours ?? 0, 9);
    }

    /// <summary>The international mile is 1.609344 km exactly (agreement of 1959).</summary>
    [Fact]
    public void Read_ARideInMiles_IsKeptInKilometres() =>
        Assert.Equal(16.09344, Assert.IsType<RideEntry>(Bench.Read("rode 10 miles")!.Value.Must).Ride.Kilometres!.Value, 9);

    [Theory]
    [InlineData("not riding till 1 march", "2027-03-01")]
    [InlineData("not riding until 2026-05-20", "2026-05-20")]
    [InlineData("I'm not riding till sunday", "2026-05-03")]
    [InlineData("not riding till in 2 weeks", "2026-05-15")]
    [InlineData("not riding till 29 february", "2028-02-29")]
    [InlineData("not riding till I say", null)]
    [InlineData("not riding", null)]
    public void Read_ARest_IsTillTheNextSuchDay(string line, string? until) =>
        Assert.Equal(until, Assert.IsType<RestEntry>(Bench.Read(line)!.Value.Must).Until is { } day ? Iso(day) : null);

    [Theory]
    [InlineData("about 4 days a week, 10 km", 4, 10.0, null)]
    [InlineData("pace 2.5 days per week 40 min", 2.5, null, 40 / 60.0)]
    [InlineData("i ride every day, about 8 km each", 7, 8.0, null)]
    [InlineData("i usually ride three times a week", 3, null, null)]
    [InlineData("i ride twice a week, an hour each time", 2, null, 1.0)]
    public void Read_APace_IsDaysAndAmount(string line, double days, double? km, double? hours)
    {
        var pace = Assert.IsType<PaceEntry>(Bench.Read(line)!.Value.Must);
        Assert.Equal((days, km), (pace.DaysPerWeek, pace.Kilometres));
        Assert.Equal(hours ?? 0, pace.Hours ?? 0, 9);
    }

    [Theory]
    [InlineData("done grease-bar-ball-cam", "grease-bar-ball-cam", "2026-05-01")]
    [InlineData("done grease for bar, ball and cam yesterday", "grease-bar-ball-cam", "2026-04-30")]
    [InlineData("did grease bar on 28 april", "grease-bar-ball-cam", "2026-04-28")]
    [InlineData("done spokes", "spokes", "2026-05-01")]
    public void Read_ATaskThatIsDone_IsTheTaskAndTheDay(string line, string task, string day)
    {
        var done = Assert.IsType<DoneEntry>(Bench.Read(line)!.Value.Must);
        Assert.Equal((task, day), (done.Task, Iso(done.Day)));
    }

    [Theory]
    [InlineData("plan", typeof(ShowPlan))]
    [InlineData("What's due?", typeof(ShowPlan))]
    [InlineData("plan all", typeof(ShowPlan))]
    [InlineData("when is my next service?", typeof(ShowPlan))]
    [InlineData("undo", typeof(UndoEntry))]
    [InlineData("undo that", typeof(UndoEntry))]
    [InlineData("riding again", typeof(RidingAgainEntry))]
    [InlineData("export", typeof(TakeCopy))]
    [InlineData("timeline", typeof(ShowTimeline))]
    [InlineData("my timeline", typeof(ShowTimeline))]
    [InlineData("timeline light", typeof(ShowTimeline))]
    [InlineData("how spokes", typeof(ShowHow))]
    [InlineData("how do i do the spokes?", typeof(ShowHow))]
    [InlineData("kit fitted 1 march", typeof(FittedEntry))]
    [InlineData("fitted 2026-04-20", typeof(FittedEntry))]
    [InlineData("i fitted the kit on 20 april", typeof(FittedEntry))]
    public void Read_AWordOfTheLogbook_IsThatRequest(string line, Type request) => Assert.IsType(request, Bench.Read(line)!.Value.Must);

    [Theory]
    [InlineData("rode 12", "12 what?")]
    [InlineData("done grease-clutch", "Near it: grease for bar, ball and cam")]
    [InlineData("done polishing", "The plan names them all")]
    [InlineData("rode 12 kn wet", "12 kn what?")]
    [InlineData("rode 12 wet", "12 what?")]
    [InlineData("rode 1:20", "time of the day")]
    [InlineData("rode 12 km 13 km", "two distances")]
    [InlineData("rode 12 km monday tuesday", "two days")]
    [InlineData("rode 12 km 31 february", "There is no day 31 February")]
    [InlineData("rode 12 km 2026-13-01", "There is no day 2026-13-01")]
    [InlineData("rode 12 km 3/4/2026", "month and day by others")]
    [InlineData("rode 0 km", "is no ride")]
    [InlineData("not riding till 3", "Till which day?")]
    [InlineData("pace fast", "about 4 days a week, 10 km")]
    [InlineData("pace 10 km", "How many days a week?")]
    [InlineData("kit fitted", "When was the kit fitted?")]
    [InlineData("done chain", "could be:")]
    public void Read_BadInput_SaysWhatToWrite(string line, string says) =>
        Assert.Contains(says, Bench.Read(line)!.Value.Refused!.Say, StringComparison.Ordinal);

    [Theory]
    [InlineData("rode 10 miles and it started slipping")]
    [InlineData("rode it home, clutch drags")]
    [InlineData("rode in the rain and now it slips?")]
    [InlineData("rode 2 laps, it slipped")]
    [InlineData("rode 12 km (wet)")]
    [InlineData("not riding till the clutch is mended")]
    [InlineData("done")]
    [InlineData("done that")]
    [InlineData("done that one now")]
    [InlineData("did it")]
    [InlineData("how")]
    [InlineData("how do i grease the bar")]
    [InlineData("I ride it hard and it slips")]
    [InlineData("about 3 mm slack")]
    [InlineData("3 mm")]
    [InlineData("5 minutes and it is out again")]
    [InlineData("ride home was fine, then it slipped")]
    [InlineData("10 km then it slips")]
    [InlineData("the plan was to fit a new bar")]
    [InlineData("it undid itself")]
    [InlineData("")]
    [InlineData("😀")]
    public void Read_WordsForTheCoach_AreLeftToTheCoach(string line) => Assert.Null(Bench.Read(line));

    [Fact]
    public void Read_WordsThatMayAnswerAnOpenQuestion_AreLeftToTheCoach()
    {
        Assert.Null(Bench.Read("done grease", loose: false));
        Assert.Null(Bench.Read("done it twice", loose: false));
        Assert.Null(Bench.Read("how tight", loose: false));
        Assert.Null(Bench.Read("rode home", loose: false));
        Assert.Null(Bench.Read("rode", loose: false));
        Assert.IsType<RideEntry>(Bench.Read("rode home in the rain", loose: false)!.Value.Must);
        Assert.IsType<RideEntry>(Bench.Read("rode yesterday", loose: false)!.Value.Must);
        Assert.IsType<DoneEntry>(Bench.Read("done grease bar", loose: false)!.Value.Must);
        Assert.IsType<ShowHow>(Bench.Read("how chain settling", loose: false)!.Value.Must);
        Assert.Null(Bench.Read("12 km", loose: false));
        Assert.Null(Bench.Read("5 minutes", loose: false));
        Assert.IsType<DoneEntry>(Bench.Read("done grease-bar-ball-cam", loose: false)!.Value.Must);
    }

    /// <summary>The riders' lines of every approved conversation of a trouble stay with the coach.</summary>
    [Fact]
    public void Read_LinesOfTheApprovedConversations_AreLeftToTheCoach()
    {
        var lines = Directory.EnumerateFiles(Path.Combine(Repository.Root, "docs", "conversations"), "*.md")
            .Where(f => char.IsAsciiDigit(Path.GetFileName(f)[0])).SelectMany(File.ReadLines)
            .Where(l => l.StartsWith("> ", StringComparison.Ordinal)).Select(l => l[2..]).ToList();
        Assert.True(lines.Count > 50);
        Assert.All(lines, l => Assert.Null(Bench.Read(l)));
    }

    private static string Iso(LocalDate day) => day.ToString("uuuu-MM-dd", null);
}
