using System.Collections.Immutable;

namespace ShedBot.Knowledge.Shapes;

/// <summary>What may stand behind a key. The same tables check a file and write the schema for editors, so the two cannot drift apart.</summary>
/// <param name="Doc">For whoever writes a rule: what to put here.</param>
internal abstract record Shape(string Doc);

/// <summary>Words to read; never empty.</summary>
internal sealed record TextShape(string Doc) : Shape(Doc)
{
    /// <summary>In characters. The longest help text with a drawing that a chat message can carry, with room to spare.</summary>
    public const int MaxLength = 4000;
}

/// <summary>A name in lower case, digits and hyphens.</summary>
internal sealed record IdShape(string Doc) : Shape(Doc)
{
    public const string Pattern = "^[a-z0-9]+(-[a-z0-9]+)*$";
    public const int MaxLength = 60;
}

/// <summary>One of a fixed set of words.</summary>
internal sealed record WordShape(string Doc, ImmutableArray<string> Words) : Shape(Doc);

/// <param name="Max">The largest number that makes sense, inclusive.</param>
/// <param name="Whole">True when no decimals are taken.</param>
internal sealed record NumberShape(string Doc, double Min, double Max, bool Whole = false) : Shape(Doc);

/// <summary>An amount and what it is counted in; see <see cref="Wording.IntervalWords"/>.</summary>
internal sealed record IntervalShape(string Doc) : Shape(Doc);

/// <summary>A day, yyyy-mm-dd.</summary>
internal sealed record DateShape(string Doc) : Shape(Doc);

internal sealed record ListShape(string Doc, Shape Item, int AtLeast = 0) : Shape(Doc);

/// <summary>A map whose keys are ids of other things.</summary>
internal sealed record MapShape(string Doc, Shape Value, int AtLeast = 0) : Shape(Doc);

/// <summary>A map with known keys.</summary>
/// <param name="Kind">What such a thing is called in a report: check, fault, step.</param>
internal sealed record ItemShape(string Kind, string Doc, ImmutableArray<Key> Keys) : Shape(Doc)
{
    /// <summary>What to do instead of a key that is often tried here and is none.</summary>
    public ImmutableDictionary<string, string> Instead { get; init; } = ImmutableDictionary<string, string>.Empty;
}

internal sealed record Key(string Name, Shape Shape, bool Required);
