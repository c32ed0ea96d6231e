using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Bikes.Kinds;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Logbook;

/// <summary>A part of the bike sheet as a form of a few lines, filled in beforehand with what is known.</summary>
public static class SheetForms
{
    /// <summary>So many fields to a form; what is beyond can be told one by one.</summary>
    public const int MostFields = 5;

    public static ImmutableArray<SheetLine> Of(SheetPart part, BikeProfile? bike, KnowledgeBase knowledge) =>
        [.. Fields(part, knowledge).Select(f => new SheetLine(f.Id, Say.Capital(f.Called), Hint(f), Shown(f, bike)))];

    /// <summary>Reads a form that was filled in. What is unchanged or left empty stays as it is; what cannot be read is told, and the rest counts.</summary>
    /// <param name="written">By the id of the field.</param>
    public static SheetRead Read(
        SheetPart part, IReadOnlyDictionary<string, string> written, BikeProfile? bike, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset at)
    {
        var (facts, wrong) = (ImmutableArray.CreateBuilder<FactTold>(), ImmutableArray.CreateBuilder<string>());
        foreach (var field in Fields(part, knowledge))
        {
            if (!written.TryGetValue(field.Id, out var text) || string.IsNullOrWhiteSpace(text) || text.Trim() == Shown(field, bike)) continue;
            var read = field.Kind.Read(text, new Writer(speaker.Units, speaker.DayOf(at)));
            if (read.Refused is { } refused) wrong.Add($"{field.Called}: {refused.Say}");
            else if (bike?.Facts.GetValueOrDefault(field.Id)?.Value != read.Must) facts.Add(new FactTold(field.Id, read.Must));
        }

        return new SheetRead(facts.ToImmutable(), wrong.ToImmutable());
    }

    private static IEnumerable<SheetField> Fields(SheetPart part, KnowledgeBase knowledge) => BikeSheet.Of(knowledge).Where(f => f.Part == part).Take(MostFields);

    private static string Hint(SheetField field) =>
        field.Kind is ChoiceKind choice ? string.Join("; ", choice.Values.Select((v, i) => $"{i + 1} {v.Says}")) : field.Ask;

    /// <summary>In a form that reads back as it is.</summary>
    private static string? Shown(SheetField field, BikeProfile? bike) =>
        bike?.Facts.GetValueOrDefault(field.Id)?.Value is not { } value ? null : field.Kind is ChoiceKind ? field.Kind.Show(value, Units.Metric) : value;
}

/// <summary>One line of a form.</summary>
/// <param name="Value">What stands there beforehand, or null.</param>
public sealed record SheetLine(string Field, string Called, string Hint, string? Value);

/// <param name="Facts">What is new.</param>
/// <param name="Wrong">What could not be read, and what to write.</param>
public sealed record SheetRead(ImmutableArray<FactTold> Facts, ImmutableArray<string> Wrong);
