using ShedBot.Coaching;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.Coaching.Turns;
using ShedBot.Discord.Running;
using ShedBot.Discord.Tests.EndToEnd;
using ShedBot.DiscordStandIn;
using ShedBot.DiscordStandIn.Checks;
using ShedBot.DiscordStandIn.World;
using ShedBot.Knowledge.Understanding;
using ShedBot.Storage;

namespace ShedBot.Discord.Tests.Campaign;

/// <summary>An invented club in foul weather, and a program in it that is ended, killed and started again on the same data file.</summary>
internal sealed class CampaignClub : IAsyncDisposable
{
    /// <summary>Pauses between connections grow to a minute and more; here they are so many times as short.</summary>
    private const double Hurry = 20;

    private static readonly Lazy<Coach> Coach = new(() => new Coach(ClubHouse.Knowledge, Listener.For(ClubHouse.Knowledge), new CoachOptions()));

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly string folder = Directory.CreateTempSubdirectory("shedbot-campaign-").FullName;
    private readonly List<LifeLog> lives = [];
    private int cases;
    private LiteShedStore? store;
    private CaseDesk? desk;
    private DiscordClubs? bot;
    private CancellationTokenSource life = new();
    private Task running = Task.CompletedTask;

    private CampaignClub(StandIn platform) => Platform = platform;

    public StandIn Platform { get; }

    public Guild Guild { get; private set; } = null!;

    public Channel Help { get; private set; } = null!;

    public Channel Lobby { get; private set; } = null!;

    public LiteShedStore Store => store!;

    public int Restarts { get; private set; }

    public int Kills { get; private set; }

    /// <summary>Why the program ended although nobody asked it to.</summary>
    public List<string> Crashes { get; } = [];

    public bool Quiet => bot!.Health() is { Ready: true, Busy: 0 };

    public IReadOnlyList<string> Errors => [.. lives.SelectMany(l => l.Errors)];

    public int ToldToRepeat => lives.Sum(l => l.ToldToRepeat);

    public IEnumerable<string> Recent => lives.TakeLast(3).SelectMany(l => l.Recent);

    public static async Task<CampaignClub> OpenAsync()
    {
        var platform = await StandIn.StartAsync(new StandInOptions
        {
            Checks = [new LimitsCheck(Strictness.Strict), ContractCheck.Find(Strictness.Strict)],
            HeartbeatInterval = TimeSpan.FromSeconds(Hurry),
            ReconnectGrace = TimeSpan.FromMilliseconds(200),
            KeepLog = false,
        });
        platform.Faults.Delay = TimeSpan.FromMilliseconds(50);
        platform.Faults.RetryAfter = TimeSpan.FromMilliseconds(20);
        var club = new CampaignClub(platform);
        var owner = platform.AddPerson("Marlo the moderator");
        club.Guild = await platform.AddGuildAsync("Invented Storm Riders", owner);
        var helpers = platform.AddRole(club.Guild, "Old hands");
        helpers.Mentionable = true;
        club.Lobby = platform.AddTextChannel(club.Guild, "tea-and-cake");
        club.Help = platform.AddTextChannel(club.Guild, "clutch-help");
        await club.StartAsync();
        await platform.WaitForLoginAsync(Patience);
        await platform.WaitForCommandsAsync(patience: Patience);
        var deed = await platform.CommandAsync(owner, club.Help, "club set-up", new Dictionary<string, object> { ["help-channel"] = club.Help, ["helper-role"] = helpers });
        Assert.False((await deed.Settled).Failed);
        return club;
    }

    /// <summary>Ends the program in good order and starts it again.</summary>
    public async Task RestartAsync()
    {
        Restarts++;
        await StopAsync();
        await StartAsync();
    }

    /// <summary>Ends the program in the middle of whatever it does, and starts it again from what it had written down by then.</summary>
    public async Task KillAsync()
    {
        Kills++;
        NoteCrash();
        lives[^1].Die();
        var session = Path.Combine(folder, "session", "session-0.json");
        var written = File.Exists(session) ? await File.ReadAllBytesAsync(session) : null;
        await life.CancelAsync();
        await store!.DisposeAsync();
        await running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        await bot!.DisposeAsync();
        desk!.Dispose();
        // A program that is killed has no time to write down how far it came: put back what was there.
        if (written is not null) await File.WriteAllBytesAsync(session, written);
        else File.Delete(session);
        await StartAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        await Platform.DisposeAsync();
        life.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    private static readonly ICoaches Coaches = new OneCoach(() => Coach.Value);

    private async Task StartAsync()
    {
        var log = new LifeLog();
        lives.Add(log);
        life.Dispose();
        life = new CancellationTokenSource();
        store = await LiteShedStore.OpenAsync(new StoreOptions { Path = Path.Combine(folder, "club.shed") }, default);
        desk = new CaseDesk(store, store, Coaches, TimeProvider.System, () => $"c{Interlocked.Increment(ref cases):D6}");
        var settings = new DiscordSettings { Api = new Uri(Platform.ApiAddress), SessionFolder = Path.Combine(folder, "session"), GatewayClock = new QuickWaits(Hurry) };
        bot = new DiscordClubs(settings, Platform.Options.Token, store, store, store, store, desk, Coaches, TimeProvider.System, Random.Shared.NextDouble, (_, _) => null,
            store, () => ClubHouse.Ground, new ClubTrials(() => new CoachOptions(), new RidersTried()), (_, _) => null, log);
        running = bot.RunAsync(life.Token);
    }

    private async Task StopAsync()
    {
        NoteCrash();
        await bot!.StopAsync(comingBack: true);
        await running;
        await bot.DisposeAsync();
        desk!.Dispose();
        await store!.DisposeAsync();
    }

    private void NoteCrash()
    {
        if (!running.IsCompleted) return;
        Crashes.Add(running.Exception?.ToString() ?? "The program ended without a word.");
        running = Task.CompletedTask;
    }
}
