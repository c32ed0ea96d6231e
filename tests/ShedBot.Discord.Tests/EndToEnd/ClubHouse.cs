using ShedBot.Coaching;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Learning.Reports;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.Coaching.Turns;
using ShedBot.Discord.Running;
using ShedBot.DiscordStandIn;
using ShedBot.DiscordStandIn.Checks;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.World;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Understanding;
using ShedBot.Storage;
using Xunit.Abstractions;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>An invented club with invented members on the stand-in, and ShedBot in it: the whole program below the host, on a real data file.</summary>
internal sealed class ClubHouse : IAsyncDisposable
{
    private static readonly Lazy<Ground> Rules = new(() =>
    {
        var rules = RuleBase.Of(KnowledgeFolder.Read(Path.Combine(AppContext.BaseDirectory, "knowledge")));
        var knowledge = rules.Knowledge ?? throw new InvalidOperationException("The rules beside the tests cannot be read.");
        return new Ground(rules, new Coach(knowledge, Listener.For(knowledge), new CoachOptions()));
    });

    /// <summary>A busy machine is slow; a test that waits longer than this would wait for ever.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    /// <summary>A trial with riders takes minutes of a busy machine.</summary>
    public static readonly TimeSpan TrialPatience = TimeSpan.FromMinutes(8);

    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(20);

    /// <summary>The three seconds of an answer are so many times as long, here and at the platform.</summary>
    private const int Slowness = 5;

    private readonly string folder = Directory.CreateTempSubdirectory("shedbot-club-").FullName;
    private readonly TestLog log;
    private int cases;
    private LiteShedStore? store;
    private CaseDesk? desk;
    private DiscordClubs? bot;
    private CancellationTokenSource life = new();
    private Task running = Task.CompletedTask;

    private readonly TimelinePainter paint;

    private ClubHouse(StandIn platform, TestLog log, TimelinePainter paint) => (Platform, this.log, this.paint) = (platform, log, paint);

    public StandIn Platform { get; }

    /// <summary>The program's own clock, over all its lives.</summary>
    public SlowClock Clock { get; } = new(Slowness);

    public Guild Guild { get; private set; } = null!;

    public Channel Help { get; private set; } = null!;

    public Role Helpers { get; private set; } = null!;

    public Person Owner { get; private set; } = null!;

    /// <summary>A rider who has a trouble.</summary>
    public Person Rider { get; private set; } = null!;

    /// <summary>Another rider.</summary>
    public Person Mate { get; private set; } = null!;

    public LiteShedStore Store => store!;

    public IReadOnlyCollection<string> Log => log.Lines;

    public static KnowledgeBase Knowledge => Ground.Coach.Knowledge;

    public static Ground Ground => Rules.Value;

    /// <summary>What tries proposed rules in the next life; a few riders only, so that it is soon done.</summary>
    public ITrials Trials { get; set; } = new ClubTrials(() => new CoachOptions(), new RidersTried(Riders: 2, Stops: 1));

    /// <summary>Whether trials can be painted.</summary>
    public TrialPainter PaintTrial { get; set; } = (_, _) => null;

    /// <summary>Whether the report on chances can be painted.</summary>
    public CalibrationPainter PaintCalibration { get; set; } = (_, _) => null;

    /// <param name="paint">Left out: nothing can be painted.</param>
    /// <param name="trials">Left out: small ones are made.</param>
    /// <param name="setUp">False: nobody has chosen a help channel yet.</param>
    public static async Task<ClubHouse> OpenAsync(ITestOutputHelper output, StandInOptions? options = null, bool forum = false, bool setUp = true, TimelinePainter? paint = null, ITrials? trials = null)
    {
        options ??= new StandInOptions();
        var contract = ContractCheck.Find(Strictness.Strict);
        output.WriteLine(contract.About);
        var platform = await StandIn.StartAsync(options with { Checks = [new LimitsCheck(Strictness.Strict), contract], AnswerWithin = TimeSpan.FromSeconds(3 * Slowness) });
        var house = new ClubHouse(platform, new TestLog(output), paint ?? ((_, _) => null));
        if (trials is not null) house.Trials = trials;
        if (options.Clock is AheadClock ahead) house.Clock.Move(ahead.By);
        await house.FurnishAsync(forum);
        await house.StartAsync();
        if (setUp) await house.SetUpAsync();
        return house;
    }

