using System.CommandLine;
using ShedBot.Knowledge.Linting;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Rules;

/// <summary><c>lint FILES</c>: every problem of rule files in one run, as a good compiler would tell them.</summary>
internal static class LintCommand
{
    public const string Name = "lint";

    public static Command Create()
    {
        var files = new Argument<string[]>("FILES")
        {
            Description = "Rule files, or folders of them; all are looked at together. Without any: the club's own rules.",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var explain = new Option<string?>("--explain") { Description = "Say what a code of the report means, and how to mend it.", HelpName = "CODE" };
        var command = new Command(Name, "Look over rule files: file, line, what is wrong and how to mend it. Every problem in one run.");
        command.Arguments.Add(files);
        command.Options.Add(explain);
        command.SetAction(parse => parse.GetValue(explain) is { } code
            ? Explain(code, Console.Out, Console.Error)
            : Run(parse.GetValue(files) ?? [], Console.Out, Console.Error));
        return command;
    }

    public static int Run(string[] paths, TextWriter output, TextWriter errors)
    {
        if (paths.Length == 0)
        {
            if (RulesFolder.FindOrSay(null, errors) is not { } folder) return ExitCodes.InputHasErrors;
            paths = [folder];
        }

        if (Read(paths, errors) is not { } texts) return ExitCodes.InputHasErrors;
        var (knowledge, problems) = KnowledgeLoader.Load(texts);
        foreach (var problem in problems) output.WriteLine(problem);
        output.WriteLine($"{RulesReport.Count(texts.Count, "file")}, {RulesReport.Summary(problems)}.");
        if (knowledge is not null) output.WriteLine(RulesReport.Holds(knowledge));
        if (problems.Length > 0) output.WriteLine($"More about a code: lint --explain {problems[0].Code}");
        return RulesReport.Errors(problems) > 0 ? ExitCodes.InputHasErrors : ExitCodes.Fine;
    }

    public static int Explain(string code, TextWriter output, TextWriter errors)
    {
        if (LintCatalogue.Find(code) is not { } rule)
        {
            errors.WriteLine($"There is no code '{code}'. Codes go from {LintCatalogue.All[0].Code} to {LintCatalogue.All[^1].Code}.");
            return ExitCodes.InputHasErrors;
        }

        output.WriteLine($"{rule.Code} ({(rule.Severity == Severity.Error ? "error" : "warning")}): {rule.Title}");
        output.WriteLine(rule.Why);
        return ExitCodes.Fine;
    }

    private static List<RuleText>? Read(string[] paths, TextWriter errors)
    {
        var texts = new List<RuleText>();
        foreach (var path in paths)
        {
            try
            {
                if (Directory.Exists(path)) texts.AddRange(KnowledgeFolder.Read(path));
                else texts.Add(KnowledgeFolder.ReadFile(path, path));
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                errors.WriteLine($"{path}: {e.Message}");
                return null;
            }
        }

        if (texts.Count == 0) errors.WriteLine($"There are no rule files (*.yaml) in {string.Join(", ", paths)}.");
        return texts.Count == 0 ? null : texts;
    }
}
