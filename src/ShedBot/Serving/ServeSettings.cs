using System.Globalization;
using Microsoft.Extensions.Options;

namespace ShedBot.Serving;

/// <summary>
/// The settings of the service that are not the chat's. From the command line; else from the environment (<c>SHEDBOT_SERVE__DATA</c>, ...);
/// else from the section <c>Serve</c> of appsettings.json.
/// </summary>
internal sealed class ServeSettings
{
    public const string Section = "Serve";
    public const int LeastKeepDays = 1, MostKeepDays = 366;

    /// <summary>The data file. The folder 'data' here is made when it is missing; any other must be there.</summary>
    public string Data { get; set; } = Path.Combine("data", "club.shed");

    /// <summary>The folder of rule files; empty: look for it.</summary>
    public string Knowledge { get; set; } = "";

    /// <summary>The file that tells how the service is; empty: health.json beside the data file.</summary>
    public string Health { get; set; } = "";

    /// <summary>A folder for a backup a day; empty: none is made.</summary>
    public string BackupFolder { get; set; } = "";

    /// <summary>Backups are removed when they are older than this, in days; 1 to 366. What a member had removed lives on in them for as long.</summary>
    public int BackupKeepDays { get; set; } = 14;

    public string HealthPath => Health.Length > 0 ? Path.GetFullPath(Health) : Path.Combine(DataFolder, "health.json");

    public string DataFolder => Path.GetDirectoryName(Path.GetFullPath(Data))!;
}

/// <summary>Says the limit and what was given.</summary>
internal sealed class ServeSettingsValidator : IValidateOptions<ServeSettings>
{
    public ValidateOptionsResult Validate(string? name, ServeSettings options)
    {
        var failures = new List<string>();
        if (string.IsNullOrWhiteSpace(options.Data))
            failures.Add("The data file (--data, Serve:Data) must be named; nothing was given.");
        if (options.BackupFolder.Length > 0 && !Directory.Exists(options.BackupFolder))
            failures.Add($"There is no folder {options.BackupFolder} for backups (Serve:BackupFolder). Make it, or leave the setting out.");
        if (options.BackupKeepDays is < ServeSettings.LeastKeepDays or > ServeSettings.MostKeepDays)
        {
            failures.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"Serve:BackupKeepDays must be between {ServeSettings.LeastKeepDays} and {ServeSettings.MostKeepDays}; {options.BackupKeepDays} was given."));
        }

        return failures.Count > 0 ? ValidateOptionsResult.Fail(failures) : ValidateOptionsResult.Success;
    }
}
