using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Layers.Safety;

/// <summary>R100 to R109: what a club may add to, and never take from.</summary>
internal static class SafetyRules
{
    public static readonly LintRule Emergency = new("R100", Severity.Error, "an emergency that is weakened",
        "The project's emergencies come before any coaching in every club. A club may add phrases, things to do and emergencies of its own; it can not retire one, drop a phrase, reword or soften its caution, leave out what to do, or let the coaching go on where it ends.");

    public static readonly LintRule Triage = new("R101", Severity.Error, "a question that keeps riders safe, changed",
        "Before the first step that puts hands near the machine the rider is asked whether it is safe to, and words that could mean a danger or a mere trouble are asked about first. These questions are the same in every club.");

    public static readonly LintRule Stop = new("R102", Severity.Error, "a 'stop riding' that is gone or reworded",
        "When such a state is seen the bike must not be ridden. The finding, the state, the answer that means it, its phrases and what the rider is told stay as the project has them.");

    public static readonly LintRule StopOutOfReach = new("R103", Severity.Error, "a 'stop riding' that is out of reach",
        "The state must still be found: by a check that is no more hazardous and not much longer than the project's, and by a fault that still shows as it at least 'unlikely'. Else the coach would never come to ask, and the rider would ride on.");

    public static readonly LintRule Hazard = new("R104", Severity.Error, "work that is called safer than the project calls it",
        "The hazard of a check, repair or service task may be raised by a club and never lowered, and what is for a practised hand stays so. A rider trusts these words with fingers and lungs.");

    public static readonly LintRule Caution = new("R105", Severity.Error, "a caution that is taken away or made milder",
        "The cautions of the project's rules stay, word for word, with at least their signal word. More cautions are welcome.");

    public static readonly LintRule HandsOff = new("R106", Severity.Error, "hands-on work that is called hands off",
        "A check that puts hands near the machine is asked only after the question whether all is safe. Calling it hands off would leave that question out.");

    public static readonly LintRule Unheard = new("R107", Severity.Error, "an emergency that is not understood any more",
        "With the club's words and phrases, something that riders write in an emergency is taken for something else; or the club has changed the words that say when an emergency is meant and when it is not ('riding now', 'sure fire', 'no fire', 'other than fire'). Make the club's phrase fuller, or leave the word out; those words of the project's stay as they are.");

    public static readonly LintRule SafeStep = new("R108", Severity.Error, "a line that keeps riders safe, dropped",
        "A line of a check, cover, repair, service task or how-to that says engine off, plug cap, cold, gloves, goggles or never is part of the work. It stays as the project has it; lines may be added.");
}
