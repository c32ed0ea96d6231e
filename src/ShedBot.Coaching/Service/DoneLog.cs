using System.Collections.Immutable;
using NodaTime;
using ShedBot.Coaching.Riding;

namespace ShedBot.Coaching.Service;

/// <summary>Entries of what was serviced, in the order they were made. Bounded by <see cref="Keeps"/>; the newest of each task is always kept.</summary>
public static class DoneLog
{
    public const int Keeps = 300;

    /// <param name="today">In the rider's zone.</param>
    /// <param name="fitted">When the kit was fitted, or null when that is not known.</param>
    /// <returns>The list after, or a refusal: <c>future</c>, <c>before-fitted</c>, <c>already</c>.</returns>
    public static Result<DoneEntries> Add(ImmutableArray<ServiceDone> done, ServiceDone entry, LocalDate today, LocalDate? fitted)
    {
        if (entry.Day > today) return new Refusal("future", $"{Dates.Say(entry.Day)} is still to come. Log it once it is done.");
        if (entry.Day < fitted)
        {
            return new Refusal("before-fitted", $"The kit was fitted on {Dates.Say(fitted.Value)}; {Dates.Say(entry.Day)} was before it.");
        }

        if (done.Any(d => d.Task == entry.Task && d.Day == entry.Day))
        {
            return new Refusal("already", $"That is noted for {Dates.Say(entry.Day)} already.");
        }

        var all = done.Add(entry);
        return new DoneEntries(all.Length > Keeps && Needless(all) is { } old ? all.RemoveAt(old) : all);
    }

    /// <summary>Takes the entry that was made last back.</summary>
    /// <returns>The list before it, or the refusal <c>nothing</c>.</returns>
    public static Result<DoneEntries> Undo(ImmutableArray<ServiceDone> done) =>
        done.IsEmpty ? new Refusal("nothing", "There is no entry to take back.") : new DoneEntries(done.RemoveAt(done.Length - 1));

    /// <summary>The oldest day whose task was done again later; never the entry that was just made.</summary>
    private static int? Needless(ImmutableArray<ServiceDone> all)
    {
        var newest = all.GroupBy(d => d.Task, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Max(d => d.Day), StringComparer.Ordinal);
        return all.Take(all.Length - 1).Select((d, i) => (d, i)).Where(x => x.d.Day < newest[x.d.Task]).OrderBy(x => x.d.Day).Select(x => (int?)x.i).FirstOrDefault();
    }
}

public sealed record DoneEntries(ImmutableArray<ServiceDone> All);
