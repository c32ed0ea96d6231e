using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Loading.Reading;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Linting;

/// <summary>Runs every rule of the linter over the rules as written.</summary>
internal static class LintRun
{
    private static readonly LintRule[] NameBreakers =
        [ShapeRules.UnknownKey, ShapeRules.MissingKey, ShapeRules.WrongKind, ShapeRules.BadId, ReferenceRules.Dangling];

    /// <param name="allRead">False when a file could not be read at all: what it defines would wrongly be told missing.</param>
    /// <param name="clubFile">The file of a club that lies over the rules; null when none does.</param>
    public static void All(Draft rules, CompileOptions options, string firstFile, bool allRead, ProblemList problems, string? clubFile = null)
    {
        var lint = new LintContext(rules, options, firstFile, problems, clubFile);
        UniqueIds.Look(lint);
        OriginLook.Look(lint);
        WorkLook.Look(lint);
        PhraseLook.Look(lint);
        ServiceLook.Look(lint);
        SentenceLook.Look(lint);
        if (!allRead) return;
        References.Look(lint);
        ServiceReferences.Look(lint);
        TriageLook.Look(lint);
        EitherLook.Look(lint);
        StrengthLook.Look(lint);

        // A misspelt key or name would drag a tail of 'nothing tells this' behind it; those are told once keys and names fit.
        if (NameBreakers.Any(problems.Has)) return;
        RepairLook.Look(lint);
        ReachLook.Look(lint);
        TwinsLook.Look(lint);
    }
}
