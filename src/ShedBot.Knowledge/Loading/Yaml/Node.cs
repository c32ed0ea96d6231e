using System.Collections.Immutable;

namespace ShedBot.Knowledge.Loading.Yaml;

/// <summary>A piece of a rule file that knows where it stands. Lines and columns count from 1.</summary>
internal abstract record Node(int Line, int Column)
{
    /// <summary>The file that it stands in; null when it is the same as that of the rule it belongs to.</summary>
    public string? File { get; init; }

    /// <summary>True for a key with nothing behind it.</summary>
    public bool IsEmpty => this is Scalar { Text.Length: 0, Quoted: false };
}

/// <summary>A single value, as text: 2, yes and 2026-11-25 are told apart by what is expected, not here.</summary>
internal sealed record Scalar(string Text, bool Quoted, int Line, int Column) : Node(Line, Column);

internal sealed record ListNode(ImmutableArray<Node> Items, int Line, int Column) : Node(Line, Column);

/// <param name="Flow">True when written in braces, where a comma ends a text.</param>
internal sealed record MapNode(ImmutableArray<Entry> Entries, bool Flow, int Line, int Column) : Node(Line, Column)
{
    /// <summary>What stands behind the key, or null when there is no such key.</summary>
    public Node? this[string key]
    {
        get
        {
            foreach (var entry in Entries)
            {
                if (entry.Key.Text == key) return entry.Value;
            }

            return null;
        }
    }
}

internal sealed record Entry(Scalar Key, Node Value);
