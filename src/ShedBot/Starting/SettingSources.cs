using Microsoft.Extensions.Configuration;

namespace ShedBot.Starting;

/// <summary>Where settings come from. What comes later wins: beside the program, the current folder, the environment, the command line.</summary>
internal static class SettingSources
{
    private const string EnvironmentPrefix = "SHEDBOT_", SettingsFile = "appsettings.json";

    /// <param name="given">Settings of the command line, by their full names.</param>
    public static IConfigurationBuilder AddShedSettings(this IConfigurationBuilder builder, IEnumerable<KeyValuePair<string, string?>> given) => builder
        .AddJsonFile(Path.Combine(AppContext.BaseDirectory, SettingsFile), optional: true)
        .AddJsonFile(Path.GetFullPath(SettingsFile), optional: true)
        .AddEnvironmentVariables(EnvironmentPrefix)
        .AddInMemoryCollection(given);

    /// <exception cref="InvalidDataException">A settings file is not JSON.</exception>
    public static IConfigurationRoot Read(IEnumerable<KeyValuePair<string, string?>> given) => new ConfigurationBuilder().AddShedSettings(given).Build();

    /// <summary>What was given on the command line, by the full names of the settings; what was not given is left out.</summary>
    public static Dictionary<string, string?> Given(string section, params ReadOnlySpan<(string Setting, string? Value)> options)
    {
        var given = new Dictionary<string, string?>(StringComparer.OrdinalIgnoreCase);
        foreach (var (setting, value) in options)
        {
            if (value is not null) given[$"{section}:{setting}"] = value;
        }

        return given;
    }
}
