using ShedBot.Coaching.Cases;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Drawing;

/// <summary>The forms that a member writes in. One that is closed unsent tells us nothing, so nothing may wait for it.</summary>
internal static class Forms
{
    /// <summary>Stands where a case has not begun yet.</summary>
    public const string NoCase = "new";

    /// <summary>Whether the trouble is to be talked through between us, or where others can read along.</summary>
    public const string Private = "private", Open = "open";

    /// <summary>Characters that a member may write: as many as the coach reads of one message.</summary>
    private const int MostWords = 4000;

    private const int MostQuestion = 1000;

    private const char BeforeBike = '|';

    private const int MostBike = 60;

    private const string WordsField = "words";

    private const int MostDay = 60;

    /// <summary>The style of a field for one line, and for several.</summary>
    private const int Short = 1, Paragraph = 2;

    /// <summary>Answers the open question in one's own words.</summary>
    public static InteractionAnswer OwnWords(CaseId @case, string question) => Form(
        new CustomId(CustomId.Form, @case, ""),
        "In your own words",
        TextRuns.Cut(Markup.OneLine(question), MostQuestion),
        "Your answer",
        "Say it as you would to a friend. You may say more than was asked.");

    /// <summary>Tells of a trouble, before there is a case.</summary>
    /// <param name="private">Kept in the form's id as <see cref="Private"/> or <see cref="Open"/>.</param>
    /// <param name="bike">Kept there too, as far as it fits; null: none was named.</param>
    public static InteractionAnswer Trouble(bool @private, string? bike = null) => Form(
        new CustomId(CustomId.Form, new CaseId(NoCase), (@private ? Private : Open) + (bike is null ? "" : BeforeBike + TextRuns.Cut(bike, MostBike))),
        "What does the bike do?",
        "",
        "What it does, and when",
        "For example: lever in, it still pulls. Or: it revs up and does not push.");

    /// <summary>What stands in the id of the form for a trouble.</summary>
    public static (bool Private, string? Bike) TroubleOf(CustomId form) => form.Rest.Split(BeforeBike, 2) is [var where, var bike] ? (where == Private, bike) : (form.Rest == Private, null);

    /// <summary>Till when the member is not riding; may stay empty.</summary>
    public static InteractionAnswer TillWhen(CustomId id)
    {
        var input = new Component(ComponentTypes.TextInput, CustomId: WordsField, Style: Short, MaxLength: MostDay, Required: false);
        var field = new Component(ComponentTypes.Label, Label: "When do you ride again?", Description: "Such as sunday, in 2 weeks or 1 march. Leave it empty if you don't know.", Inner: input);
        return new InteractionAnswer(AnswerTypes.Modal, new InteractionAnswerData(CustomId: id.ToString(), Title: "Not riding", Components: [field]));
    }

    /// <summary>Some fields of one line each, filled in beforehand; every one may stay empty.</summary>
    public static InteractionAnswer Sheet(CustomId id, string title, IEnumerable<SheetInput> inputs) => new(
        AnswerTypes.Modal,
        new InteractionAnswerData(CustomId: id.ToString(), Title: title, Components:
        [
            .. inputs.Select(i => new Component(
                ComponentTypes.Label,
                Label: i.Label,
                Description: i.Hint,
                Inner: new Component(ComponentTypes.TextInput, CustomId: i.Id, Style: Short, MaxLength: i.MostLetters, Required: false, Value: i.Value))),
        ]));

    /// <returns>What stands in the fields of a form, by their ids.</returns>
    public static IReadOnlyDictionary<string, string> Written(Interaction submit) => Fields(submit.Data?.Components ?? [])
        .Where(c => c is { CustomId: not null, Value: not null }).DistinctBy(c => c.CustomId).ToDictionary(c => c.CustomId!, c => c.Value!.Trim(), StringComparer.Ordinal);

    /// <returns>What the member wrote, or null when that is nothing.</returns>
    public static string? WordsOf(Interaction submit) => Fields(submit.Data?.Components ?? [])
        .Where(c => c.CustomId == WordsField && !string.IsNullOrWhiteSpace(c.Value))
        .Select(c => c.Value!.Trim())
        .FirstOrDefault();

    private static InteractionAnswer Form(CustomId id, string title, string question, string label, string hint)
    {
        var input = new Component(ComponentTypes.TextInput, CustomId: WordsField, Style: Paragraph, MinLength: 1, MaxLength: MostWords, Required: true);
        var field = new Component(ComponentTypes.Label, Label: label, Description: hint, Inner: input);
        return new InteractionAnswer(AnswerTypes.Modal, new InteractionAnswerData(
            CustomId: id.ToString(),
            Title: title,
            Components: question.Length == 0 ? [field] : [new Component(ComponentTypes.Text, Content: Markup.SafeLine(question)), field]));
    }

    /// <summary>All parts of a form, whatever holds them.</summary>
    internal static IEnumerable<Component> Fields(IEnumerable<Component> components) =>
        components.SelectMany(c => Fields(c.Components ?? []).Concat(c.Inner is { } inner ? [inner] : []).Prepend(c));
}

/// <summary>One field of a form.</summary>
/// <param name="Value">What stands there beforehand, or null.</param>
internal sealed record SheetInput(string Id, string Label, string Hint, string? Value, int MostLetters);
