using System.Collections.Immutable;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Layers;

/// <summary>What came of laying a club's word over the base.</summary>
/// <param name="Knowledge">What the club goes on with; null exactly when a problem is an error.</param>
/// <param name="Problems">By file and line; those of the club's own word carry the club's file and line.</param>
/// <param name="Conflicts">Where the base says something else now than when the club changed it. The club's word is kept.</param>
/// <param name="SetAside">Parts of the layer that do not fit the base any more and are left out until a moderator has looked at them.</param>
/// <param name="AlsoGone">What went with the rules that the club retired.</param>
public sealed record LayeredLoad(
    KnowledgeBase? Knowledge,
    ImmutableArray<Problem> Problems,
    ImmutableArray<Conflict> Conflicts,
    ImmutableArray<SetAside> SetAside,
    ImmutableArray<AlsoGone> AlsoGone);

/// <summary>The base has changed where the club had changed it before. The club's word is kept, and moderators are told.</summary>
/// <param name="Path">The way to the value; null when the club wrote the whole rule anew.</param>
/// <param name="WasWhenMended">What the base said when the club changed it; of a whole rule, its fingerprint.</param>
/// <param name="BaseNow">What the base says now; null when it says nothing there.</param>
/// <param name="ClubSays">What counts in the club.</param>
public sealed record Conflict(RuleKey Key, RulePath? Path, string? WasWhenMended, string? BaseNow, string ClubSays)
{
    /// <summary>One sentence for moderators.</summary>
    public override string ToString() => Path is null
        ? WasWhenMended is null
            ? $"The project now has a {Whose} too. The club's own is used."
            : $"The project has changed the {Whose}, which the club wrote anew. The club's own is used."
        : $"The project has changed '{Path}' of the {Whose}: it said {Quoted(WasWhenMended)} when the club changed it, and says {Quoted(BaseNow)} now. The club's word is kept: {ClubSays}.";

    private string Whose => $"{RuleKinds.Word(Key.Kind)} '{Key.Id}'";

    private static string Quoted(string? text) => text is null ? "nothing" : $"'{text}'";
}

/// <summary>A part of a published layer that no longer fits the base. It stays in the layer and is not used.</summary>
public sealed record SetAside(LayerPart Part, string Why)
{
    /// <summary>One sentence for moderators.</summary>
    public override string ToString() => $"Set aside: {Part}, because {Why}";
}

/// <summary>Something of the base that made no sense any more when a rule was retired.</summary>
/// <param name="Retired">The rule that the club retired.</param>
/// <param name="What">The rule that went too, or that lost what pointed at the retired one.</param>
/// <param name="Path">What it lost; null when all of it went.</param>
public sealed record AlsoGone(RuleKey Retired, RuleKey What, RulePath? Path)
{
    /// <summary>One sentence for moderators.</summary>
    public override string ToString() => Path is { } path
        ? $"'{path}' of the {RuleKinds.Word(What.Kind)} '{What.Id}' went with the {RuleKinds.Word(Retired.Kind)} '{Retired.Id}'."
        : $"The {RuleKinds.Word(What.Kind)} '{What.Id}' went with the {RuleKinds.Word(Retired.Kind)} '{Retired.Id}'.";
}
