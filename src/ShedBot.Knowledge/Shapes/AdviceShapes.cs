using static ShedBot.Knowledge.Shapes.PartShapes;

namespace ShedBot.Knowledge.Shapes;

/// <summary>How-to answers, emergencies, the question before hands-on work, and words.</summary>
internal static class AdviceShapes
{
    public static ItemShape HowTo { get; } = new("how to", "The answer to a 'how do I' question that is no trouble.",
    [
        Must("id", Id()),
        Must("called", Text("What it is about: when to grease the clutch.")),
        May("riders ask", Texts("The question in riders' own words. At least one, or it is never found.")),
        May("cautions", Cautions),
        Must("answer", Texts("Steps or paragraphs, in order.", 1)),
        .. OriginKeys,
    ]);

    public static ItemShape Emergency { get; } = new("emergency", "Something that comes before any coaching.",
    [
        Must("id", Id()),
        Must("called", Text("What it is: fuel is leaking.")),
        Must("riders say", Texts("Phrases that mean it.", 1)),
        Must("caution", Caution),
        Must("do now", Texts("What to do now, in order.", 1)),
        Must("ends coaching", YesNo("yes when a human must take over; no when the case may go on once all is safe.")),
        .. OriginKeys,
    ]);

    public static ItemShape Danger { get; } = new("danger", "An answer that means an emergency.",
    [
        Must("says", Text("The answer as a rider would give it.")),
        Must("emergency", Reference("emergency")),
    ]);

    public static ItemShape Triage { get; } = new("question before hands on", "Asked once, before the first step that puts hands near the machine.",
    [
        Must("ask", Text("The question.")),
        Must("points", Texts("What must be so: engine off and cold.", 1)),
        Must("ready", Text("The answer that lets the coaching go on.")),
        Must("not yet", Text("The answer that lets the case rest until it is so.")),
        Must("dangers", new ListShape("Answers that mean an emergency.", Danger)),
        .. OriginKeys,
    ]);

    public static ItemShape EitherAnswer { get; } = new("answer that tells apart", "One of the troubles that were meant.",
    [
        Must("says", Text("What the rider sees: its cable ends at a wheel.")),
        May("riders say", Texts("Other words for it.")),
        May("named by", Texts("Words that settle it by themselves: clutch.")),
        Must("means", Reference("complaint or emergency")),
    ]);

    public static ItemShape Either { get; } = new("words that could mean either", "Words that could mean one of several troubles, and the question that tells them apart first.",
    [
        Must("id", Id()),
        Must("called", Text("What is not known: which lever it is.")),
        May("riders say", Texts("Runs of words that always want the question.")),
        Must("riders name", Texts("Words for the thing: lever, handle.", 1)),
        Must("and tell", Texts("What is said of it, close by: does nothing.", 1)),
        May("unless they say", Texts("Words beside which nothing of all this is meant.")),
        Must("ask", Text("The question.")),
        Must("why", Text("Why it is asked.")),
        Must("other words", Text("The same question put differently, for a second try.")),
        May("show me", Text("Fuller help for someone who does not know the parts; may hold a text drawing.")),
        Must("caution", Caution),
        Must("until known", Texts("What holds until it is known, in order.", 1)),
        Must("if unsure", Text("Why the bike must stay parked when it stays unknown, and what to do.")),
        Must("answers", new ListShape("What it can be.", EitherAnswer, 2)),
        .. OriginKeys,
    ]);

    public static ItemShape Word { get; } = new("word", "Other words, slang and usual misspellings for a word of the rules.",
    [
        Must("concept", Text("The word that the rules use.")),
        Must("riders say", Texts("Other words for it.", 1)),
        .. OriginKeys,
    ]);

    public static ItemShape About { get; } = new("about", "What this file is about, and where its rules come from.",
    [
        Must("covers", Text("What this file is about.")),
        May("source", Text("The source of every rule here that names none of its own.")),
        May("author", Text("Who wrote the rules here.")),
        May("date", new DateShape("The day of the last change, yyyy-mm-dd.")),
    ]);

    public static ItemShape File { get; } = new("rule file", "Rules of a club: what goes wrong, how to find it, how to mend it.",
    [
        Must("about", About),
        May("complaints", new ListShape("Troubles as riders name them.", CauseShapes.Complaint)),
        May("findings", new ListShape("What can be seen, felt or told.", CauseShapes.Finding)),
        May("facts", new ListShape("Facts of the bike that move the chances of faults.", CauseShapes.Fact)),
        May("faults", new ListShape("Causes.", CauseShapes.Fault)),
        May("checks", new ListShape("Ways to learn findings.", WorkShapes.Check)),
        May("covers", new ListShape("Shared dismantling.", WorkShapes.Cover)),
        May("repairs", new ListShape("Repairs.", WorkShapes.Repair)),
        May("service", new ListShape("Service tasks.", ServiceShapes.Task)),
        May("how to", new ListShape("Answers to 'how do I' questions.", HowTo)),
        May("emergencies", new ListShape("What comes before any coaching.", Emergency)),
        May("before hands on", Triage),
        May("could be either", new ListShape("Words that could mean one of several troubles.", Either)),
        May("words", new ListShape("Synonyms and slang.", Word)),
    ]);
}
