using System.Diagnostics;
using System.Globalization;
using NodaTime;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Riding;
using ShedBot.DiscordStandIn;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.World;
using ShedBot.Storage;

namespace ShedBot.Discord.Torture;

/// <summary>
/// Starts ShedBot as a process of its own in a club of the stand-in, kills it with a signal that it cannot catch, again and again, while reminders fall due and
/// members press "Done". Every member must have had one reminder an evening and no other, and every press that was answered must be kept, once.
/// </summary>
public sealed class KillCampaign : IAsyncDisposable
{
    private const int LongestLifeMs = 1500;
    private const string Title = "Due on", Done = "Done", Noted = "noted";
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(10), Patience = TimeSpan.FromSeconds(60);

    private readonly string folder;
    private readonly StandIn platform;
    private readonly Random chance;
    private readonly DayClock clock;
    private readonly List<Person> people = [];
    private string guild = "";
    private int day, presses;

    private KillCampaign(string folder, StandIn platform, DayClock clock, Random chance) =>
        (this.folder, this.platform, this.clock, this.chance) = (folder, platform, clock, chance);

    /// <param name="folder">An empty one, for the data file.</param>
    public static async Task<KillResult> RunAsync(string folder, int kills, Random chance, CancellationToken ct)
    {
        var clock = new DayClock();
        var platform = await StandIn.StartAsync(new StandInOptions { ReconnectGrace = TimeSpan.FromMilliseconds(200), Clock = clock });
        await using var campaign = new KillCampaign(folder, platform, clock, chance);
        await campaign.FurnishAsync();
        for (var kill = 0; kill < kills; kill++) await campaign.LiveAsync(TimeSpan.FromMilliseconds(chance.Next(1, LongestLifeMs)), ct);
        await campaign.LiveAsync(null, ct);
        return await campaign.CountAsync(kills, ct);
    }

    public async ValueTask DisposeAsync() => await platform.DisposeAsync();

    private async Task FurnishAsync()
    {
        var owner = platform.AddPerson("Marlo the moderator");
        var club = await platform.AddGuildAsync("Invented Night Riders", owner);
        platform.AddTextChannel(club, "clutch-help");
        guild = club.Id.ToString(CultureInfo.InvariantCulture);
        foreach (var number in Enumerable.Range(1, Club.Members))
        {
            var person = platform.AddPerson($"Rider {number}");
            platform.Join(club, person);
            people.Add(person);
        }
    }

    /// <param name="life">How long from the first reminder or login on; null: until all of this evening is told and done, and then in good order.</param>
    private async Task LiveAsync(TimeSpan? life, CancellationToken ct)
    {
        using var child = Start();
        try
        {
            if (await child.StandardOutput.ReadLineAsync(ct) is null) throw new InvalidOperationException($"The program ended by itself: {await child.StandardError.ReadToEndAsync(ct)}");
            await platform.WaitForLoginAsync(Patience);
            var since = Stopwatch.StartNew();
            var limit = life ?? Patience;
            while (since.Elapsed < limit)
            {
                if (life is null && AllNoted()) break;
                await ActAsync();
                if (life is not null && AllNoted())
                {
                    clock.Day = ++day;
                    await child.StandardInput.WriteLineAsync(day.ToString(CultureInfo.InvariantCulture).AsMemory(), ct);
                    await child.StandardInput.FlushAsync(ct);
                }

                await Task.Delay(Look, ct);
            }

            if (life is not null) return;
            child.StandardInput.Close();
            await child.WaitForExitAsync(ct);
        }
        finally
        {
            child.Kill();
            await child.WaitForExitAsync(CancellationToken.None);
        }
    }

    private Process Start()
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardInput = true, RedirectStandardError = true };
        string[] arguments =
        [
            "exec", Path.Combine(AppContext.BaseDirectory, "ShedBot.Discord.Torture.dll"), "live", folder, platform.ApiAddress, platform.Options.Token, guild,
            day.ToString(CultureInfo.InvariantCulture), .. people.Select(p => p.Id.ToString(CultureInfo.InvariantCulture)),
        ];
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        return Process.Start(start) ?? throw new InvalidOperationException("dotnet could not be started.");
    }

    /// <summary>Each member who has a reminder that is not noted as done may press; a press that a kill left without an answer is made again.</summary>
    private async Task ActAsync()
    {
        foreach (var person in people)
        {
            if (chance.Next(4) > 0 || Reminders(person) is not [.., var newest] || newest.Usable.All(c => c.Label != Done)) continue;
            try
            {
                await platform.PressLabelAsync(person, newest, Done);
                presses++;
            }
            catch (InvalidOperationException)
            {
                // The button went between looking and pressing: an earlier press was answered.
            }
        }
    }

    private IReadOnlyList<SeenMessage> Reminders(Person person) =>
        [.. platform.Messages(platform.DirectChannel(person), removed: false).Where(m => m.Words.Contains(Title, StringComparison.Ordinal) || m.Earlier.Count > 0)];

    private bool AllNoted() => people.TrueForAll(p => Reminders(p).Count(m => m.Words.Contains(Noted, StringComparison.OrdinalIgnoreCase)) > day);

    private async Task<KillResult> CountAsync(int kills, CancellationToken ct)
    {
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = Path.Combine(folder, "club.shed") }, ct);
        var (problems, reminders) = (new List<string>(), 0);
        foreach (var person in people)
        {
            var told = Reminders(person).Count;
            reminders += told;
            if (told != day + 1) problems.Add($"{person.Name} had {told} reminders in {day + 1} evenings");
            var bike = await store.FindBikeAsync(Club.Bike(Club.Member(guild, person.Id.ToString(CultureInfo.InvariantCulture))).Id, ct);
            problems.AddRange(Enumerable.Range(-1, day + 2).Select(d => RiderDays.Of(DayClock.Evening(d), DateTimeZone.Utc))
                .Where(d => Times(bike, d) != 1).Select(d => $"{person.Name} greased {Times(bike, d)} times on {Dates.Iso(d)}"));
        }

        problems.AddRange((await store.UnsaidPlacesAsync(100, ct)).Select(p => $"something still waits in {p}"));
        problems.AddRange(platform.Violations.Select(v => $"{v.Where}: {v.What}"));
        return new KillResult(kills, day + 1, reminders, presses, problems);
    }

    private static int Times(BikeProfile? bike, LocalDate day) => bike is null ? 0 : Club.Greased(bike).FirstOrDefault(g => g.Day == day).Times;
}