    /// <summary>A moderator chooses the help channel and the helpers' role.</summary>
    public async Task<Deed> SetUpAsync()
    {
        var deed = await Platform.CommandAsync(Owner, Help.Kind == ChannelKind.Forum ? Lobby : Help, "club set-up", new Dictionary<string, object>
        {
            ["help-channel"] = Help,
            ["helper-role"] = Helpers,
            ["units"] = "Metric",
            ["time-zone"] = "Europe/Lisbon",
        });
        Assert.False((await deed.Settled).Failed);
        return deed;
    }

    /// <summary>Whether the next life is told that its data file was restored.</summary>
    public bool Restored { get; set; }

    /// <summary>The data file; to be touched only while the program does not run.</summary>
    public string DataFile => Path.Combine(folder, "club.shed");

    /// <summary>An ordinary channel in which no help is given.</summary>
    public Channel Lobby { get; private set; } = null!;

    public async Task StartAsync()
    {
        store = await LiteShedStore.OpenAsync(new StoreOptions { Path = DataFile }, default);
        var coaches = new ClubCoaches(store, () => Ground);
        desk = new CaseDesk(store, store, coaches, Clock, () => $"c{Interlocked.Increment(ref cases):D5}{Random.Shared.Next(36 * 36):D4}", DiscordClubs.OtherBike);
        var settings = new DiscordSettings { Api = new Uri(Platform.ApiAddress), SessionFolder = Path.Combine(folder, "session"), Restored = Restored, Files = new Uri(Platform.Address + "/"), TrialTold = TimeSpan.FromMilliseconds(100) };
        bot = new DiscordClubs(settings, Platform.Options.Token, store, store, store, store, desk, coaches, Clock, Random.Shared.NextDouble, paint,
            store, () => Ground, Trials, (report, look) => PaintTrial(report, look), log, (report, look) => PaintCalibration(report, look));
        life = new CancellationTokenSource();
        running = bot.RunAsync(life.Token);
        await Platform.WaitForLoginAsync(Patience);
        await Platform.WaitForCommandsAsync(patience: Patience);
    }

    /// <summary>Ends the program in good order and starts it again.</summary>
    public async Task RestartAsync()
    {
        await StopAsync();
        await StartAsync();
    }

    public async Task StopAsync()
    {
        if (bot is null) return;
        await bot.StopAsync(comingBack: true);
        await running;
        await bot.DisposeAsync();
        desk!.Dispose();
        await store!.DisposeAsync();
        bot = null;
    }

    /// <summary>Ends the program in the middle of what it does. Not started again.</summary>
    public async Task KillAsync()
    {
        await store!.DisposeAsync();
        await life.CancelAsync();
        await running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        await bot!.DisposeAsync();
        desk!.Dispose();
        bot = null;
    }

    /// <summary>The thread of a case, once it is there and has a question in it.</summary>
    public async Task<Channel> ThreadAsync(int number = 0)
    {
        await UntilAsync(() => Platform.Threads(Help).Count > number && Panel(Platform.Threads(Help)[number]) is not null, "the thread of a case");
        return Platform.Threads(Help)[number];
    }

    /// <summary>The newest message of ours in a thread that can be answered; null when there is none.</summary>
    public SeenMessage? Panel(Channel thread) => Platform.Messages(thread, removed: false)
        .LastOrDefault(m => m.AuthorId == Platform.Bot.Id && !m.Private && m.Usable.Any());

    /// <summary>All that stands in a thread, oldest first.</summary>
    public string Text(Channel thread) => string.Join("\n\n", Platform.Messages(thread, removed: false).Select(m => m.Words));

