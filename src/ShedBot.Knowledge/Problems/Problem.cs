namespace ShedBot.Knowledge.Problems;

/// <summary>What is wrong with the rules, where, and what to write instead.</summary>
/// <param name="Rule">The lint rule that is broken.</param>
/// <param name="File">The name of the rule file as it was given.</param>
/// <param name="Line">From 1.</param>
/// <param name="Column">From 1.</param>
/// <param name="What">One sentence: what is wrong.</param>
/// <param name="Mend">What to write instead; empty when the first sentence says it.</param>
public sealed record Problem(LintRule Rule, string File, int Line, int Column, string What, string Mend) : IComparable<Problem>
{
    public Severity Severity => Rule.Severity;

    public string Code => Rule.Code;

    /// <summary>By file, line, column and code, so that a report reads from top to bottom and is the same every time.</summary>
    public int CompareTo(Problem? other)
    {
        if (other is null) return 1;
        var order = string.CompareOrdinal(File, other.File);
        if (order == 0) order = Line.CompareTo(other.Line);
        if (order == 0) order = Column.CompareTo(other.Column);
        if (order == 0) order = string.CompareOrdinal(Code, other.Code);
        return order == 0 ? string.CompareOrdinal(What, other.What) : order;
    }

    public static bool operator <(Problem left, Problem right) => left.CompareTo(right) < 0;

    public static bool operator >(Problem left, Problem right) => left.CompareTo(right) > 0;

    public static bool operator <=(Problem left, Problem right) => left.CompareTo(right) <= 0;

    public static bool operator >=(Problem left, Problem right) => left.CompareTo(right) >= 0;

    /// <summary>One line: <c>clutch.yaml:12:5: error R031: what is wrong. How to mend it.</c></summary>
    public override string ToString()
    {
        var word = Severity == Severity.Error ? "error" : "warning";
        return $"{File}:{Line}:{Column}: {word} {Code}: {What}{(Mend.Length == 0 ? "" : " " + Mend)}";
    }
}

/// <summary>Whether the rules can be used in spite of a problem.</summary>
public enum Severity
{
    /// <summary>They can, but somebody should look at it.</summary>
    Warning,

    /// <summary>They cannot.</summary>
    Error,
}

/// <summary>One thing that is looked for in the rules.</summary>
/// <param name="Code">R and three digits; a code keeps its meaning for good.</param>
/// <param name="Title">What is looked for, in a few words.</param>
/// <param name="Why">What goes wrong when it is let through, and how to mend it; a paragraph for whoever asks about the code.</param>
public sealed record LintRule(string Code, Severity Severity, string Title, string Why);
