using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Linting;

/// <summary>R060 to R069: what riders say.</summary>
internal static class PhraseRules
{
    public static readonly LintRule SharedPhrase = new("R060", Severity.Error, "a phrase that means two things",
        "The same phrase stands with two troubles, emergencies or how-to answers, or with two states of one finding, so it cannot tell which is meant. Keep it with the one that it fits better, or make both fuller. Case, spaces and punctuation do not make a difference.");

    public static readonly LintRule EmptyPhrase = new("R061", Severity.Error, "a phrase without a word",
        "A phrase of signs only says nothing and could match anything.");

    public static readonly LintRule RepeatedPhrase = new("R062", Severity.Warning, "a phrase that stands twice in one place",
        "The second one adds nothing to what the first one teaches the coach. Take it out.");

    public static readonly LintRule UnaskedHowTo = new("R063", Severity.Warning, "a how-to that nobody asks for",
        "Without phrases under 'riders ask' it is never found. Add the question as riders put it.");
}
