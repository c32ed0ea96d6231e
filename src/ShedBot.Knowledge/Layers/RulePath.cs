using System.Collections.Immutable;

namespace ShedBot.Knowledge.Layers;

/// <summary>The way to one value inside a rule: <c>ask</c>, <c>shows as / drags / yes</c>, <c>states / loose / riders say</c>.</summary>
/// <remarks>
/// Keys of the format and ids of states, values and findings. An item of 'moved by' and of 'only if' is named by its fact and value:
/// <c>moved by / machine-age new-build / times</c>. No part holds a slash, so the text is the path.
/// </remarks>
public readonly record struct RulePath(string Text)
{
    private const string Between = " / ";

    public static RulePath Of(params ReadOnlySpan<string> parts) => new(string.Join(Between, parts.ToArray()));

    public ImmutableArray<string> Parts => [.. (Text ?? "").Split('/', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];

    /// <summary>The same path with one blank on each side of every slash, as a file is written.</summary>
    internal RulePath Tidy() => Of([.. Parts]);

    public override string ToString() => Text ?? "";
}
