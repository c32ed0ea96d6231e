using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>The line above a teaching card that shows roles and places as the platform does, where the card has them by their numbers. Made of numbers alone.</summary>
internal sealed class TeachingLeads(ITeachingStore store)
{
    private const int MostRoles = 10;

    public async Task<string?> OfAsync(Teacher teacher, TeachRequest request, TeachAnswer answer, CancellationToken ct) => (request, answer.Refused) switch
    {
        (_, not null) => null,
        (ShowTip { Tip: var id }, _) when await store.FindTipAsync(teacher.Club, id, ct) is { } tip => TeachingLinks.Line(tip.Where, Names.Guild(teacher.Club)),
        (ShowTeachingSettings or ChooseTeaching, _) => Roles(await store.TeachingSettingsAsync(teacher.Club, ct)),
        _ => null,
    };

    private static string? Roles(TeachingSettings settings)
    {
        var lines = new[] { Line("May propose", settings.ProposeRoles), Line("May publish", settings.PublishRoles) }.OfType<string>().ToList();
        return lines.Count > 0 ? string.Join('\n', lines) : null;
    }

    private static string? Line(string what, IEnumerable<string> roles)
    {
        var shown = roles.Select(Snowflake.Read).OfType<Snowflake>().Take(MostRoles).Select(r => $"<@&{r}>").ToList();
        return shown.Count > 0 ? $"-# {what}: {string.Join(", ", shown)}" : null;
    }
}
