using System.Collections.Immutable;
using ShedBot.Cards;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Learning.Reports;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Coaching.Teaching.Reporting;
using ShedBot.Coaching.Teaching.Writing;

namespace ShedBot.Practice;

/// <summary>The practice club's rules at the terminal: whoever types is its moderator. While a sheet is open a line is an answer to it.</summary>
/// <param name="files">The folder into which the rules are written when no file is named, and pictures of reports.</param>
internal sealed class TeachingTalk(TeachDesk desk, IShedStore store, IScreen screen, Panel panel, TimeProvider clock, string files, CalibrationPainter paint) : IDisposable
{
    private const int MostUnsaid = 100;

    /// <summary>The proposal that was looked at last: "rules publish" means it, as it was seen.</summary>
    private (string Id, int Version)? atHand;

    /// <summary>The sheet that is being written, with the question that is open.</summary>
    private (string Id, Question Question)? open;

    /// <summary>The lines of a list so far; kept with the sheet as they come.</summary>
    private ImmutableArray<string> lines = [];

    /// <summary>An option that waits for words.</summary>
    private TeachPress? wants;

    public bool IsWriting => open is not null || wants is not null;

    /// <summary>Another member, or something else to do: what was answered is kept.</summary>
    public void Leave() => (open, wants, lines) = (null, null, []);

    public void Dispose() => desk.Dispose();

    /// <summary>What became of the member's tips and proposals.</summary>
    public async Task LookAsync(MemberName member, CancellationToken ct)
    {
        while (await store.UnsaidAsync(TeachingPlace.Of(member.Id), MostUnsaid, ct) is { IsEmpty: false } waiting)
        {
            screen.Say("ShedBot writes to you:");
            foreach (var message in waiting) panel.ShowAside(message.Card);
            await screen.FlushAsync(ct);
            foreach (var message in waiting) await store.MarkSaidAsync(message.Id, ct);
        }
    }

    /// <returns>False when the line is for somebody else.</returns>
    public async Task<bool> TakeAsync(MemberName member, string line, CancellationToken ct)
    {
        var text = line.Trim();
        if (wants is { } asked) return await ReasonAsync(member, asked, text, ct);
        if (panel.Keys.Find(text.TrimEnd('.', ')')) is { } option)
        {
            if (TeachPress.Read(option.Id) is not { } press) return false;
            await PressAsync(member, press, ct);
            return true;
        }

        if (open is null && Said(text) is { } said)
        {
            await PressAsync(member, said, ct);
            return true;
        }

        if (TeachWords.Read(text) is { } read)
        {
            if (read.Refused is { } refused) screen.Say(refused.Say);
            else await DoAsync(member, read.Must, ct);
            return true;
        }

        if (open is not { } at) return false;
        await AnswerAsync(member, at.Id, at.Question, text, ct);
        return true;
    }

    /// <summary>An option of the rules by its own words: "go on" beside its letter. With a question open, words are its answer.</summary>
    private TeachPress? Said(string text) => panel.Keys.Answers.Concat(panel.Keys.Helps)
        .Where(k => string.Equals(k.Option.Label, text.TrimEnd('.', '!'), StringComparison.OrdinalIgnoreCase))
        .Select(k => TeachPress.Read(k.Option.Id))
        .FirstOrDefault(p => p is not null);

    private async Task AnswerAsync(MemberName member, string sheet, Question question, string text, CancellationToken ct)
    {
        switch (text.TrimEnd('.', '!').ToLowerInvariant())
        {
            case "stop" or "enough" or "later" or "leave":
                Leave();
                panel.Clear();
                screen.Say("Kept as far as it is. To go on: rules waiting.");
                return;
            case "back" or "one back" when panel.Keys.Helps.Select(k => TeachPress.Read(k.Option.Id)).FirstOrDefault(p => p?.Verb == TeachVerb.GoOn) is { } back:
                await PressAsync(member, back, ct);
                return;
            case "all" or "all so far":
                await AskAsync(member, new ShowSheet(sheet), ct);
                return;
            case "skip" or "" or "done" when !lines.IsEmpty:
                await AskAsync(member, new GoOn(sheet), ct);
                return;
            case "skip":
                await AskAsync(member, new AnswerSheet(sheet, question.Id), ct);
                return;
            case "done" when question.Kind == QuestionKind.Lines && !question.Required:
                await AskAsync(member, new AnswerSheet(sheet, question.Id), ct);
                return;
        }

        if (question.Kind != QuestionKind.Lines)
        {
            await AskAsync(member, new AnswerSheet(sheet, question.Id, text), ct);
            return;
        }

        var all = lines.Add(text);
        var answer = await desk.HandleAsync(TeacherOf(member), new AnswerSheet(sheet, question.Id, all), clock.GetUtcNow(), ct);
        if (answer.Refused is { } refused)
        {
            screen.Say(refused.Say);
            return;
        }

        lines = all;
        screen.Say(lines.Length == 1 ? "Kept. The next line, or done." : $"{lines.Length} lines kept. The next one, or done.");
    }

