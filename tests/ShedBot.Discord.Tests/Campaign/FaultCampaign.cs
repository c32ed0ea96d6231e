using System.Globalization;
using ShedBot.DiscordStandIn.Faults;
using ShedBot.DiscordStandIn.World;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.Campaign;

/// <summary>
/// Nothing is lost, doubled or brought down, whatever the platform does. The laws are those of exactly-once handling (no source, common
/// practice); the faults are the ones that the platform's own description names.
/// </summary>
public sealed class FaultCampaign(ITestOutputHelper output)
{
    private const int Seed = 20260, Few = 150, RidersFew = 4, RidersMany = 8, Bystanders = 2;

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5), Checking = TimeSpan.FromSeconds(45), Unaided = TimeSpan.FromSeconds(6), Look = TimeSpan.FromMilliseconds(100);

    [Fact]
    public async Task Club_InFoulWeather_LosesNothingDoublesNothingAndStands()
    {
        var asked = int.TryParse(Environment.GetEnvironmentVariable("SHEDBOT_FAULTS"), CultureInfo.InvariantCulture, out var many) ? many : 0;
        var wanted = asked > 0 ? asked : Few;
        var results = new Results(Seed, wanted);
        var surely = Kinds().GetEnumerator();
        await using var club = await CampaignClub.OpenAsync();
        var until = DateTime.UtcNow.AddMinutes(int.TryParse(Environment.GetEnvironmentVariable("SHEDBOT_FAULTS_MINUTES"), CultureInfo.InvariantCulture, out var minutes) ? minutes : 600);
        while ((club.Platform.Faults.Injected.Values.Sum() < wanted && DateTime.UtcNow < until) || club.Platform.Faults.Injected.Count < Weather.Foul.Count)
        {
            var seen = await RoundAsync(club, results, asked > 0 ? RidersMany : RidersFew, surely);
            results.Add(seen);
            if (asked > 0) await File.WriteAllTextAsync(Results.File, results.Page(club));
            if (!seen.Clean || club.Crashes.Count + club.Errors.Count + club.Platform.Violations.Count > 0) break;
        }

        string[] wrong =
        [
            .. results.Lost, .. results.Doubled, .. results.Mismatched, .. club.Crashes, .. club.Errors,
            .. club.Platform.Violations.Select(v => $"{v.Where}: {v.What}"),
        ];
        // What went wrong stands last, where a cut-off log still shows it.
        if (wrong.Length > 0) output.WriteLine(string.Join('\n', club.Recent));
        output.WriteLine(results.Page(club));
        output.WriteLine(string.Join('\n', wrong));
        Assert.Empty(wrong);
    }

    private static async Task<Inspection> RoundAsync(CampaignClub club, Results results, int count, IEnumerator<FaultKind> surely)
    {
        var round = results.Rounds++;
        var mate = Join(club, "Sam");
        var riders = Enumerable.Range(0, count)
            .Select(n => new Rider(club, Join(club, $"Rider {round}-{n}"), mate, new Random(Seed + (100 * round) + n), surely)).ToList();
        club.Platform.Faults.Plan(Seed + round, Weather.Foul);
        var riding = Task.WhenAll(riders.Select(r => r.RideAsync()));
        var idling = Enumerable.Range(0, Bystanders).Select(n => new Bystander(club, mate, new Random(Seed - (100 * round) - n)).IdleAsync(riding));
        await Task.WhenAll(idling.Append(MeddleAsync(club, riding, new Random(Seed - round))).Append(riding));
        club.Platform.Faults.Stop();
        results.Deeds += riders.Sum(r => r.Done.Count);
        return await SettleAsync(club, results, riders, mate.Id);
    }

    private static Person Join(CampaignClub club, string name)
    {
        var who = club.Platform.AddPerson(name);
        club.Platform.Join(club.Guild, who);
        return who;
    }

    /// <summary>Ends or kills the program now and then, until the riders are done.</summary>
    private static async Task MeddleAsync(CampaignClub club, Task riding, Random chance)
    {
        while (await Task.WhenAny(riding, Task.Delay(TimeSpan.FromSeconds(4 + (10 * chance.NextDouble())))) != riding)
        {
            if (chance.Next(2) == 0) await club.RestartAsync();
            else await club.KillAsync();
        }
    }

    /// <summary>Waits until all is said and as it must be; what is not so by then is wrong.</summary>
    private static async Task<Inspection> SettleAsync(CampaignClub club, Results results, List<Rider> riders, ulong since)
    {
        var (began, helped) = (DateTime.UtcNow, false);
        DateTime? quiet = null;
        while (true)
        {
            await Task.Delay(Look);
            var waited = DateTime.UtcNow - began;
            var silent = (await club.Store.UnsaidPlacesAsync(10, default)).IsEmpty;
            if (!silent && !helped && waited > Unaided && club.Quiet)
            {
                // A place that would not take words is left alone for ten minutes, or until a start.
                (helped, results.NeededRestart) = (true, results.NeededRestart + 1);
                await club.RestartAsync();
                continue;
            }

            // What still works is not yet to be judged, however slow the machine.
            if ((!silent || !club.Quiet) && waited < Patience) continue;
            quiet ??= DateTime.UtcNow;
            var seen = await Inspection.OfAsync(club, riders, since);
            if (!silent) seen.Lost.Add("Something is still unsaid.");
            if (seen.Clean || DateTime.UtcNow - quiet > Checking) return seen;
        }
    }

    /// <summary>Every kind in turn, so that none is left to chance alone.</summary>
    private static IEnumerable<FaultKind> Kinds()
    {
        while (true)
        {
            foreach (var kind in Enum.GetValues<FaultKind>()) yield return kind;
        }
    }
}
