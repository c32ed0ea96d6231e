using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Speaking;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Teaching;

/// <summary>What stands, what waits, what was done, and how the club goes about it.</summary>
internal static class LookCards
{
    private const int MostShown = 15;

    public static Card Rules(RulesNow rules, EditionHead? newest, ImmutableArray<Proposal> waiting, ImmutableArray<Proposal> drafts, ImmutableArray<Tip> tips, Teacher teacher)
    {
        var troubles = rules.Load.Conflicts.Length + rules.Load.SetAside.Length;
        return new Card(
            "Your club's rules",
            [
                Say.Text(newest is null
                    ? "Your club goes by the project's rules alone so far."
                    : $"Edition {newest.Number}, of {ProposalCards.Day(newest.At)}: {newest.What}. The club has {Count(rules.Layer.Items.Length, "rule")} of its own, {Count(rules.Layer.Mends.Length, "mend")}, and {rules.Layer.Retires.Length} out of use.{LearningChoices.Learnt(rules)}"),
                .. Say.List("Waiting", Waits(waiting, drafts, tips, troubles)),
            ],
            [
                new TeachPress(TeachVerb.Sheets).Option("Write something new"),
                .. waiting.IsEmpty && drafts.IsEmpty ? [] : new[] { new TeachPress(TeachVerb.Waiting).Option("Look at what waits") },
                .. tips.IsEmpty ? [] : new[] { new TeachPress(TeachVerb.Tips).Option("Look at the tips") },
                .. troubles == 0 ? [] : new[] { new TeachPress(TeachVerb.Conflicts).Option("Where the project has changed") },
                new TeachPress(TeachVerb.Learn).Option("What could be learnt"),
                new TeachPress(TeachVerb.Reports).Option("Reports"),
                new TeachPress(TeachVerb.Editions).Option("Editions"),
                new TeachPress(TeachVerb.Log).Option("What was done"),
                .. teacher.May(TeachingRights.Manage) ? new[] { new TeachPress(TeachVerb.Settings).Option("How we go about it") } : [],
                new TeachPress(TeachVerb.Download).Option("as a file", OptionRole.Help),
            ]);
    }

    public static Card Waiting(ImmutableArray<Proposal> waiting, ImmutableArray<Proposal> drafts) => waiting.IsEmpty && drafts.IsEmpty
        ? new Card("Nothing waits", [Say.Text("No proposal is handed in, and none of yours is begun.")], [new TeachPress(TeachVerb.Sheets).Option("Write something new")])
        : new Card(
            "What waits",
            [Say.Text(waiting.IsEmpty ? "Nothing is handed in. These are yours, begun:" : drafts.IsEmpty ? "Handed in:" : "Handed in, and yours that are begun:")],
            [
                .. waiting.Take(MostShown).Select(p => new TeachPress(TeachVerb.Look, p.Id).Option($"{ProposalCards.TitleOf(p)}, by {TeachAct.DoerOf(p.ByName)}")),
                .. drafts.Take(MostShown - Math.Min(MostShown, waiting.Length)).Select(p => new TeachPress(p.Sheet.Length > 0 ? TeachVerb.GoOn : TeachVerb.Look, p.Id).Option($"{ProposalCards.TitleOf(p)}: go on")),
            ]);

    public static Card Log(ImmutableArray<AuditEntry> entries, bool whole) => new(
        whole ? "What was done, all of it" : "What was done",
        entries.IsEmpty
            ? [Say.Text("Nothing yet.")]
            : [new ListBlock("", [.. entries.Select(e => $"{e.At.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)} {Who(e)} {e.What}{(e.Subject.Length > 0 ? $" ({e.Subject})" : "")}")])],
        [
            .. entries.Length < MostShown ? [] : new[] { new TeachPress(whole ? TeachVerb.WholeLog : TeachVerb.Log, TeachPress.Text(entries[^1].Number)).Option("older") },
            .. whole ? [] : new[] { new TeachPress(TeachVerb.WholeLog).Option("with how drafts were written", OptionRole.Help) },
        ]);

