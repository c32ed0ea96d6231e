using System.Reflection;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;
using ShedBot.Coaching.Desk;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.Discord.Running;
using ShedBot.Pictures;
using ShedBot.Rules;
using ShedBot.Serving.Copies;
using ShedBot.Serving.Health;
using ShedBot.Starting;
using ShedBot.Storage;

namespace ShedBot.Serving;

/// <summary>Puts the service together: settings first, then the token, the rules, the data file; nothing is opened before what comes earlier is good.</summary>
internal static class ServeHost
{
    /// <summary>How the log looks unless the settings say otherwise: a line each, with the time.</summary>
    private static readonly Dictionary<string, string?> UsualLog = new(StringComparer.Ordinal)
    {
        ["Logging:LogLevel:Default"] = nameof(LogLevel.Information),
        ["Logging:LogLevel:Microsoft"] = nameof(LogLevel.Warning),
        ["Logging:Console:FormatterName"] = "simple",
        ["Logging:Console:FormatterOptions:SingleLine"] = bool.TrueString,
        ["Logging:Console:FormatterOptions:TimestampFormat"] = "yyyy-MM-dd'T'HH:mm:ss'Z' ",
        ["Logging:Console:FormatterOptions:UseUtcTimestamp"] = bool.TrueString,
    };

    public static string Version { get; } =
        typeof(ServeHost).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0];

    /// <param name="given">Settings of the command line, by their full names.</param>
    public static IHost Build(IEnumerable<KeyValuePair<string, string?>> given)
    {
        var builder = new HostApplicationBuilder(new HostApplicationBuilderSettings { DisableDefaults = true, ContentRootPath = AppContext.BaseDirectory });
        builder.Configuration.AddInMemoryCollection(UsualLog).AddShedSettings(given);
        builder.Logging.AddConfiguration(builder.Configuration.GetSection("Logging")).AddConsole();
        builder.Services.AddServing();
        return builder.Build();
    }

    public static IServiceCollection AddServing(this IServiceCollection services)
    {
        services.AddSingleton<IValidateOptions<ServeSettings>, ServeSettingsValidator>();
        services.AddSingleton<IValidateOptions<ChatSettings>, ChatSettingsValidator>();
        services.AddSingleton<IValidateOptions<CoachSettings>, CoachSettingsValidator>();
        services.AddOptions<ServeSettings>().BindConfiguration(ServeSettings.Section).ValidateOnStart();
        services.AddOptions<ChatSettings>().BindConfiguration(ChatSettings.Section).ValidateOnStart();
        services.AddOptions<CoachSettings>().BindConfiguration(CoachSettings.Section).ValidateOnStart();
        services.TryAddSingleton(TimeProvider.System);
        return services;
    }

    /// <returns>One of <see cref="ExitCodes"/>.</returns>
    public static async Task<int> RunAsync(IHost host, TextWriter errors, CancellationToken ct)
    {
        await host.StartAsync(ct);
        var services = host.Services;
        var settings = services.GetRequiredService<IOptions<ServeSettings>>().Value;
        var talk = services.GetRequiredService<IOptions<ChatSettings>>().Value;
        var logs = services.GetRequiredService<ILoggerFactory>();
        var clock = services.GetRequiredService<TimeProvider>();
        var log = logs.CreateLogger<Service>();
        var token = TokenSource.Read(services.GetRequiredService<IConfiguration>(), log.Advises);
        if (talk.Operator.Length == 0)
            log.Advises("Discord:Operator is not set. The chat asks every bot to say where its operator can be found: name a page or an address.");
        if (RulesInUse.Open(settings.Knowledge, services.GetRequiredService<IOptions<CoachSettings>>().Value.ToOptions(), errors) is not { } rules)
            return ExitCodes.RulesRefused;

        var data = DataFile.Prepare(settings.Data, new ServeSettings().Data);
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = data }, ct);
        var coaches = new ClubCoaches(store, () => rules.Ground);
        using var desk = new CaseDesk(store, store, coaches, clock, CaseIds.Next, DiscordClubs.OtherBike);
        using var meters = new MeterTotals(DiscordClubs.Meter);
        var pictures = new TimelinePictures(PlainFace.UsualFolders, logs.CreateLogger<TimelinePictures>());
        await using var chat = new ClubsChat(new DiscordClubs(
            talk.ToDiscord(Version, settings.DataFolder), token, store, store, store, store, desk, coaches, clock, Random.Shared.NextDouble,
            pictures.Paint,
            store, () => rules.Ground, new ClubTrials(() => rules.Options, new RidersTried()),
            new TrialPictures(PlainFace.UsualFolders, logs.CreateLogger<TrialPictures>()).Paint, logs, pictures.Paint));
        var file = new HealthFile(settings.HealthPath);
        var backups = settings.BackupFolder.Length > 0 ? new DailyBackup(Path.GetFullPath(settings.BackupFolder), settings.BackupKeepDays) : null;
        var watch = new Watch(new RulesWatch(rules, log), chat.Health, store.Health, backups, store.BackupAsync, file, meters, clock, log);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(ct, services.GetRequiredService<IHostApplicationLifetime>().ApplicationStopping);
        log.Serves(Version, rules.Knowledge.Version, data, file.Path);
        var code = await new Service(chat, watch, errors, clock, log).RunAsync(stop.Token);
        file.Remove();
        return code;
    }
}