    /// <summary>Presses the answer with this label on the open question, in a button or a list, and waits until it is dealt with.</summary>
    public async Task<Deed> AnswerAsync(Person who, Channel thread, string label)
    {
        var panel = Panel(thread) ?? throw new InvalidOperationException($"No question is open in the thread; it reads:\n{Text(thread)}");
        var deed = panel.Usable.FirstOrDefault(c => Same(c.Label, label)) is { } button
            ? await Platform.PressAsync(who, panel, button.CustomId!)
            : panel.Usable.SelectMany(c => c.Choices, (c, o) => (Control: c, Choice: o)).FirstOrDefault(x => Same(x.Choice.Label, label)) is { Choice: not null } found
                ? await Platform.PickAsync(who, panel, found.Control.CustomId!, found.Choice.Value)
                : throw new InvalidOperationException($"'{label}' is not among: {string.Join(" | ", Labels(panel))}");
        var answer = await deed.Answered;
        // Announced first, then the question is changed or something is said to this one alone; long ones go on in further messages.
        if (answer.Type == 6)
            await UntilAsync(() => deed.FollowUps.Count > 0 || Panel(thread) is not { } now || now.Id != panel.Id || now.Words != panel.Words, "what was announced");
        await UntilAsync(() => Store.UnsaidPlacesAsync(10, default).Result.IsEmpty, "all to be said");
        return deed;
    }

    /// <summary>Says something in the thread as a reply to the open question, and waits until it was answered.</summary>
    public async Task SayAsync(Person who, Channel thread, string words)
    {
        var before = Platform.Messages(thread).Count;
        await Platform.SayAsync(who, thread, words, replyTo: Panel(thread));
        await UntilAsync(
            () => Platform.Messages(thread).Count > before + 1 || Platform.Violations.Count > 0, "a reply to words");
        AssertNoViolations();
    }

    /// <summary>Looks again and again: what is kept changes without the platform hearing of it.</summary>
    /// <param name="patience">Left out: <see cref="Patience"/>.</param>
    public static async Task UntilAsync(Func<bool> so, string what, TimeSpan? patience = null)
    {
        for (var left = patience ?? Patience; !so(); left -= Look)
        {
            if (left < TimeSpan.Zero) throw new TimeoutException($"{what}: not within {(patience ?? Patience).TotalSeconds} s.");
            await Task.Delay(Look);
        }
    }

    public static IEnumerable<string> Labels(SeenMessage message) =>
        message.Usable.SelectMany(c => c.Choices.Count > 0 ? c.Choices.Select(o => o.Label) : [c.Label]);

    public void AssertNoViolations()
    {
        if (Platform.Violations.Count > 0) Assert.Fail(string.Join("\n", Platform.Violations.Select(v => $"{v.Where}: {v.What}")));
    }

    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        await Platform.DisposeAsync();
        life.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    public static bool Same(string shown, string wanted) => string.Equals(shown, wanted, StringComparison.Ordinal)
        || (shown.EndsWith("...", StringComparison.Ordinal) && wanted.StartsWith(shown[..^3].TrimEnd(), StringComparison.Ordinal))
        || (shown.EndsWith('…') && wanted.StartsWith(shown[..^1].TrimEnd(), StringComparison.Ordinal));

    private async Task FurnishAsync(bool forum)
    {
        Owner = Platform.AddPerson("Marlo the moderator");
        Rider = Platform.AddPerson("Robin");
        Mate = Platform.AddPerson("Sam");
        Guild = await Platform.AddGuildAsync("Invented Pedal and Putter Club", Owner);
        Helpers = Platform.AddRole(Guild, "Old hands");
        Helpers.Mentionable = true;
        Platform.Join(Guild, Rider);
        Platform.Join(Guild, Mate);
        Lobby = Platform.AddTextChannel(Guild, "tea-and-cake");
        Help = forum ? Platform.AddForum(Guild, "clutch-help") : Platform.AddTextChannel(Guild, "clutch-help");
    }
}
