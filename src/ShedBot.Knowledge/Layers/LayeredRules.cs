using System.Security.Cryptography;
using System.Text;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Linting;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Layers;

/// <summary>A club's rules: the base with the club's layer over it. Pure: the same texts give the same rules.</summary>
public static class LayeredRules
{
    /// <summary>For what is to be published: everything must fit, and what does not is told in one go.</summary>
    public static LayeredLoad Load(RuleBase under, Layer layer, CompileOptions? options = null)
    {
        if (under.Knowledge is null) return new LayeredLoad(null, under.Problems, [], [], []);
        var problems = new ProblemList();
        var laid = new Laying(under, layer).Lay(new HashSet<LayerPart>(), problems);
        foreach (var (part, rule, what) in laid.Misfits) problems.Add(rule, layer.File, part.Node, what);
        LintRun.All(laid.Draft, options ?? CompileOptions.Default, under.FirstFile, allRead: true, problems);
        return new LayeredLoad(
            problems.HasErrors ? null : Compile(under, layer, laid.Draft, options), problems.Sorted(), laid.Conflicts, [], laid.Gone);
    }

    /// <summary>For what was published: a part that no longer fits the base is set aside, and the club goes on with the rest.</summary>
    /// <returns>Knowledge is null only when the base itself has errors.</returns>
    public static LayeredLoad LoadKept(RuleBase under, Layer layer, CompileOptions? options = null)
    {
        if (under.Knowledge is null) return new LayeredLoad(null, under.Problems, [], [], []);
        var aside = new Dictionary<LayerPart, string>();
        while (true)
        {
            var problems = new ProblemList();
            var laid = new Laying(under, layer).Lay(aside.Keys.ToHashSet(), problems);
            foreach (var (part, _, what) in laid.Misfits) aside[part] = what;
            LintRun.All(laid.Draft, options ?? CompileOptions.Default, under.FirstFile, allRead: true, problems);
            if (!problems.HasErrors)
                return new LayeredLoad(Compile(under, layer, laid.Draft, options), problems.Sorted(), laid.Conflicts, [.. aside.Select(a => new SetAside(a.Key, a.Value)).OrderBy(a => a.Part.Line)], laid.Gone);
            var errors = problems.Sorted().Where(p => p.Severity == Severity.Error).ToList();
            var before = aside.Count;
            foreach (var error in errors.Where(e => e.File == layer.File))
            {
                if (layer.Parts.Where(p => p.Line <= error.Line).MaxBy(p => p.Line) is { } part) aside.TryAdd(part, error.What);
            }

            // An error in the base's own text is a consequence of something in the layer: the last part goes first, until it is gone.
            if (aside.Count == before && layer.Parts.LastOrDefault(p => !aside.ContainsKey(p)) is { } last) aside[last] = errors[0].What;
        }
    }

    private static KnowledgeBase Compile(RuleBase under, Layer layer, Loading.Reading.Draft draft, CompileOptions? options) =>
        layer.IsEmpty && options is null ? under.Knowledge! : Compiler.Compile(draft, options ?? CompileOptions.Default, Version(under, layer));

    /// <summary>Of the base and the club's word together, in the same form as that of files.</summary>
    private static string Version(RuleBase under, Layer layer) => layer.IsEmpty
        ? under.Knowledge!.Version
        : Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(under.Knowledge!.Version + "\n" + layer.As(null).Write())))[..12];
}
