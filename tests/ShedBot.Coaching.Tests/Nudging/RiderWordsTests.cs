using NodaTime;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Tests.Logbook;
using ShedBot.Coaching.Tests.Samples;

namespace ShedBot.Coaching.Tests.Nudging;

/// <summary>Wishes about reminders as riders type them, under the shipped rules.</summary>
public sealed class RiderWordsTests
{
    public static TheoryData<string, RiderRequest> Wishes => new()
    {
        { "reminders", new ShowReminders() },
        { "My settings?", new ShowReminders() },
        { "remind me", new RemindMe(null) },
        { "Remind me, please", new RemindMe(null) },
        { "remind me at 18:30", new RemindMe(new LocalTime(18, 30)) },
        { "please remind me at 6 pm.", new RemindMe(new LocalTime(18, 0)) },
        { "remind me about 7 pm", new RemindMe(new LocalTime(19, 0)) },
        { "reminders at noon", new RemindMe(new LocalTime(12, 0)) },
        { "stop reminders", new RemindMeNoMore() },
        { "Don’t remind me!", new RemindMeNoMore() },
        { "no reminders", new RemindMeNoMore() },
        { "quiet 21:00 to 8:00", new KeepQuiet(QuietHours.Usual) },
        { "quiet hours from 9 pm to 8 am", new KeepQuiet(QuietHours.Usual) },
        { "quiet none", new KeepQuiet(new QuietHours(LocalTime.Midnight, LocalTime.Midnight)) },
        { "my zone Europe/Lisbon", new LiveIn("Europe/Lisbon") },
        { "i live in New York", new LiveIn("America/New_York") },
        { "i moved to kathmandu", new LiveIn("Asia/Kathmandu") },
        { "my zone club", new LiveIn(null) },
        { "my units miles", new ThinkIn(Units.Imperial) },
        { "I think in km", new ThinkIn(Units.Metric) },
        { "use miles", new ThinkIn(Units.Imperial) },
        { "remind me of spokes again", new HearAgain("spokes") },
        { "remind me about grease bar again", new HearAgain("grease-bar-ball-cam") },
        { "remind me of everything", new HearAgain(null) },
    };

    [Theory]
    [MemberData(nameof(Wishes))]
    public void Read_AWish_IsUnderstood(string line, RiderRequest request) => Assert.Equal(request, RiderWords.Read(line, Bench.Knowledge)!.Value.Must);

    [Theory]
    [InlineData("remind me at 6", "6 am or 6 pm")]
    [InlineData("remind me at teatime", "Write it like 18:00 or 6 pm.")]
    [InlineData("remind me tomorrow", "answer it with one of its keys")]
    [InlineData("remind me to breathe", "Write remind me, remind me at 18:00")]
    [InlineData("remind me of the gearbox again", "I know no service task")]
    [InlineData("remind me of chain again", "Say which.")]
    [InlineData("quiet 21:00", "Write quiet hours like 21:00 to 8:00, or none.")]
    [InlineData("my zone Atlantis", "Name it by its largest city")]
    [InlineData("i live in Atlantis", "Name it by its largest city")]
    [InlineData("my units furlongs", "Write km or miles.")]
    public void Read_ABadValue_SaysWhatToWrite(string line, string says) =>
        Assert.Contains(says, RiderWords.Read(line, Bench.Knowledge)!.Value.Refused!.Say, StringComparison.Ordinal);

    [Theory]
    [InlineData("quiet")]
    [InlineData("quiet when idling, then it rattles")]
    [InlineData("quiet at first")]
    [InlineData("i live in a hilly place and the clutch slips")]
    [InlineData("use more force?")]
    [InlineData("use the lever")]
    [InlineData("show me how")]
    [InlineData("it reminds me of a rattle")]
    [InlineData("stop")]
    [InlineData("no")]
    [InlineData("")]
    public void Read_WordsForTheCoach_AreLeftToTheCoach(string line) => Assert.Null(RiderWords.Read(line, Bench.Knowledge));

    [Fact]
    public void Read_LinesOfTheApprovedConversations_AreLeftToTheCoach()
    {
        var lines = Directory.EnumerateFiles(Path.Combine(Repository.Root, "docs", "conversations"), "*.md")
            .Where(f => !f.EndsWith("reminders.md", StringComparison.Ordinal) && !f.EndsWith("bikes.md", StringComparison.Ordinal)).SelectMany(File.ReadLines)
            .Where(l => l.StartsWith("> ", StringComparison.Ordinal)).Select(l => l[2..]).ToList();
        Assert.True(lines.Count > 50);
        Assert.All(lines, l => Assert.Null(RiderWords.Read(l, Bench.Knowledge)));
    }
}
