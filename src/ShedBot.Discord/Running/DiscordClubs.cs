using System.Diagnostics.Metrics;
using System.Globalization;
using Microsoft.Extensions.Logging;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Learning.Reports;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Nudging;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Discord.Clubs;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Pictures;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Running;

/// <summary>ShedBot in the clubs of the platform: all that the program above needs to know of it.</summary>
public sealed class DiscordClubs : IAsyncDisposable
{
    /// <summary>The name under which figures are counted.</summary>
    public const string Meter = RestMeters.MeterName;

    /// <summary>How a member with several bikes begins a case about another one than is in use.</summary>
    public const string OtherBike = "/case leave, and then /trouble with its name";

    /// <summary>Longer than any answer takes: what is going on when asked to stop may end.</summary>
    private static readonly TimeSpan DrainFor = TimeSpan.FromSeconds(5);

    private static readonly TimeSpan LetGoFor = TimeSpan.FromSeconds(2);

    private readonly Meter meter = new(Meter);
    private readonly CancellationTokenSource stopping = new();
    private readonly HttpClient http;
    private readonly Gateway.Gateway gateway;
    private readonly ClubBot bot;
    private readonly BikeDesk logbook;
    private readonly RiderDesk wishes;
    private readonly TeachDesk rules;
    private readonly HttpClient files = FileFetch.Client();
    private readonly WatchedSink sink;
    private readonly TimeProvider clock;
    private volatile bool tokenRefused;

    /// <param name="token">The bot's token.</param>
    /// <param name="coaches">Asked for each turn, so that what a club has published serves the next one.</param>
    /// <param name="chance">From 0 up to but not 1; called from several threads.</param>
    /// <param name="paint">Asked only when a member wants a timeline.</param>
    /// <param name="ground">The project's rules, asked each time.</param>
    /// <param name="trials">Tries what is proposed.</param>
    /// <param name="paintTrial">Asked only when a trial is shown.</param>
    /// <param name="paintCalibration">Asked only when that report is shown; left out where nothing can be painted.</param>
    public DiscordClubs(
        DiscordSettings settings,
        string token,
        IShedStore store,
        IClubStore clubs,
        IArrivalStore arrivals,
        IRiderStore riders,
        CaseDesk desk,
        ICoaches coaches,
        TimeProvider clock,
        Func<double> chance,
        TimelinePainter paint,
        ITeachingStore teaching,
        Func<Ground> ground,
        ITrials trials,
        TrialPainter paintTrial,
        ILoggerFactory logs,
        CalibrationPainter? paintCalibration = null)
    {
        this.clock = clock;
        var secret = new BotToken(token);
        var options = new RestOptions(settings.Operator, settings.Version) { BaseAddress = settings.Api };
        http = RestClient.Create(options, RestClient.Handler());
        var rest = new DiscordRest(http, secret, options, clock, chance, meter, logs.CreateLogger<DiscordRest>());
        rest.TokenRefused += () => tokenRefused = true;
        var log = logs.CreateLogger<DiscordClubs>();
        logbook = new BikeDesk(store, riders, coaches);
        wishes = new RiderDesk(store, riders, coaches, async (member, ct) => await ZoneAsync(clubs, member, ct));
        rules = new TeachDesk(teaching, () => ground().Base, trials);
        var parts = new Parts(
            store, clubs, arrivals, desk, logbook, wishes, coaches, rest, CardPictures.OfThisMachine(FixedWidthFace.UsualFolders, why => log.NoPictures(why)), paint,
            teaching, rules, paintTrial, paintCalibration ?? ((_, _) => null), new FileFetch(files, settings.Files, clock), clock, new Identity(), log);
        bot = new ClubBot(parts, Snowflake.Read(settings.RegisterIn) ?? default, TimeSpan.FromDays(settings.KeepDaysAfterLeaving), settings.Restored, settings.TrialTold, stopping.Token);
        sink = new WatchedSink(bot, clock);
        ISessionShelf shelf = settings.SessionFolder is { } folder ? new FileSessionShelf(folder) : new NoSessionShelf();
        var gatewayOptions = new GatewayOptions(secret) { Shards = settings.Shards, Compress = settings.Compress, Url = settings.Gateway };
        gateway = new Gateway.Gateway(gatewayOptions, rest.GetGatewayAsync, shelf, settings.GatewayClock ?? clock, chance, logs.CreateLogger<Gateway.Gateway>());
    }

    /// <summary>The link by which a club takes ShedBot in, with exactly what it must be allowed to do.</summary>
    /// <param name="application">The application's id, from the platform's page for developers.</param>
    /// <exception cref="FormatException">The id is none.</exception>
    public static Uri InviteLink(string application) => Snowflake.Read(application) is { } id
        ? new Uri(string.Create(
            CultureInfo.InvariantCulture, $"https://discord.com/oauth2/authorize?client_id={id}&scope=bot+applications.commands&permissions={RightsCheck.All}"))
        : throw new FormatException("The application's id is a number of 17 to 20 digits.");

    /// <summary>Runs until asked to stop; to be called once.</summary>
    /// <exception cref="ChatRefusedException">The platform will not have us until the operator has changed something; the message says what.</exception>
    public async Task RunAsync(CancellationToken ct)
    {
        using var end = CancellationTokenSource.CreateLinkedTokenSource(ct, stopping.Token);
        try
        {
            await bot.PrepareAsync(end.Token);
            var upkeep = bot.KeepUpAsync(end.Token);
            try
            {
                await gateway.RunAsync(sink, bot, end.Token);
            }
            finally
            {
                await stopping.CancelAsync();
                await upkeep.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
        catch (GatewayFatalException e)
        {
            throw new ChatRefusedException(e.Message, e);
        }
        catch (OperationCanceledException) when (end.IsCancellationRequested)
        {
            // Asked to stop before the first connection stood.
        }
    }

    /// <summary>Ends what is going on and closes the connection.</summary>
    /// <param name="comingBack">True for a restart: the session stays open for a while, and what is missed will be told.</param>
    public async Task StopAsync(bool comingBack)
    {
        // First the ears, then the hands: what came in is dealt with to its end.
        var closed = gateway.StopAsync(comingBack);
        await Task.WhenAny(bot.DrainAsync(), Task.Delay(DrainFor, clock));
        await closed;
        await stopping.CancelAsync();
        // What was cut off lets go of the store and of the connections, which are closed next.
        await Task.WhenAny(bot.DrainAsync(), Task.Delay(LetGoFor, clock));
    }

    public ChatHealth Health() => new(sink.Ready, sink.LastHeard, bot.Busy, tokenRefused);

    public async ValueTask DisposeAsync()
    {
        await StopAsync(comingBack: true);
        gateway.Dispose();
        http.Dispose();
        files.Dispose();
        rules.Dispose();
        logbook.Dispose();
        wishes.Dispose();
        meter.Dispose();
        stopping.Dispose();
    }

    private static async Task<string> ZoneAsync(IClubStore clubs, MemberId member, CancellationToken ct) =>
        ClubId.Of(member) is { } club && await clubs.FindClubAsync(club, ct) is { } known ? known.TimeZone : "Etc/UTC";
}
