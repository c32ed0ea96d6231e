using System.Security.Cryptography;
using System.Text;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Linting;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Layers;

/// <summary>A club's rules: the base with the club's layer over it. Pure: the same texts give the same rules.</summary>
public static class LayeredRules
{
    /// <summary>So often parts are set aside one by one; then the rest goes together. Only a text that was made to be slow comes that far.</summary>
    private const int MostRounds = 12;

    private static readonly HashSet<LayerPart> Nothing = [];

    /// <summary>For what is to be published: everything must fit and nothing may be less safe than the base; all that is wrong is told in one go.</summary>
    /// <param name="already">
    /// What is set aside in the edition that is in force. As long as it stands in the layer unchanged it stays aside, so that an old mend that
    /// no longer fits does not hold up a new rule.
    /// </param>
    public static LayeredLoad Load(RuleBase under, Layer layer, CompileOptions? options = null, IReadOnlyList<SetAside>? already = null)
    {
        if (under.Knowledge is null) return new LayeredLoad(null, under.Problems, [], [], []);
        var old = (already ?? []).ToDictionary(a => (a.Part.Key, a.Part.Slot));
        var aside = layer.Parts
            .Where(p => old.TryGetValue((p.Key, p.Slot), out var before) && before.Part.Text == p.Text)
            .ToDictionary(p => p, p => old[(p.Key, p.Slot)].Why);
        return Try(under, layer, aside, options, listen: true);
    }

    /// <summary>For what was published: a part that no longer fits the base is set aside, and the club goes on with the rest.</summary>
    /// <returns>Knowledge is null only when the base itself has errors.</returns>
    public static LayeredLoad LoadKept(RuleBase under, Layer layer, CompileOptions? options = null)
    {
        if (under.Knowledge is null) return new LayeredLoad(null, under.Problems, [], [], []);
        var aside = new Dictionary<LayerPart, string>();
        for (var round = 1; ; round++)
        {
            var load = Try(under, layer, aside, options, listen: false);
            if (load.Knowledge is not null) return load;
            Aside(layer, aside, load, all: round == MostRounds);
        }
    }

    private static LayeredLoad Try(RuleBase under, Layer layer, Dictionary<LayerPart, string> aside, CompileOptions? options, bool listen)
    {
        var problems = new ProblemList();
        var without = aside.Count == 0 ? Nothing : [.. aside.Keys];
        var laid = new Laying(under, layer, problems).Lay(without);
        LintRun.All(laid.Draft, options ?? CompileOptions.Default, under.FirstFile, allRead: true, problems, layer.File);
        new LayerLook(under, layer, problems).Look(without);
        var knowledge = problems.HasErrors ? null : Compile(under, layer, laid.Draft, options);
        if (knowledge is not null)
        {
            foreach (var less in listen ? LayerSafety.Check(under.Knowledge!, knowledge) : LayerSafety.Shape(under.Knowledge!, knowledge))
            {
                var part = layer.Parts.FirstOrDefault(p => p.Key == less.Key) ?? layer.Parts.FirstOrDefault(p => less.Suspects.Contains(p.Key));
                problems.Add(less.Rule, layer.File, part?.Line ?? 1, 1, less.What, less.Mend);
            }
        }

        return new LayeredLoad(
            problems.HasErrors ? null : knowledge, problems.Sorted(), laid.Conflicts,
            [.. aside.Select(a => new SetAside(a.Key, a.Value)).OrderBy(a => a.Part.Line)], laid.Gone);
    }

    /// <summary>The parts that errors are told at. An error in the base's own text comes of something in the layer that no line tells: then kinds of parts go together.</summary>
    private static void Aside(Layer layer, Dictionary<LayerPart, string> aside, LayeredLoad load, bool all)
    {
        var errors = load.Problems.Where(p => p.Severity == Severity.Error).ToList();
        var before = aside.Count;
        foreach (var error in errors.Where(e => e.File == layer.File))
        {
            if (layer.Parts.Where(p => p.Line <= error.Line).MaxBy(p => p.Line) is { } part) aside.TryAdd(part, error.What);
        }

        if (aside.Count > before && !all) return;
        foreach (var parts in (IEnumerable<LayerPart>[])[layer.Retires, layer.Mends, layer.Items])
        {
            foreach (var part in parts) aside.TryAdd(part, errors[0].What);
            if (aside.Count > before && !all) return;
        }
    }

    private static KnowledgeBase Compile(RuleBase under, Layer layer, Loading.Reading.Draft draft, CompileOptions? options) =>
        layer.IsEmpty && (options is null || options == CompileOptions.Default)
            ? under.Knowledge!
            : Compiler.Compile(draft, options ?? CompileOptions.Default, Version(under, layer, options?.Learnt), under.Shared);

    /// <summary>Of the base, the club's word and what was learnt together, in the same form as that of files. The number of the edition does not count.</summary>
    private static string Version(RuleBase under, Layer layer, Learnt? learnt)
    {
        var text = new StringBuilder(under.Knowledge!.Version);
        if (!layer.IsEmpty) text.Append('\n').Append(LayerWriter.Write(layer, null));
        if (learnt is { IsNothing: false }) text.Append("\nlearnt\n").Append(LearntText.Write(learnt));
        return text.Length == under.Knowledge.Version.Length ? under.Knowledge.Version : Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..12];
    }
}
