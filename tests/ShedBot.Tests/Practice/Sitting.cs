using Microsoft.Extensions.Logging.Abstractions;
using ShedBot.Cards;
using ShedBot.Coaching;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.Pictures;
using ShedBot.Practice;
using ShedBot.Rules;
using ShedBot.Storage;

namespace ShedBot.Tests.Practice;

/// <summary>Sits down at the practice terminal inside the test: the real session on a real data file, at a clock that stands still.</summary>
internal static class Sitting
{
    public static readonly DateTimeOffset Noon = new(2026, 5, 1, 10, 0, 0, TimeSpan.Zero);

    /// <summary>With few riders, so that a sitting is over soon.</summary>
    public static ITrials Trials { get; } = new ClubTrials(() => new CoachOptions(), new RidersTried(4, Stops: 0));

    /// <returns>Everything the terminal showed, with the rider's lines marked.</returns>
    public static async Task<string> AtAsync(string data, string rules, IEnumerable<string> lines, string member = "Rider", TimelinePainter? paint = null, DateTimeOffset? at = null, ITrials? trials = null)
    {
        var output = new StringWriter { NewLine = "\n" };
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = data, Durable = false }, CancellationToken.None);
        using var session = new PracticeSession(
            store,
            store,
            store,
            RulesInUse.Open(rules, new CoachOptions(), TextWriter.Null)!,
            new PlainScreen(output, 88, echo: true),
            new StringReader(string.Join('\n', lines)),
            new FrozenClock(at ?? Noon),
            NullLogger.Instance,
            new MemberName(member),
            Path.GetDirectoryName(data)!,
            paint ?? new TimelinePictures(PlainFace.UsualFolders, NullLogger.Instance).Paint,
            trials ?? Trials,
            new TimelinePictures(PlainFace.UsualFolders, NullLogger.Instance).Paint);
        await session.RunAsync(CancellationToken.None);
        return output.ToString();
    }
}
