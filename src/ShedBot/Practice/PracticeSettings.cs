using System.Globalization;
using Microsoft.Extensions.Options;

namespace ShedBot.Practice;

/// <summary>
/// The settings of the practice terminal. From the command line; else from the environment (<c>SHEDBOT_PRACTICE__DATA</c>, ...); else from
/// the section <c>Practice</c> of appsettings.json.
/// </summary>
internal sealed class PracticeSettings
{
    public const string Section = "Practice";
    public const int LeastWidth = 40, MostWidth = 400, MostName = 40;

    /// <summary>One line in, plain text out.</summary>
    public bool Plain { get; set; }

    /// <summary>Repeat what was typed, so that what comes out of a pipe reads as the whole conversation.</summary>
    public bool Echo { get; set; }

    /// <summary>The member who talks first: 1 to 40 letters, digits, '-' or '_'.</summary>
    public string As { get; set; } = "Rider";

    /// <summary>The data file. The folder 'data' here is made when it is missing; any other must be there.</summary>
    public string Data { get; set; } = Path.Combine("data", "practice.shed");

    /// <summary>The folder of rule files; empty: look for it.</summary>
    public string Knowledge { get; set; } = "";

    /// <summary>The time at which the clock stands still, ISO 8601 with a zone; empty: the real clock.</summary>
    public string Now { get; set; } = "";

    /// <summary>Columns of plain text, 40 to 400.</summary>
    public int Width { get; set; } = 88;

    /// <returns>Null when the setting is empty or not a time.</returns>
    public DateTimeOffset? FrozenAt() =>
        DateTimeOffset.TryParse(Now, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var at) ? at : null;
}

/// <summary>Says the limit and what was given.</summary>
internal sealed class PracticeSettingsValidator : IValidateOptions<PracticeSettings>
{
    public ValidateOptionsResult Validate(string? name, PracticeSettings options)
    {
        var failures = new List<string>();
        if (!MemberName.IsGood(options.As))
            failures.Add($"The member's name (--as, Practice:As) must be 1 to {PracticeSettings.MostName} letters, digits, '-' or '_'; '{options.As}' was given.");
        if (string.IsNullOrWhiteSpace(options.Data))
            failures.Add("The data file (--data, Practice:Data) must be named; nothing was given.");
        if (options.Now.Length > 0 && options.FrozenAt() is null)
            failures.Add($"The time (--now, Practice:Now) must be like 2026-05-01T10:00:00Z; '{options.Now}' was given.");
        if (options.Width is < PracticeSettings.LeastWidth or > PracticeSettings.MostWidth)
        {
            failures.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"The width (Practice:Width) must be between {PracticeSettings.LeastWidth} and {PracticeSettings.MostWidth} columns; {options.Width} was given."));
        }

        return failures.Count > 0 ? ValidateOptionsResult.Fail(failures) : ValidateOptionsResult.Success;
    }
}
