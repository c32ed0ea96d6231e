using System.Globalization;
using NodaTime;
using ShedBot.Coaching.Nudging;

namespace ShedBot.Coaching.Tests.Nudging.Simulated;

/// <summary>The lines of the tables in docs/nudges.md.</summary>
internal static class YearTables
{
    public static string Year((ClubRider Kind, RiderLife Life)[] lives) => ByKind(lives, YearLine);

    public static string Told((ClubRider Kind, RiderLife Life)[] lives) => ByKind(lives, ToldLine);

    public static string Bundled(Bundling way, (ClubRider Kind, RiderLife Life)[] lives)
    {
        RiderLife[] all = [.. lives.Select(l => l.Life)];
        var digests = Digests(all);
        var weeks = all.Select(l => Weeks(l.Unasked).Select(w => w.Length).ToArray()).ToArray();
        var name = (way.AheadDays < 0 ? $"{way.GapDays}, nothing" : $"{way.GapDays}, {way.AheadDays} days") + (way == Bundling.Usual ? " (ours)" : "");
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {name} | {digests.Sum()} | {At(digests, 0.5)} | {weeks.Max(w => w.DefaultIfEmpty(0).Max())} | {weeks.Sum(w => w.Count(n => n > 2))} | {weeks.Sum(w => w.Count(n => n > 3))} | {Spread(Late(all, false))} | {Spread(Late(all, true))} | {Early(all).Length} | {Spread(Early(all))} |");
    }

    /// <summary>For each message it and those of the six days before it.</summary>
    public static IEnumerable<Sent[]> Weeks(IEnumerable<Sent> messages)
    {
        Sent[] all = [.. messages];
        return all.Select((m, i) => all.Take(i + 1).Where(n => n.Local.Date > m.Local.Date.PlusDays(-7)).ToArray());
    }

    /// <summary>Days from the first evening on which it was due by the log to the telling, of what was not told ahead or held back for a lasting reason.</summary>
    public static int[] Late(RiderLife[] lives, bool pressing) =>
    [
        .. lives.SelectMany(l => l.Tellings.Where(t => t.Value.Early == 0 && t.Value.Pressing == pressing && !l.HeldBack.Contains(t.Key))
            .Select(t => Period.DaysBetween(l.FirstDue[t.Key], t.Value.Day))).Order(),
    ];

    private static int[] Early(RiderLife[] lives) => [.. lives.SelectMany(l => l.Tellings.Values.Where(t => t.Early > 0).Select(t => t.Early)).Order()];

    private static int[] Digests(RiderLife[] lives) => [.. lives.Select(l => l.Messages.Count(m => !m.Keys.IsEmpty)).Order()];

    private static string ByKind((ClubRider Kind, RiderLife Life)[] lives, Func<string, RiderLife[], string> line) =>
        string.Join('\n', lives.GroupBy(l => l.Kind).Select(g => line(g.Key.Kind, [.. g.Select(l => l.Life)])).Append(line("all", [.. lives.Select(l => l.Life)])));

    private static string YearLine(string kind, RiderLife[] lives)
    {
        var messages = lives.SelectMany(l => l.Messages).ToArray();
        var told = lives.Sum(l => l.Messages.SelectMany(m => m.Keys).Distinct().Count());
        var again = lives.Sum(l => l.Messages.Sum(m => m.Keys.Length)) - told;
        var never = lives.Sum(l => l.FirstDue.Keys.Except(l.Messages.SelectMany(m => m.Keys)).Count());
        var reasons = lives.SelectMany(l => l.Withheld.Keys).Distinct().Order().Select(r => $"{Words(r)} {lives.Sum(l => l.Withheld.GetValueOrDefault(r))}");
        var errors = lives.SelectMany(l => l.Errors).Select(Math.Abs).Order().ToArray();
        var week = lives.Max(l => Weeks(l.Unasked).Select(w => w.Length).DefaultIfEmpty(0).Max());
        var asked = lives.Max(l => Weeks(l.Messages).Select(w => w.Length).DefaultIfEmpty(0).Max());
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {kind} | {lives.Length} | {told + never} | {told} | {again} | {never} | {messages.Count(m => !m.Keys.IsEmpty)} | {messages.Count(m => m.Asks)} | {messages.Count(m => m.Mention) + lives.Sum(l => l.Notes)} | {week} | {asked} | {string.Join(", ", reasons)} | {At(errors, 0.5)} | {At(errors, 0.9)} |");
    }

    private static string ToldLine(string kind, RiderLife[] lives)
    {
        var (digests, late, pressing, early) = (Digests(lives), Late(lives, false), Late(lives, true), Early(lives));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {kind} | {At(digests, 0.5)} | {digests[^1]} | {late.Length} | {Spread(late)} | {pressing.Length} | {Spread(pressing)} | {early.Length} | {Spread(early)} |");
    }

    private static string Words(WithheldFor why) => why switch
    {
        WithheldFor.NoConsent => "not agreed",
        WithheldFor.Refused => "refused",
        WithheldFor.Silence => "silence",
        WithheldFor.Stopped => "stopped",
        WithheldFor.Resting => "resting",
        WithheldFor.Later => "put off",
        WithheldFor.Gathering => "gathering",
        WithheldFor.SpokenToday => "spoken that day",
        WithheldFor.Quiet => "quiet by then",
        WithheldFor.AskingFirst => "asking first",
        _ => why.ToString(),
    };

    /// <summary>Median, 90th percentile and most.</summary>
    private static string Spread(int[] sorted) => $"{At(sorted, 0.5)} | {At(sorted, 0.9)} | {At(sorted, 1)}";

    private static string At(int[] sorted, double share) => sorted.Length == 0 ? "-" : sorted[(int)((sorted.Length - 1) * share)].ToString(CultureInfo.InvariantCulture);
}
