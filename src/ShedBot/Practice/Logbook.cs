using System.Globalization;
using ShedBot.Cards;
using ShedBot.Coaching;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Logbook;
using ShedBot.Rules;

namespace ShedBot.Practice;

/// <summary>The logbook of a member's bike at the practice terminal.</summary>
/// <param name="copies">The folder in which copies and pictures of a bike are written; made when it is missing.</param>
internal sealed class Logbook(IShedStore store, IRiderStore riders, RulesInUse rules, IScreen screen, TimeProvider clock, string copies, TimelinePainter paint) : IDisposable
{
    private static readonly Ways Ways = new(
        Ride: "rode 12 km, or rode 40 min wet yesterday",
        Pace: "about 4 days a week, 10 km",
        Undo: "undo",
        Plan: "plan",
        Whole: "plan all",
        Fitted: "kit fitted 1 march",
        Done: "done {0}",
        How: "how {0}",
        Trouble: "say what the bike does, in your own words");

    private readonly BikeDesk desk = new(store, riders, () => rules.Knowledge);

    /// <param name="loose">True while no question is open.</param>
    /// <returns>Null when the line is for the coach.</returns>
    public Result<BikeRequest>? Read(MemberName member, string line, bool loose) =>
        BikeWords.Read(line, rules.Knowledge, SpeakerOf(member), clock.GetUtcNow(), loose);

    public async Task TakeAsync(MemberName member, Result<BikeRequest> read, CancellationToken ct)
    {
        if (read.Refused is { } refused)
        {
            screen.Say(refused.Say);
            return;
        }

        var bike = await desk.BikeAsync(member.Id, ct);
        // A line is a new event each time: named by the bike as it will be.
        var line = string.Create(CultureInfo.InvariantCulture, $"line.{bike.Version + 1}");
        var answer = await desk.HandleAsync(SpeakerOf(member), line, read.Must, clock.GetUtcNow(), ct);
        screen.Show(answer.Card, AnswerKeys.None);
        if (!answer.Files.IsDefaultOrEmpty) screen.Say($"Written to {await WriteAsync(member, answer.Files, ct)}.");
        if (answer.Picture is { } picture) await PaintAsync(member, picture, ct);
    }

    public async Task SkipAsync(MemberName member, string words, CancellationToken ct)
    {
        if (clock is not FrozenClock frozen)
        {
            screen.Say("This is the real clock, and it cannot be moved. Start practice with --now 2026-05-01T18:00 for one that can.");
            return;
        }

        var moved = LookingAhead.To(words, await desk.BikeAsync(member.Id, ct), rules.Knowledge, SpeakerOf(member), clock.GetUtcNow());
        if (moved.Value is { } moment) frozen.MoveTo(moment.At);
        screen.Say(moved.Refused?.Say ?? moved.Must.Says);
    }

    public void Dispose() => desk.Dispose();

    private async Task PaintAsync(MemberName member, TimelinePicture picture, CancellationToken ct)
    {
        if (paint(picture.Timeline, picture.Look) is not { } png)
        {
            screen.Say("It cannot be painted on this machine; the words above say the same.");
            return;
        }

        var name = picture.Look == PictureLook.Light ? "timeline-light.png" : "timeline-dark.png";
        screen.Say($"The same as a picture: {Path.Combine(await WriteAsync(member, [new CopyFile(name, "image/png", png)], ct), name)}");
    }

    /// <returns>The folder.</returns>
    private async Task<string> WriteAsync(MemberName member, IEnumerable<CopyFile> files, CancellationToken ct)
    {
        var folder = Path.Combine(copies, "copy-" + member.Id.Value);
        Directory.CreateDirectory(folder);
        foreach (var file in files) await File.WriteAllBytesAsync(Path.Combine(folder, file.Name), [.. file.Bytes], ct);
        return folder;
    }

    private Speaker SpeakerOf(MemberName member)
    {
        var zone = clock.LocalTimeZone;
        var name = zone.HasIanaId ? zone.Id : TimeZoneInfo.TryConvertWindowsIdToIanaId(zone.Id, out var iana) ? iana : "Etc/UTC";
        return new Speaker(member.Id, Units.Metric, name, Ways);
    }
}
