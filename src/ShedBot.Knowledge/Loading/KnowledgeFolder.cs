using System.Collections.Immutable;
using ShedBot.Knowledge.Loading.Yaml;

namespace ShedBot.Knowledge.Loading;

/// <summary>Rule files on disk. The one place in this library that touches the disk.</summary>
public static class KnowledgeFolder
{
    /// <summary>Every *.yaml file in the folder and below it, in ordinal order of its name; names are relative to the folder's parent, with '/'.</summary>
    /// <exception cref="IOException">The disk refuses, or there is no such folder.</exception>
    /// <exception cref="UnauthorizedAccessException">A file may not be read.</exception>
    public static ImmutableArray<RuleText> Read(string path)
    {
        var folder = Path.GetFullPath(path);
        var parent = Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(folder)) ?? folder;
        return
        [
            .. Directory.EnumerateFiles(folder, "*.yaml", SearchOption.AllDirectories)
                .Select(file => ReadFile(file, Path.GetRelativePath(parent, file).Replace(Path.DirectorySeparatorChar, '/')))
                .OrderBy(t => t.Name, StringComparer.Ordinal),
        ];
    }

    /// <summary>One file under a name of the caller's choice. Of a huge file only so much is read that the loader can refuse it.</summary>
    /// <inheritdoc cref="Read(string)" path="/exception"/>
    public static RuleText ReadFile(string path, string name)
    {
        using var stream = File.OpenRead(path);
        var bytes = new byte[Math.Min(stream.Length, TextGate.MaxBytes + 1)];
        stream.ReadExactly(bytes);
        return new RuleText(name, bytes);
    }
}
