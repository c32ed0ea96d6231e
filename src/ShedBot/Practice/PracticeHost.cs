using System.Text;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;
using ShedBot.Cards;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Coaching.Trials.Worlds;
using ShedBot.Pictures;
using ShedBot.Rules;
using ShedBot.Starting;
using ShedBot.Storage;
using ShedBot.Terminal;
using Spectre.Console;

namespace ShedBot.Practice;

/// <summary>Puts the practice terminal together: settings first, then the rules, then the data file; nothing is opened before what comes earlier is good.</summary>
internal static class PracticeHost
{
    /// <summary>Somebody sits and waits, so only few riders are made up here. A club in the chat tries more.</summary>
    private const int RidersAtATrial = 6, StopsAtATrial = 2;

    /// <param name="given">Settings of the command line, by their full names.</param>
    public static IHost Build(IEnumerable<KeyValuePair<string, string?>> given)
    {
        var builder = new HostApplicationBuilder(new HostApplicationBuilderSettings { DisableDefaults = true, ContentRootPath = AppContext.BaseDirectory });
        builder.Configuration.AddShedSettings(given);
        // The conversation owns standard output; what goes wrong goes to standard error, and nothing else does unless it is asked for.
        builder.Logging.SetMinimumLevel(LogLevel.Warning)
            .AddConfiguration(builder.Configuration.GetSection("Logging"))
            .AddSimpleConsole(o => o.SingleLine = true)
            .Services.Configure<Microsoft.Extensions.Logging.Console.ConsoleLoggerOptions>(o => o.LogToStandardErrorThreshold = LogLevel.Trace);
        builder.Services.AddPractice();
        return builder.Build();
    }

    public static IServiceCollection AddPractice(this IServiceCollection services)
    {
        services.AddSingleton<IValidateOptions<PracticeSettings>, PracticeSettingsValidator>();
        services.AddSingleton<IValidateOptions<CoachSettings>, CoachSettingsValidator>();
        services.AddOptions<PracticeSettings>().BindConfiguration(PracticeSettings.Section).ValidateOnStart();
        services.AddOptions<CoachSettings>().BindConfiguration(CoachSettings.Section).ValidateOnStart();
        services.TryAddSingleton<TimeProvider>(s =>
            s.GetRequiredService<IOptions<PracticeSettings>>().Value.FrozenAt() is { } at ? new FrozenClock(at) : TimeProvider.System);
        return services;
    }

    /// <returns>One of <see cref="ExitCodes"/>.</returns>
    public static async Task<int> RunAsync(IHost host, CancellationToken ct)
    {
        await host.StartAsync(ct);
        var settings = host.Services.GetRequiredService<IOptions<PracticeSettings>>().Value;
        var coaching = host.Services.GetRequiredService<IOptions<CoachSettings>>().Value.ToOptions();
        if (RulesInUse.Open(settings.Knowledge, coaching, Console.Error) is not { } rules) return ExitCodes.RulesRefused;

        var file = DataFile.Prepare(settings.Data, new PracticeSettings().Data);
        await using var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = file }, ct);
        using var input = new StreamReader(Console.OpenStandardInput(), Encoding.UTF8);
        await using var output = TextOut.Standard();
        var pictures = new TimelinePictures(PlainFace.UsualFolders, host.Services.GetRequiredService<ILogger<TimelinePictures>>());
        using var session = new PracticeSession(
            store,
            store,
            store,
            rules,
            Screen(settings, output),
            input,
            host.Services.GetRequiredService<TimeProvider>(),
            host.Services.GetRequiredService<ILogger<PracticeSession>>(),
            new MemberName(settings.As),
            Path.GetDirectoryName(Path.GetFullPath(file))!,
            pictures.Paint,
            new ClubTrials(() => coaching, new RidersTried(RidersAtATrial, Stops: StopsAtATrial)),
            pictures.Paint);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(ct, host.Services.GetRequiredService<IHostApplicationLifetime>().ApplicationStopping);
        try
        {
            await session.RunAsync(stop.Token);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // Ctrl-C: every answer that was replied to is on the disk already.
            await output.WriteLineAsync();
        }

        await host.StopAsync(CancellationToken.None);
        return ExitCodes.Fine;
    }

    private static IScreen Screen(PracticeSettings settings, TextWriter output) =>
        settings.Plain || Console.IsOutputRedirected ? new PlainScreen(output, settings.Width, settings.Echo) : new RichScreen(AnsiConsole.Console);
}
