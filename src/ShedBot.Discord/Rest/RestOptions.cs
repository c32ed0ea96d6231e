namespace ShedBot.Discord.Rest;

/// <summary>How we talk to the platform. The times are our own choice: it documents none but the three seconds of an answer.</summary>
/// <param name="AppUrl">Where the operator of this bot can be found; part of the user agent that the platform asks for.</param>
/// <param name="AppVersion">Also part of it; printable ASCII.</param>
internal sealed record RestOptions(Uri AppUrl, string AppVersion)
{
    /// <summary>Ends with a slash, since paths are put behind it.</summary>
    public Uri BaseAddress { get; init; } = new($"https://discord.com/api/v{Wire.Limits.ApiVersion}/");

    /// <summary>For one try without files.</summary>
    public TimeSpan Try { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>For one try with files.</summary>
    public TimeSpan UploadTry { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>For one try of the first answer to an interaction, so that another fits into the three seconds.</summary>
    public TimeSpan AnswerTry { get; init; } = TimeSpan.FromSeconds(2);

    /// <summary>For a request with all its waits and tries. When it is known to take longer it is given up at once.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(60);

    /// <summary>Requests a second over all routes; 1 to 50.</summary>
    public int PerSecond { get; init; } = 50;

    /// <summary>How often a request is sent again that was told to wait.</summary>
    public int LimitedRepeats { get; init; } = 4;

    /// <summary>Refused requests within ten minutes at which somebody is told.</summary>
    public int WarnAt { get; init; } = 500;

    /// <summary>Refused requests within ten minutes at which only interactions are still answered; the platform shuts us out at 10,000.</summary>
    public int StopAt { get; init; } = 5000;
}
