using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Coaching.Teaching.Reporting;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Discord.Clubs;

/// <summary>What a command about rules asks for.</summary>
internal sealed class TeachingCommanding(Parts parts)
{
    /// <returns>The request; or what to say instead; neither for a command that was never ours.</returns>
    public async Task<(TeachRequest? Request, Drawn? Instead)> ReadAsync(Interaction used, CommandOptionValue sub, Teacher teacher, CancellationToken ct) => sub.Name switch
    {
        TeachingCommands.Show => (new ShowRules(), null),
        TeachingCommands.Write => (Text(sub, TeachingCommands.Sheet) is { } sheet ? new BeginSheet(SheetOf(sheet)) : new ChooseSheet(), null),
        TeachingCommands.GoOn => (await GoOnAsync(sub, teacher, ct), null),
        TeachingCommands.Waiting => (new ShowWaiting(), null),
        TeachingCommands.FileIn => await FileAsync(used, sub, teacher, ct),
        TeachingCommands.FileOut => (new DownloadRules(), null),
        TeachingCommands.Editions => (new ShowEditions(), null),
        TeachingCommands.TakeBack => (int.TryParse(Text(sub, TeachingCommands.Edition), NumberStyles.None, CultureInfo.InvariantCulture, out var edition) ? new AskTakeBack(edition) : new ShowEditions(), null),
        TeachingCommands.Log => (new ShowLog(Whole: Flag(sub, TeachingCommands.Whole) == true), null),
        TeachingCommands.Tips => (new ShowTips(), null),
        TeachingCommands.Reports => (Text(sub, TeachingCommands.Report) is { } report
            ? new TeachPress(TeachVerb.Report, report, Text(sub, TeachingCommands.Look) ?? "").Request ?? new ShowReports()
            : new ShowReports(), null),
        TeachingCommands.NotUnderstood => (new ShowUnheard(), null),
        TeachingCommands.Learn => (new ShowLearning(), null),
        TeachingCommands.Settings => await SettingsAsync(used, sub, teacher, ct),
        _ => (null, null),
    };

    /// <summary>What somebody began and has not handed in, last changed first.</summary>
    public static async Task<ImmutableArray<Proposal>> DraftsAsync(Parts parts, Teacher teacher, CancellationToken ct) =>
        [.. (await parts.Teaching.ProposalsAsync(teacher.Club, ProposalState.Draft, 100, ct)).Where(p => p.By == teacher.Who)];

    public static string? Text(CommandOptionValue sub, string name) =>
        sub.Options?.FirstOrDefault(o => o.Name == name)?.Text is { } text && !string.IsNullOrWhiteSpace(text) ? text.Trim() : null;

    /// <summary>By its name, or by its title where somebody typed it out.</summary>
    private static string SheetOf(string typed) => Coaching.Teaching.Writing.Sheets.All
        .FirstOrDefault(s => string.Equals(s.Title, typed, StringComparison.OrdinalIgnoreCase))?.Name ?? typed;

    private async Task<TeachRequest> GoOnAsync(CommandOptionValue sub, Teacher teacher, CancellationToken ct)
    {
        var (named, answer) = (Text(sub, TeachingCommands.Proposal), Text(sub, TeachingCommands.Answer));
        var proposal = named ?? (await DraftsAsync(parts, teacher, ct)).FirstOrDefault()?.Id;
        if (proposal is null || (named is null && answer is null)) return new ShowWaiting();
        if (answer is null) return new GoOn(proposal);
        var open = await parts.Rules.HandleAsync(teacher, new GoOn(proposal), parts.Clock.GetUtcNow(), ct);
        return open is { Refused: null, Question: { } question } ? new AnswerSheet(proposal, question.Id, answer) : new GoOn(proposal);
    }

    private async Task<(TeachRequest?, Drawn?)> FileAsync(Interaction used, CommandOptionValue sub, Teacher teacher, CancellationToken ct)
    {
        // Nothing is fetched for somebody who may not hand it in; the desk says so.
        if (!teacher.May(TeachingRights.Propose)) return (new UploadRules("", []), null);
        if (Text(sub, TeachingCommands.File) is not { } id || used.Data?.Resolved?.Attachments?.GetValueOrDefault(id) is not { } file) return (null, null);
        var (bytes, trouble) = await parts.Files.GetAsync(file.Url, file.Size, Layer.MaxBytes, ct);
        return trouble == FetchTrouble.None ? (new UploadRules(file.Filename ?? "", bytes), null) : (null, Texts.Draw(TeachingTexts.NotFetched(trouble)));
    }

    private async Task<(TeachRequest?, Drawn?)> SettingsAsync(Interaction used, CommandOptionValue sub, Teacher teacher, CancellationToken ct)
    {
        if (sub.Options is not { Count: > 0 }) return (new ShowTeachingSettings(), null);
        var (propose, publish, neither) = (Role(sub, TeachingCommands.MayPropose), Role(sub, TeachingCommands.MayPublish), Role(sub, TeachingCommands.MayNoMore));
        // The role of everybody has the club's own number.
        if (new[] { propose, publish }.Contains(used.GuildId.ToString())) return (null, Texts.Draw(TeachingTexts.NotEverybody));
        var now = await parts.Teaching.TeachingSettingsAsync(teacher.Club, ct);
        return (
            new ChooseTeaching(
                propose is null && neither is null ? null : Changed(now.ProposeRoles, propose, neither),
                publish is null && neither is null ? null : Changed(now.PublishRoles, publish, neither),
                Flag(sub, TeachingCommands.TwoPeople),
                Text(sub, TeachingCommands.Learning) is { } mode && Enum.GetNames<LearningMode>().Contains(mode, StringComparer.Ordinal) ? Enum.Parse<LearningMode>(mode) : null,
                Number(sub, TeachingCommands.MostFactor),
                Number(sub, TeachingCommands.MemberShare) / 100),
            null);
    }

    private static ImmutableSortedSet<string> Changed(ImmutableSortedSet<string> roles, string? more, string? less)
    {
        var left = less is null ? roles : roles.Remove(less);
        return more is null ? left : left.Add(more);
    }

    private static string? Role(CommandOptionValue sub, string name) => Snowflake.Read(Text(sub, name))?.ToString();

    private static double? Number(CommandOptionValue sub, string name) =>
        double.TryParse(Text(sub, name), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static bool? Flag(CommandOptionValue sub, string name) => sub.Options?.FirstOrDefault(o => o.Name == name)?.Value?.ValueKind switch
    {
        System.Text.Json.JsonValueKind.True => true,
        System.Text.Json.JsonValueKind.False => false,
        _ => null,
    };
}
