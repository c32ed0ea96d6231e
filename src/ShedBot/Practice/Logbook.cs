using System.Globalization;
using ShedBot.Cards;
using ShedBot.Coaching;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Logbook;

namespace ShedBot.Practice;

/// <summary>The logbook of a member's bike at the practice terminal.</summary>
/// <param name="copies">The folder in which copies and pictures of a bike are written; made when it is missing.</param>
internal sealed class Logbook(
    IShedStore store, IRiderStore riders, PracticeRules rules, IScreen screen, Panel panel, Speakers speakers, TimeProvider clock, string copies, TimelinePainter paint) : IDisposable
{
    private readonly BikeDesk desk = new(store, riders, rules.Coaches);

    /// <param name="loose">True while no question is open.</param>
    /// <returns>Null when the line is for the coach.</returns>
    public async Task<Result<BikeRequest>?> ReadAsync(MemberName member, string line, bool loose, CancellationToken ct) =>
        BikeWords.Read(line, rules.Knowledge, await speakers.OfAsync(member, ct), clock.GetUtcNow(), loose);

    /// <returns>Whether an entry was made that can fall due.</returns>
    public async Task<bool> TakeAsync(MemberName member, Result<BikeRequest> read, CancellationToken ct)
    {
        if (read.Refused is { } refused)
        {
            screen.Say(refused.Say);
            return false;
        }

        var bike = await desk.BikeAsync(member.Id, ct);
        // A line is a new event each time: named by the bike as it will be, and by the member, who changes with the bike in use.
        var rider = (await riders.FindRiderAsync(member.Id, ct))?.Version ?? 0;
        var line = string.Create(CultureInfo.InvariantCulture, $"line.{bike.Id}.{bike.Version + 1}.{rider}");
        var answer = await desk.HandleAsync(await speakers.OfAsync(member, ct), line, read.Must, clock.GetUtcNow(), ct);
        if (answer.Card.Options.IsEmpty) panel.ShowAside(answer.Card);
        else panel.Show(answer.Card);
        if (!answer.Files.IsDefaultOrEmpty) screen.Say($"Written to {await WriteAsync(member, answer.Files, ct)}.");
        if (answer.Picture is { } picture) await PaintAsync(member, picture, ct);
        return read.Must is BikeEntry and not (UndoEntry or TellEntry) && answer.Refused is null;
    }

    public Task<BikeProfile> BikeAsync(MemberName member, CancellationToken ct) => desk.BikeAsync(member.Id, ct);

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
}
