using System.Collections.Immutable;
using ShedBot.Knowledge.Linting;
using ShedBot.Knowledge.Problems;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;
using Event = YamlDotNet.Core.Events.ParsingEvent;

namespace ShedBot.Knowledge.Loading.Yaml;

/// <summary>Reads YAML events into nodes that keep their places, and refuses what a rule file has no use for.</summary>
/// <remarks>
/// Aliases, anchors and tags are told and left out, so a small file cannot blow up into a large tree; depth is bounded, so a crafted
/// file cannot exhaust the stack.
/// </remarks>
internal sealed class YamlTree
{
    /// <summary>How deep lists and maps may be nested; the format itself needs 6.</summary>
    public const int MaxDepth = 12;

    private readonly string file;
    private readonly ProblemList problems;
    private readonly Parser parser;

    private YamlTree(string file, string text, ProblemList problems)
    {
        this.file = file;
        this.problems = problems;
        parser = new Parser(new Scanner(new StringReader(text)));
    }

    /// <returns>The map that the file holds, or null when it was refused.</returns>
    public static MapNode? Read(string file, string text, ProblemList problems)
    {
        var tree = new YamlTree(file, text, problems);
        try
        {
            return tree.ReadDocument();
        }
        catch (TooDeepException e)
        {
            problems.Add(TextRules.TooDeep, file, e.Line, e.Column, $"lists and maps are nested more than {MaxDepth} deep here.", "No rule needs that; is a bracket open?");
        }
        catch (YamlException e)
        {
            problems.Add(TextRules.BrokenYaml, file, Place(e.Start.Line), Place(e.Start.Column), $"this is no YAML: {OneLine(e.Message)}",
                "Look at this line and the one above it: indentation, a missing quote, or a ': ' inside a text that is not in quotes.");
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or FormatException or OverflowException or IndexOutOfRangeException)
        {
            // The YAML reader trips over some crafted texts with exceptions of its own making; the place is where it had got to.
            var at = tree.parser.Current?.Start ?? Mark.Empty;
            problems.Add(TextRules.BrokenYaml, file, Place(at.Line), Place(at.Column), $"this is no YAML: {OneLine(e.Message)}");
        }

        return null;
    }

    private MapNode? ReadDocument()
    {
        Next();
        if (Next() is StreamEnd) return Refuse(1, 1, "the file is empty.");
        var root = ReadNode(Next(), 0);
        Next();
        var end = Next();
        if (end is not StreamEnd)
        {
            problems.Add(TextRules.BrokenYaml, file, Place(end.Start.Line), Place(end.Start.Column), "a second document starts here.", "Take out the '---' line.");
            return null;
        }

        if (root is MapNode map) return map;
        return root.IsEmpty ? Refuse(root.Line, root.Column, "the file is empty.") : Refuse(root.Line, root.Column, "the file is no list of 'key: value'.");
    }

    private MapNode? Refuse(int line, int column, string what)
    {
        problems.Add(TextRules.BrokenYaml, file, line, column, what, "Start it with 'about:', then lists such as 'complaints:' or 'faults:'.");
        return null;
    }

    private Node ReadNode(Event at, int depth)
    {
        var (line, column) = (Place(at.Start.Line), Place(at.Start.Column));
        if (depth > MaxDepth) throw new TooDeepException(line, column);
        if (at is NodeEvent named && (!named.Anchor.IsEmpty || !named.Tag.IsEmpty))
            problems.Add(TextRules.AnchorOrTag, file, line, column, "an anchor ('&') or a tag ('!') stands here.", "Write the text out, or put it in quotes if it starts with '&' or '!'.");
        switch (at)
        {
            case YamlDotNet.Core.Events.Scalar scalar:
                var hidden = HiddenMarks.Find(scalar.Value);
                if (hidden is not null) problems.Add(TextRules.NotText, file, line, column, $"{hidden}.", "Take it out: what is read must be what is seen.");
                return new Scalar(hidden is null ? scalar.Value : HiddenMarks.Shown(scalar.Value), scalar.Style is not ScalarStyle.Plain, line, column) { File = file };
            case AnchorAlias:
                problems.Add(TextRules.AnchorOrTag, file, line, column, "an alias ('*') stands here.", "Write the text out, or put it in quotes if it starts with '*'.");
                return new Scalar("", false, line, column) { File = file };
            case SequenceStart:
                var items = ImmutableArray.CreateBuilder<Node>();
                for (var item = Next(); item is not SequenceEnd; item = Next()) items.Add(ReadNode(item, depth + 1));
                return new ListNode(items.ToImmutable(), line, column) { File = file };
            case MappingStart map:
                return new MapNode(ReadEntries(depth), map.Style == MappingStyle.Flow, line, column) { File = file };
            default:
                throw new YamlException(at.Start, at.End, "a value was expected here");
        }
    }

    private ImmutableArray<Entry> ReadEntries(int depth)
    {
        var entries = ImmutableArray.CreateBuilder<Entry>();
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var next = Next(); next is not MappingEnd; next = Next())
        {
            var key = ReadNode(next, depth + 1);
            var value = ReadNode(Next(), depth + 1);
            if (key is not Scalar name)
                problems.Add(TextRules.BrokenYaml, file, key, "a key must be a word.", "Put a text that starts with a bracket in quotes.");
            else if (!seen.TryAdd(name.Text, name.Line))
                problems.Add(TextRules.DuplicateKey, file, key, $"the key '{name.Text}' stands twice; the first is on line {seen[name.Text]}.", "Join the two, or take one out.");
            else
                entries.Add(new Entry(name, value));
        }

        return entries.ToImmutable();
    }

    private Event Next() =>
        parser.MoveNext() && parser.Current is { } current ? current : throw new YamlException(Mark.Empty, Mark.Empty, "the file ends too early");

    private static int Place(long position) => (int)Math.Clamp(position, 1, int.MaxValue);

    /// <summary>The reader's messages start with its own idea of the place and may run over lines.</summary>
    private static string OneLine(string message) => message.ReplaceLineEndings(" ").Trim().TrimEnd('.') + ".";

    private sealed class TooDeepException(int line, int column) : Exception
    {
        public int Line => line;

        public int Column => column;
    }
}