    public static Card Editions(ImmutableArray<EditionHead> editions, Teacher teacher) => editions.IsEmpty
        ? new Card("Editions", [Say.Text("None yet: your club goes by the project's rules alone.")], [])
        : new Card(
            "Editions",
            [new ListBlock("", [.. editions.Select((e, i) => $"{e.Number}, {ProposalCards.Day(e.At)}, {TeachAct.DoerOf(e.ByName)}: {e.What}{(i == 0 ? " (counts now)" : "")}")])],
            teacher.May(TeachingRights.Publish)
                ?
                [
                    .. editions.Skip(1).Take(MostShown - 1).Select(e => new TeachPress(TeachVerb.AskTakeBack, TeachPress.Text(e.Number)).Option($"Take back to {e.Number}")),
                    new TeachPress(TeachVerb.AskTakeBack, "0").Option("Take back to the project's rules alone"),
                ]
                : []);

    public static Card Conflicts(RulesNow rules) => new(
        "Where the project's rules have changed",
        rules.Load.Conflicts.IsEmpty && rules.Load.SetAside.IsEmpty
            ? [Say.Text("Nowhere that matters: all of your club's own rules fit the project's.")]
            :
            [
                .. Say.List("Your word is kept; have a look whether it should be", rules.Load.Conflicts.Select(c => c.ToString())),
                .. Say.List("Not used, because it no longer fits", rules.Load.SetAside.Select(s => s.ToString())),
                Say.Text("To change one, mend the rule, or take it out of use."),
            ],
        []);

    public static Card Settings(TeachingSettings settings, Teacher teacher, KnowledgeBase rules) => new(
        "How your club goes about its rules",
        [new ListBlock("", Lines(settings))],
        teacher.May(TeachingRights.Manage)
            ?
            [
                settings.TwoPeople ? new TeachPress(TeachVerb.TwoPeople, "off").Option("One person is enough to publish") : new TeachPress(TeachVerb.TwoPeople, "on").Option("Two people to publish"),
                .. LearningChoices.Options(settings, rules),
            ]
            : []);

    /// <summary>The settings, always the same number of lines, for comparing.</summary>
    public static ImmutableArray<string> Lines(TeachingSettings settings) =>
    [
        settings.TwoPeople ? "Nobody publishes a proposal of their own." : "One person may write and publish.",
        .. LearningChoices.Lines(settings),
        $"Who may propose besides those who manage the club: {(settings.ProposeRoles.IsEmpty ? "nobody" : Roles(settings.ProposeRoles))}.",
        $"Who may publish besides those who manage the club: {(settings.PublishRoles.IsEmpty ? "nobody" : Roles(settings.PublishRoles))}.",
    ];

    private static string Roles(ImmutableSortedSet<string> roles) => roles.Count == 1 ? $"those with the role {roles[0]}" : $"those with one of the roles {Say.Join([.. roles])}";

    private static IEnumerable<string> Waits(ImmutableArray<Proposal> waiting, ImmutableArray<Proposal> drafts, ImmutableArray<Tip> tips, int troubles)
    {
        if (!waiting.IsEmpty) yield return $"{Count(waiting.Length, "proposal")} handed in";
        if (!drafts.IsEmpty) yield return $"{Count(drafts.Length, "sheet")} of yours, begun";
        if (!tips.IsEmpty) yield return Count(tips.Length, "tip");
        if (troubles > 0) yield return $"{Count(troubles, "place")} where the project's rules have changed under yours";
    }

    private static string Who(AuditEntry entry) => entry.Name.Length == 0 && entry.Act == AuditAct.Learnt ? RoundActs.Name : TeachAct.DoerOf(entry.Name);

    private static string Count(int count, string of) => count == 1 ? $"1 {of}" : $"{count} {of}s";
}
