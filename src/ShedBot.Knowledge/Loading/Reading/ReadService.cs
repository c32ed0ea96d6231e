using System.Collections.Immutable;
using ShedBot.Knowledge.Rules;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Loading.Reading;

/// <summary>Service tasks out of their fields.</summary>
internal static class ReadService
{
    private static readonly string[] Weathers = ["dusty", "wet"];

    public static ServiceRule Task(Fields f) => new(
        f.Id,
        f.Text("called"),
        f.Text("does"),
        f.Text("why"),
        f.Number("minutes"),
        f.Word("hazard", "none"),
        f.Texts("tools"),
        f.Items("cautions", ReadWork.Caution),
        f.Items("steps", s => new RepairStep(s.Text("do"), s.TextOrNull("note"))),
        Intervals(f, "every"),
        f.Items("after", a => new ServiceAfter(a.Texts("events"), Intervals(a, "at"))),
        f.Items("only if", c => new ServiceCondition(c.Text("fact"), c.Texts("is"))),
        [.. Weathers.Where(w => f.TextOrNull($"{w} counts") is not null).Select(w => new WeatherFactor(w, f.Number($"{w} counts")))],
        f.Texts("done by"),
        f.Texts("reveals"),
        f.YesNo("before each ride"),
        f.Origin());

    private static ImmutableArray<Interval> Intervals(Fields f, string key) =>
        [.. f.Texts(key).Select(t => IntervalWords.TryRead(t, out var interval) ? interval : (Interval?)null).OfType<Interval>()];
}
