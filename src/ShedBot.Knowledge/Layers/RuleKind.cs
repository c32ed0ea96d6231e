using System.Collections.Immutable;
using ShedBot.Knowledge.Shapes;

namespace ShedBot.Knowledge.Layers;

/// <summary>The kinds of rule that a club can write, in the order in which they stand in a file.</summary>
public enum RuleKind
{
    Complaint,
    Finding,
    Fact,
    Fault,
    Check,
    Cover,
    Repair,
    Service,
    HowTo,
    Emergency,
    Word,
}

/// <summary>What the kinds are called, and where they stand in a file.</summary>
public static class RuleKinds
{
    private static readonly ImmutableArray<(string Word, string Section, ItemShape Shape)> Table =
    [
        ("complaint", "complaints", CauseShapes.Complaint),
        ("finding", "findings", CauseShapes.Finding),
        ("fact", "facts", CauseShapes.Fact),
        ("fault", "faults", CauseShapes.Fault),
        ("check", "checks", WorkShapes.Check),
        ("cover", "covers", WorkShapes.Cover),
        ("repair", "repairs", WorkShapes.Repair),
        ("service task", "service", ServiceShapes.Task),
        ("how to", "how to", AdviceShapes.HowTo),
        ("emergency", "emergencies", AdviceShapes.Emergency),
        ("word", "words", AdviceShapes.Word),
    ];

    public static ImmutableArray<RuleKind> All { get; } = [.. Enum.GetValues<RuleKind>()];

    /// <summary>fault, how to, service task: as in a file behind <c>of:</c> and in sentences.</summary>
    public static string Word(RuleKind kind) => Table[(int)kind].Word;

    /// <returns>False when it is no word for a kind.</returns>
    public static bool TryRead(string word, out RuleKind kind)
    {
        foreach (var known in All)
        {
            kind = known;
            if (Table[(int)known].Word == word) return true;
        }

        kind = default;
        return false;
    }

    /// <summary>The key of a file under which rules of this kind are listed: faults, how to, service.</summary>
    public static string Section(RuleKind kind) => Table[(int)kind].Section;

    /// <summary>The key by which a rule of this kind is named: its id; of a word, the concept.</summary>
    internal static string NameKey(RuleKind kind) => kind == RuleKind.Word ? "concept" : "id";

    internal static ItemShape Shape(RuleKind kind) => Table[(int)kind].Shape;
}
