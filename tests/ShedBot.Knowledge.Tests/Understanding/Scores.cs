using System.Globalization;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Knowledge.Tests.Understanding;

/// <summary>The scores of the README over a set of messages. Holds counts only, never a text: it may be printed for the blind set.</summary>
internal sealed class Scores
{
    private readonly SortedDictionary<string, (int Right, int All)> shares = new(StringComparer.Ordinal);

    public static Scores Over(IEnumerable<RiderMessage> messages)
    {
        var scores = new Scores();
        foreach (var message in messages)
            scores.Add(message, Shipped.Listener.Understand(message.Text));
        return scores;
    }

    /// <returns>From 0 to 1; 0 when nothing was counted.</returns>
    public double Of(string name) => shares.TryGetValue(name, out var s) && s.All > 0 ? (double)s.Right / s.All : 0;

    public override string ToString() => string.Join('\n', shares.Select(s =>
        string.Create(CultureInfo.InvariantCulture, $"{s.Key,-36} {s.Value.Right,4} of {s.Value.All,4}  {100.0 * s.Value.Right / s.Value.All,5:0.0} %")));

    private void Add(RiderMessage message, Understood heard)
    {
        var ids = heard.Complaints.Select(c => c.Id).ToList();
        var exact = message.Complaints.All(ids.Contains) && ids.All(i => message.Complaints.Contains(i) || message.AlsoOk.Contains(i));
        Count("exact set", exact);
        Count($"exact set, kind {message.Kind}", exact);
        if (message.Complaints.Count > 0)
        {
            Count("exact set, with complaints", exact);
            Count("top complaint", ids.Count > 0 && message.Complaints.Contains(ids[0]));
        }
        if (message.Emergency is not null)
        {
            Count("emergency noticed", heard.Emergency == message.Emergency);
            Count("emergency, any noticed", heard.Emergency is not null);
        }
        else
        {
            var alarm = heard.Emergency is not null && !message.EmergencyAlsoOk.Contains(heard.Emergency);
            Count("false alarm", alarm);
            Count($"false alarm, kind {message.Kind}", alarm);
        }
        if (message.Either is not null)
            Count("could be either, asked", heard.Either == message.Either);
        else
            Count("plain, asked which is meant", heard.Either is not null);
        if (message.HowTo is not null)
            Count("how-to offered", heard.HowTo is { } topic && (topic.Id == message.HowTo || message.HowToAlsoOk.Contains(topic.Id)));
        else
            Count("how-to wrongly offered", heard.HowTo is { } topic && !message.HowToAlsoOk.Contains(topic.Id));
        // 'unclear' asks the rider to say more; it turns nobody away.
        if (message.NotMine is { } notMine)
            Count(notMine ? "not mine, told so" : "ours, not turned away", notMine == (heard.NotMine && heard.NotMineBecause != "unclear"));
        if (message.NotMine is { } right)
            Count("not mine or ours", right == (heard.NotMine && heard.NotMineBecause != "unclear"));
        if (message.Denied.Count > 0)
            Count("nothing denied is heard", !message.Denied.Any(ids.Contains));
        var found = heard.Findings.Select(f => (f.Subject, f.State)).ToList();
        foreach (var state in found.Where(f => !message.FindingsAlsoOk.Contains(f)))
            Count("findings heard that are so", message.Findings.Contains(state));
        foreach (var state in message.Findings)
            Count("findings told that are heard", found.Contains(state));
    }

    private void Count(string name, bool yes)
    {
        var (right, all) = shares.GetValueOrDefault(name);
        shares[name] = (right + (yes ? 1 : 0), all + 1);
    }
}
