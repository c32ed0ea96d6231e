using System.Collections.Immutable;

namespace ShedBot.Knowledge.Understanding;

/// <summary>What words mean that were written where an option was asked for.</summary>
public enum AnswerKind
{
    /// <summary>One of the options.</summary>
    Option,

    /// <summary>"dunno", "hard to tell": no evidence.</summary>
    NotSure,

    /// <summary>"can't get at it", "not now": the check is left for later.</summary>
    Cannot,

    /// <summary>"go back", "I got that wrong": the last answer is to be changed.</summary>
    Back,

    /// <summary>"why do you ask".</summary>
    Why,

    /// <summary>"show me", "how do I do that", "what's a set screw".</summary>
    ShowMe,

    /// <summary>"stop", "forget it": the case is to be closed or rested.</summary>
    Stop,
}

/// <param name="OptionId">The option's id when <paramref name="Kind"/> is Option, else null.</param>
/// <param name="Score">How sure, in (0, 1].</param>
public sealed record HeardAnswer(AnswerKind Kind, string? OptionId, double Score);

/// <summary>One answer that may be given.</summary>
/// <param name="Id">What it is called among the options: a state's or value's id.</param>
/// <param name="Label">What the rider reads.</param>
/// <param name="Phrases">Other words for it.</param>
public sealed record AnswerOption(string Id, string Label, ImmutableArray<string> Phrases);
