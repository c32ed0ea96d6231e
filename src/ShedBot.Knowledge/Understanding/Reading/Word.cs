namespace ShedBot.Knowledge.Understanding.Reading;

/// <summary>What a word does in a sentence, as far as understanding needs it.</summary>
internal enum Role
{
    /// <summary>Carries meaning.</summary>
    Content,

    /// <summary>Articles, auxiliaries, intensifiers: left out.</summary>
    Filler,

    /// <summary>it, he, that: left out too, but begins a new statement.</summary>
    Subject,

    /// <summary>not, never, no, without.</summary>
    Negator,

    /// <summary>A full stop, 'but', 'also': what follows is another statement.</summary>
    HardBreak,

    /// <summary>A comma, 'when', 'and': what follows belongs to it or not.</summary>
    SoftBreak,

    /// <summary>'used to', 'fixed that': the statement is about the past.</summary>
    Past,

    /// <summary>'now', 'still': the statement is about today, whatever its verbs.</summary>
    Present,

    /// <summary>'what if', 'in case': the statement is about something that has not happened.</summary>
    Supposed,
}

/// <param name="Text">The stem of a word, or the id of a concept.</param>
internal readonly record struct Word(string Text, Role Role);
