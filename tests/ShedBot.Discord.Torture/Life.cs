using System.Globalization;
using Microsoft.Extensions.Logging.Abstractions;
using ShedBot.Coaching;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.Discord.Running;
using ShedBot.Storage;

namespace ShedBot.Discord.Torture;

/// <summary>What runs in the process that is killed: ShedBot in a club of the stand-in, below the host. It is told the day on its input.</summary>
internal static class Life
{
    public static async Task<int> RunAsync(string folder, string api, string token, string guild, int day, string[] people)
    {
        var (coach, clock) = (Club.Coach(), new DayClock { Day = day });
        var coaches = new OneCoach(() => coach);
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = Path.Combine(folder, "club.shed"), CheckpointBytes = 1 << 20 }, default);
        foreach (var member in people.Select(p => Club.Member(guild, p)))
        {
            if (await store.FindRiderAsync(member, default) is null) await store.SaveRiderAsync(Club.Rider(member), [Club.Bike(member)], [], default);
        }

        var cases = 0;
        using var desk = new CaseDesk(store, store, coaches, clock, () => $"c{Interlocked.Increment(ref cases):D6}");
        var settings = new DiscordSettings { Api = new Uri(api), SessionFolder = Path.Combine(folder, "session") };
        await using var bot = new DiscordClubs(settings, token, store, store, store, store, desk, coaches, clock, Random.Shared.NextDouble, (_, _) => null,
            store, () => throw new NotSupportedException("No rules are written here."), new ClubTrials(() => new CoachOptions(), new RidersTried()), (_, _) => null, NullLoggerFactory.Instance);
        var running = bot.RunAsync(default);
        Console.WriteLine("alive");
        while (await Console.In.ReadLineAsync() is { } next) clock.Day = int.Parse(next, CultureInfo.InvariantCulture);
        await bot.StopAsync(comingBack: true);
        await running;
        return 0;
    }
}
