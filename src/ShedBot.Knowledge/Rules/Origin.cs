namespace ShedBot.Knowledge.Rules;

/// <summary>Where a rule comes from and where it is written.</summary>
/// <param name="Source">A published source, or 'common practice'.</param>
/// <param name="Author">Who wrote the rule down.</param>
/// <param name="Date">The day of its last change.</param>
/// <param name="File">The rule file.</param>
/// <param name="Line">The line of the rule's first word, from 1.</param>
/// <param name="SaidBy">Whose tip it was, when another wrote it down; else null.</param>
public sealed record Origin(string Source, string Author, DateOnly Date, string File, int Line, string? SaidBy = null);