    private async Task<bool> ReasonAsync(MemberName member, TeachPress asked, string text, CancellationToken ct)
    {
        if (text.TrimEnd('.').ToLowerInvariant() is "" or "back" or "stop" or "leave" or "no")
        {
            wants = null;
            screen.Say("Left as it is.");
        }
        else if (asked.With(text) is { } request)
        {
            wants = null;
            await AskAsync(member, request, ct);
        }

        return true;
    }

    private async Task PressAsync(MemberName member, TeachPress press, CancellationToken ct)
    {
        if (press.WantsWords)
        {
            wants = press;
            screen.Say($"{press.AsksFor} Or: back.");
        }
        else if (press.Request is { } request)
        {
            await AskAsync(member, request, ct);
        }
    }

    private Task DoAsync(MemberName member, TeachLine line, CancellationToken ct)
    {
        switch (line)
        {
            case AskLine ask:
                return AskAsync(member, ask.Request, ct);
            case FileLine file:
                return file.Out ? AskAsync(member, new DownloadRules(), ct, file.Path) : FileInAsync(member, file.Path, ct);
            case ProposalLine of:
                return OnProposalAsync(member, of, ct);
            default:
                panel.ShowAside(TeachingHelp.Card);
                return Task.CompletedTask;
        }
    }

    private Task OnProposalAsync(MemberName member, ProposalLine line, CancellationToken ct)
    {
        if ((line.Proposal ?? atHand?.Id) is not { } id)
        {
            screen.Say("Which one? Look at it first: rules waiting.");
            return Task.CompletedTask;
        }

        var version = atHand is { } seen && seen.Id == id ? seen.Version : 0;
        var press = new TeachPress(line.Verb, id, line.Verb == TeachVerb.Publish ? TeachPress.Text(version) : "");
        return press.WantsWords && line.Words.Length > 0 ? AskAsync(member, press.With(line.Words)!, ct) : PressAsync(member, press, ct);
    }

    private async Task FileInAsync(MemberName member, string path, CancellationToken ct)
    {
        try
        {
            await using var stream = File.OpenRead(path);
            // One byte above what is taken, so that a file that is too long is told so.
            var bytes = new byte[Math.Min(stream.Length, UploadRules.MostBytes + 1)];
            await stream.ReadExactlyAsync(bytes, ct);
            await AskAsync(member, new UploadRules(Path.GetFileName(path), [.. bytes]), ct);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            screen.Say($"I cannot read that file: {e.Message}");
        }
    }

    private async Task AskAsync(MemberName member, TeachRequest request, CancellationToken ct, string? to = null)
    {
        if (request is TryOut or ShowReport or CountRequest)
        {
            screen.Say(request is TryOut ? "Trying it beside the rules as they are. That can take a minute or two ..." : "Counting the closed cases. With many of them that takes a moment ...");
            await screen.FlushAsync(ct);
        }

        var answer = await desk.HandleAsync(TeacherOf(member), request, clock.GetUtcNow(), ct);
        lines = [];
        if (answer.Proposal is { } proposal) atHand = (proposal.Id, proposal.Version);
        open = answer is { Question: { } question, Proposal: { } about } ? (about.Id, question) : null;
        panel.Show(answer.Card);
        if (open is { Question.Kind: QuestionKind.Lines }) screen.Say("One line after the other; done when that was all.");
        if (!answer.Files.IsDefaultOrEmpty) await WriteAsync(answer.Files, to, ct);
        if (answer.Picture is { } picture) await PaintAsync(picture, ct);
    }

    /// <summary>Has the club's closed cases looked over where that is due, and says what is new.</summary>
    public async Task LookOverAsync(CancellationToken ct)
    {
        var news = await desk.RoundAsync(ClubId.Practice, clock.GetUtcNow(), ct, async () =>
        {
            screen.Say(LearningNews.Trying);
            await screen.FlushAsync(ct);
        });
        if (LearningNews.Of(news) is { } says) screen.Say(says);
    }

    private async Task PaintAsync(CalibrationPicture picture, CancellationToken ct)
    {
        if (paint(picture.Report, picture.Look) is not { } png) screen.Say("It cannot be painted on this machine; the words above say the same.");
        else await WriteAsync([new CopyFile(picture.Look == PictureLook.Light ? "chances-light.png" : "chances-dark.png", "image/png", png)], null, ct);
    }

    private async Task WriteAsync(ImmutableArray<CopyFile> written, string? to, CancellationToken ct)
    {
        try
        {
            foreach (var file in written)
            {
                var path = to ?? Path.Combine(files, file.Name);
                await File.WriteAllBytesAsync(path, [.. file.Bytes], ct);
                screen.Say($"Written to {path}.");
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            screen.Say($"I cannot write that file: {e.Message}");
        }
    }

    /// <summary>At the practice terminal there is nobody to ask for leave.</summary>
    private static Teacher TeacherOf(MemberName member) => new(ClubId.Practice, member.Id, member.Shown, TeachingRights.All);
}
