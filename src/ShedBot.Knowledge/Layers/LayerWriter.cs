using System.Globalization;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Shapes;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;
using Scalar = ShedBot.Knowledge.Loading.Yaml.Scalar;

namespace ShedBot.Knowledge.Layers;

/// <summary>Writes a layer as a rule file: always the same text for the same layer, one value a line, to be read aloud.</summary>
internal static class LayerWriter
{
    /// <summary>What <c>about</c> says a club's file covers.</summary>
    public const string Covers = "a club's own rules";

    private static readonly EmitterSettings Settings = new EmitterSettings(bestIndent: 2, bestWidth: int.MaxValue, isCanonical: false, maxSimpleKeyLength: 1024)
        .WithIndentedSequences()
        .WithNewLine("\n");

    /// <param name="edition">The number that stands under about; null for none.</param>
    public static string Write(Layer layer, int? edition) => Text(emitter =>
    {
        emitter.Emit(new MappingStart());
        Key(emitter, "about");
        emitter.Emit(new MappingStart());
        Pair(emitter, "covers", Covers);
        if (edition is { } number) Pair(emitter, "edition", number.ToString(CultureInfo.InvariantCulture));
        emitter.Emit(new MappingEnd());
        foreach (var kind in layer.Items.GroupBy(i => i.Key.Kind)) List(emitter, RuleKinds.Section(kind.Key), kind, LayerShapes.Own(kind.Key));
        List(emitter, "mends", layer.Mends, LayerShapes.Mend);
        List(emitter, "retires", layer.Retires, LayerShapes.Retire);
        emitter.Emit(new MappingEnd());
    });

    /// <summary>One rule of the club's by itself, as it can be put again.</summary>
    public static string Item(OwnRule rule) => Item(rule.Node, RuleKinds.Shape(rule.Key.Kind));

    public static string Item(MapNode node, ItemShape shape) => Text(emitter => Map(emitter, node, shape));

    private static string Text(Action<Emitter> body)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        var emitter = new Emitter(text, Settings);
        emitter.Emit(new StreamStart());
        emitter.Emit(new DocumentStart(null, null, isImplicit: true));
        body(emitter);
        emitter.Emit(new DocumentEnd(isImplicit: true));
        emitter.Emit(new StreamEnd());
        return text.ToString();
    }

    private static void List(Emitter emitter, string key, IEnumerable<LayerPart> parts, ItemShape shape)
    {
        var any = false;
        foreach (var part in parts)
        {
            if (!any)
            {
                Key(emitter, key);
                emitter.Emit(new SequenceStart(AnchorName.Empty, TagName.Empty, isImplicit: true, SequenceStyle.Block));
            }

            any = true;
            Map(emitter, part.Node, shape);
        }

        if (any) emitter.Emit(new SequenceEnd());
    }

    /// <summary>In the order of the format, however it was written; a key with nothing behind it says nothing and is left out.</summary>
    private static void Map(Emitter emitter, MapNode map, ItemShape shape)
    {
        emitter.Emit(new MappingStart());
        foreach (var key in shape.Keys)
        {
            if (map[key.Name] is not { } value || Says(value) is false) continue;
            Key(emitter, key.Name);
            Value(emitter, value, key.Shape);
        }

        emitter.Emit(new MappingEnd());
    }

    private static bool Says(Node value) => value switch
    {
        ListNode list => !list.Items.IsEmpty,
        MapNode map => !map.Entries.IsEmpty,
        _ => !value.IsEmpty,
    };

    private static void Value(Emitter emitter, Node value, Shape shape)
    {
        switch (value)
        {
            case MapNode map when shape is ItemShape item:
                Map(emitter, map, item);
                break;
            case MapNode map when shape is MapShape pairs:
                emitter.Emit(new MappingStart());
                foreach (var entry in map.Entries.OrderBy(e => e.Key.Text, StringComparer.Ordinal))
                {
                    Key(emitter, entry.Key.Text);
                    Value(emitter, entry.Value, pairs.Value);
                }

                emitter.Emit(new MappingEnd());
                break;
            case ListNode list when shape is ListShape items:
                emitter.Emit(new SequenceStart(AnchorName.Empty, TagName.Empty, isImplicit: true, SequenceStyle.Block));
                foreach (var item in list.Items) Value(emitter, item, items.Item);
                emitter.Emit(new SequenceEnd());
                break;
            case Scalar scalar:
                Plain(emitter, scalar.Text.Trim());
                break;
        }
    }

    private static void Pair(Emitter emitter, string key, string value)
    {
        Key(emitter, key);
        Plain(emitter, value);
    }

    private static void Key(Emitter emitter, string text) => Plain(emitter, text);

    /// <summary>Without quotes where that can be; a text of several lines, such as a drawing, as it looks.</summary>
    private static void Plain(Emitter emitter, string text) => emitter.Emit(new YamlDotNet.Core.Events.Scalar(
        AnchorName.Empty, TagName.Empty, text, text.Contains('\n', StringComparison.Ordinal) ? ScalarStyle.Literal : ScalarStyle.Any, isPlainImplicit: true, isQuotedImplicit: true));
}
