using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Teaching;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Drawing;

/// <summary>
/// What the controls of teaching cards say when they are used. An option of a card stands on its button as it is, and says by itself what it wants; the forms
/// around it have ids of the usual kind. Anybody can make one up: who may is asked anew with each.
/// </summary>
internal static class TeachingIds
{
    /// <summary>Opens the form of a page of a sheet; the case is the proposal, the rest the question.</summary>
    public const string Open = "rulesopen";

    /// <summary>That form, sent in.</summary>
    public const string Told = "rulestold";

    /// <summary>The form for a reason, sent in; the rest is the press that wanted it.</summary>
    public const string Why = "ruleswhy";

    /// <summary>A list of options; the rest is its number on the card.</summary>
    public const string Pick = "rulespick";

    public static bool Is(string? id) => Press(id) is not null || CustomId.Read(id) is { Verb: Open or Told or Why or Pick };

    /// <summary>Whether the answer to this press is a form: that one cannot be announced.</summary>
    public static bool OpensForm(InteractionData? data) => Press(data?.CustomId) is { WantsWords: true }
        || CustomId.Read(data?.CustomId) is { } id && (id.Verb == Open || (id.Verb == Pick && Press(Picked(data)) is { WantsWords: true }));

    /// <returns>What an option asks for, or null when the text is none of a teaching card.</returns>
    public static TeachPress? Press(string? id) => id is { Length: > 0 and <= Limits.CustomId } ? TeachPress.Read(id) : null;

    /// <returns>What was picked from a list, or null.</returns>
    public static string? Picked(InteractionData? data) => data?.Values is [var picked, ..] ? picked : null;

    public static CustomId OpenFor(string proposal, string question) => new(Open, new CaseId(proposal), question);

    public static CustomId ToldFor(string proposal, string question) => new(Told, new CaseId(proposal), question);

    public static CustomId WhyFor(TeachPress press) => new(Why, new CaseId(Forms.NoCase), press.ToString());

    public static CustomId PickFor(int number) => new(Pick, new CaseId(Forms.NoCase), number.ToString(System.Globalization.CultureInfo.InvariantCulture));
}
