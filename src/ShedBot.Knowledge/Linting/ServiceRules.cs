using ShedBot.Knowledge.Problems;

namespace ShedBot.Knowledge.Linting;

/// <summary>R070 to R089: service tasks.</summary>
internal static class ServiceRules
{
    public static readonly LintRule NoInterval = new("R070", Severity.Error, "an interval that cannot be read",
        "An interval is an amount and what it is counted in: riding days (days on which the bike was ridden), hours with the engine running, km, or days, weeks, months and years of the calendar. After an event it may also be 'before the next ride'.");

    public static readonly LintRule NeverDue = new("R071", Severity.Error, "a service task that is never due",
        "It has no interval and comes after no event, it is not for each ride, and no other task follows on it, so nobody would ever see it. Say under 'every' or 'after' when it is due, or write 'before each ride: yes'.");

    public static readonly LintRule NeverComes = new("R072", Severity.Error, "an interval that can never come",
        "Nothing and less than nothing can not be waited for, and beyond 1000 riding days, 1000 hours, 20,000 km or 10 years no kit of this sort is still the same machine; it is a slip of the finger. After an event 'before the next ride' says at once.");

    public static readonly LintRule LateAfter = new("R073", Severity.Warning, "a time after an event that 'every' overtakes",
        "The task comes round sooner by itself than this long after the event, so the line changes nothing. Write a shorter one, or take it out.");

    public static readonly LintRule SameName = new("R074", Severity.Error, "two service tasks of the same name",
        "A rider is told by name what is due and says by name what is done. Two tasks of one name cannot be told apart. Case, spaces and punctuation do not make a difference.");

    public static readonly LintRule BadFactor = new("R075", Severity.Error, "weather that counts too little or too much",
        "Riding in bad weather never counts for less than dry riding, and more than five times is a slip of the finger: write a number from 1 to 5.");

    public static readonly LintRule IdleWeather = new("R076", Severity.Warning, "weather that changes nothing",
        "Only riding counts for more in the wet or in dust; days of the calendar pass all the same. The task is due by the calendar or before each ride only. Give it an interval in riding days, hours or km, or take the weather out.");

    public static readonly LintRule EachRideAndMore = new("R077", Severity.Error, "before each ride, and at an interval too",
        "Nobody is reminded of the look before each ride, so its intervals and events would be passed over in silence. Make the rest a task of its own.");

    public static readonly LintRule IdleInterval = new("R078", Severity.Warning, "an interval that another one hides",
        "Of two intervals in the same measure the shorter one always comes first; after an event the times go from the shortest to the longest. Take one out, or put them in order.");

    public static readonly LintRule AfterItself = new("R079", Severity.Error, "a service task that comes after itself",
        "It could never be done with. Say under 'every' how often it is due.");

    public static readonly LintRule IdleOnlyIf = new("R080", Severity.Warning, "a condition that every bike meets",
        "All values of the fact are listed, so the line leaves no bike out. List those that the task is for, or take the line out.");
}
