using System.Diagnostics.Metrics;

namespace ShedBot.Discord.Rest;

/// <summary>What is counted of our requests. Tags are routes without their ids.</summary>
internal sealed class RestMeters(Meter meter)
{
    public const string MeterName = "ShedBot.Discord";

    private readonly Counter<long> requests = meter.CreateCounter<long>("shedbot.rest.requests", description: "Tries, by route and class of status.");
    private readonly Histogram<double> waits = meter.CreateHistogram<double>("shedbot.rest.wait", "s", "Time a request waited for a limit.");
    private readonly Counter<long> limited = meter.CreateCounter<long>("shedbot.rest.limited", description: "Answers of 429, by scope.");
    private readonly Counter<long> retries = meter.CreateCounter<long>("shedbot.rest.retries", description: "Requests sent again after a failure.");
    private readonly Counter<long> invalid = meter.CreateCounter<long>("shedbot.rest.invalid", description: "Answers that the platform holds against us.");
    private readonly Histogram<double> answers = meter.CreateHistogram<double>("shedbot.rest.answer", "s", "From an interaction to its first answer, by the interaction's id and our clock.");

    /// <param name="status">0 when no answer came.</param>
    public void Tried(Route route, int status) =>
        requests.Add(1, new("route", route.Name), new("status", status == 0 ? "none" : $"{status / 100}xx"));

    public void Waited(Route route, TimeSpan wait) => waits.Record(wait.TotalSeconds, new KeyValuePair<string, object?>("route", route.Name));

    public void Limited(Route route, LimitScope scope) => limited.Add(1, new("route", route.Name), new("scope", scope.ToString()));

    public void Retried(Route route) => retries.Add(1, new KeyValuePair<string, object?>("route", route.Name));

    public void Invalid() => invalid.Add(1);

    public void Answered(TimeSpan after) => answers.Record(after.TotalSeconds);
}
