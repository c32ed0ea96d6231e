using System.Text.Json;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Learning.Reports;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Reporting;
using ShedBot.Coaching.Trials;
using ShedBot.Coaching.Trials.Telling;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>Shows what came of an act on the rules, to whoever acted alone: in place of the card that was pressed on, else as a message of its own. Nobody is mentioned.</summary>
internal sealed class TeachingShow(Parts parts)
{
    private const int MostTogether = 5;

    /// <param name="lead">A line above, already in the platform's markup; or null.</param>
    public async Task<bool> ShowAsync(TeachAnswer answer, string? lead, Acknowledgement live, CancellationToken ct) => await PutAsync(Draw(answer, lead), live, ct);

    /// <returns>False when it could not be shown any more.</returns>
    public static async Task<bool> PutAsync(Drawn drawn, Acknowledgement live, CancellationToken ct)
    {
        var hidden = ((live.Interaction.Message?.Flags ?? 0) & MessageFlags.Ephemeral) != 0;
        return (hidden && await live.ReplaceAsync(drawn, ct)) || await live.TellAsync(drawn, ct);
    }

    public Drawn Draw(TeachAnswer answer, string? lead)
    {
        var (card, form, label) = (answer.Card, (CustomId?)null, "");
        if (answer is { Sheet: { } sheet, Question: { } question, Proposal: { } proposal })
        {
            var page = TeachingForms.Page(sheet, question);
            if (TeachingForms.Opens(sheet, question, card.Options.Count(o => IsAnswerTo(o, question.Id))) is { } opens) (form, label) = (TeachingIds.OpenFor(proposal.Id, question.Id), opens);
            if (page.Length > 1 && answer.Refused is null && !sheet.Context.Has(question.Id))
            {
                // Asked together in the form: one of them by itself would only be in the way. One that was answered is to be changed, by itself.
                card = card with
                {
                    Blocks = [.. card.Blocks, new ListBlock("On the same form", [.. page.Where(q => q.Id != question.Id).Take(MostTogether).Select(q => q.Put(sheet.Context))])],
                    Options = [.. card.Options.Where(o => !IsAnswerTo(o, question.Id))],
                };
            }
        }

        var drawn = CardDrawing.Single([card], TeachingControls.Of(card, form, label), null, lead, AllowedMentions.None);
        if (PictureOf(answer) is { } picture) drawn = drawn.WithPicture("trial.png", picture);
        if (answer.Picture is { } report && ReportPicture(report) is { } plot) drawn = drawn.WithPicture("chances.png", plot);
        return answer.Files.IsDefaultOrEmpty ? drawn : drawn.WithFiles(answer.Files.Select(f => new Upload(f.Name, f.MediaType, f.Bytes.AsMemory())));
    }

    /// <summary>The card says the same in words where it cannot be painted.</summary>
    private Picture? ReportPicture(CalibrationPicture wanted) => parts.PaintCalibration(wanted.Report, wanted.Look) is { } png
        ? new Picture(png.AsMemory(), TextRuns.Cut(ReportCards.Describe(wanted.Report), Limits.AltText))
        : null;

    private static bool IsAnswerTo(CardOption option, string question) => TeachPress.Read(option.Id) is { Verb: TeachVerb.Say } say && say.B == question;

    /// <summary>The trial of the proposal as it is; one that is over, because the rules or the proposal have changed since, is not shown.</summary>
    private Picture? PictureOf(TeachAnswer answer)
    {
        if (answer is not { Refused: null, Sheet: null, Proposal: { IsOpen: true, Trial.Report: { Length: > 0 } text } }
            || answer.Card.Options.Any(o => TeachPress.Read(o.Id) is { Verb: TeachVerb.Try })) return null;
        try
        {
            var report = TrialReportJson.Read(text);
            return parts.PaintTrial(report, PictureLook.Dark) is { } png ? new Picture(png.AsMemory(), TextRuns.Cut(TrialCards.Describe(report), Limits.AltText)) : null;
        }
        catch (JsonException)
        {
            // Kept by another version: its words are shown all the same.
            return null;
        }
    }
}
