using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Linting;

/// <summary>R001 to R009: the file as text.</summary>
internal static class TextRules
{
    public static readonly LintRule TooBig = new("R001", Severity.Error, "the file is too big",
        "A file over 2 MB is no rule file that a person wrote or could review. Split it by subject; every *.yaml file in the folder is read.");

    public static readonly LintRule NotText = new("R002", Severity.Error, "the file is not plain UTF-8 text",
        "Broken encodings, control characters and marks that nobody sees, written out or as an escape, make a rule look other than it is read. Save the file as UTF-8 and take them out.");

    public static readonly LintRule Tab = new("R003", Severity.Error, "a tab character",
        "YAML shows nesting by spaces and takes no tabs in front of a line; a tab looks like spaces and is not. Use two spaces.");

    public static readonly LintRule BrokenYaml = new("R004", Severity.Error, "the file is no YAML",
        "The file cannot be read at all. The usual causes: wrong indentation, a quote that is not closed, or a text with ': ' or ' #' in it that is not in quotes.");

    public static readonly LintRule AnchorOrTag = new("R005", Severity.Error, "an anchor, alias or tag",
        "Rules are read aloud and reviewed; a reference to another place in the file hides what a rule says, and a chain of them can blow a small file up. Write the text out.");

    public static readonly LintRule TooDeep = new("R006", Severity.Error, "nested too deep",
        "No rule nests deeper than a few levels; something that does is a slip of a bracket, or not a rule file.");

    public static readonly LintRule DuplicateKey = new("R007", Severity.Error, "a key stands twice",
        "Of two equal keys one would silently win. Join the two, or take one out.");
}
