namespace ShedBot.Coaching.Cases;

/// <summary>What kind of thing was learnt or done. Stored by name: never rename a member.</summary>
public enum EntryKind
{
    /// <summary>Subject: complaint. The member has this trouble.</summary>
    Complaint,

    /// <summary>Subject: complaint. The member says that it is not this.</summary>
    Denied,

    /// <summary>Subject: finding; value: state; score: how surely it was heard in free words.</summary>
    Volunteered,

    /// <summary>Subject: fact of the bike; value: its value.</summary>
    Fact,

    /// <summary>Subject: fact. Asked, and the member does not know.</summary>
    FactUnknown,

    /// <summary>Subject: check; value: state.</summary>
    Answer,

    /// <summary>Subject: check. No evidence; not asked again in the same words.</summary>
    NotSure,

    /// <summary>Subject: check; value: the cover that could not be opened, or null.</summary>
    Cannot,

    /// <summary>The member has said that it is safe to put hands on. No subject.</summary>
    Ready,

    /// <summary>The member is not at the bike, or it is not safe yet: only questions from memory until <see cref="Ready"/>.</summary>
    NotReady,

    /// <summary>Subject: repair. Shown to the member.</summary>
    RepairShown,

    /// <summary>Subject: repair. The member cannot do it.</summary>
    RepairRefused,

    /// <summary>Subject: repair; done, the trouble is as before.</summary>
    RepairFailed,

    /// <summary>Subject: repair; done, the trouble is less but not gone.</summary>
    RepairBetter,

    /// <summary>Subject: repair; done and proved.</summary>
    RepairHeld,

    /// <summary>Subject: repair; it had held, and the trouble is back.</summary>
    CameBack,

    /// <summary>Subject: check. Its answer did not fit the others and was asked for once more.</summary>
    AskedAgain,

    /// <summary>Subject: question that tells apart; value: the complaint or emergency that was meant, or null as long as that is not known.</summary>
    Either,

    /// <summary>Subject: check or fact. Words that were no answer to it and nothing else either; the second time they count as 'not sure'.</summary>
    Unheard,
}

/// <summary>One line of a case: what was learnt, when, and whether the member took it back.</summary>
/// <param name="Turn">The turn of the case that wrote it, from 1.</param>
/// <param name="Subject">The id of what it is about; empty where the kind has none.</param>
/// <param name="Score">How sure, in (0, 1]; 1 where nothing was guessed.</param>
/// <param name="Struck">True when it was taken back or corrected later: kept for the record, no longer counted.</param>
public sealed record CaseEntry(
    int Turn, EntryKind Kind, string Subject, string? Value, double Score, DateTimeOffset At, bool Struck = false);
