using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Teaching.Moves;

/// <summary>What could be learnt, and proposals that were counted, as they are looked at.</summary>
internal static class MoveCards
{
    /// <summary>Numbers on one page.</summary>
    public const int Page = 8;

    private const int MostLabel = 90;

    /// <summary>What the cases would move now.</summary>
    /// <param name="up">ShedBot's own proposal of the very same, or null: two of one would only be in each other's way.</param>
    public static Card Look(CountWork work, LearningReport report, TeachingSettings settings, Proposal? up)
    {
        var counted = CountedNumbers.Of(work, report);
        var says = counted.Numbers.ToDictionary(n => n.Key, n => n.Says, StringComparer.Ordinal);
        var card = LearningCards.Of(report with { Moves = [.. report.Moves.Where(m => says.ContainsKey(m.Target.Key)).Select(m => m with { Says = says[m.Target.Key] })] });
        if (counted.Numbers.IsEmpty && !report.Moves.IsEmpty)
            card = new Card("Nothing new to learn", [Say.Text($"All that is to be learnt from {Cases(counted)}, is learnt already."), .. LearningCards.Tests(report)], []);
        var back = counted.Numbers.Where(n => report.Moves.All(m => m.Target.Key != n.Key)).Select(n => n.Says);
        return card with
        {
            Blocks = [.. card.Blocks, .. Say.List("Goes back", back), .. Already(report, says), Say.Text($"Your club's choice: {LearningChoices.Mode(settings.Learning)}.")],
            Options =
            [
                .. counted.Numbers.IsEmpty ? [] : new[] { up is null ? new TeachPress(TeachVerb.ProposeLearnt).Option("Make it a proposal") : new TeachPress(TeachVerb.Look, up.Id).Option($"Look at {up.ByName}'s proposal of it") },
                new TeachPress(TeachVerb.Settings).Option("how we learn", OptionRole.Help),
            ],
        };
    }

    /// <summary>What the cases say and the club has learnt; the test of what was counted is of these too.</summary>
    private static IEnumerable<CardBlock> Already(LearningReport report, Dictionary<string, string> says)
    {
        var already = report.Moves.Count(m => !says.ContainsKey(m.Target.Key));
        return already == 0 || says.Count == 0 ? [] : [Say.Text($"{LearningWords.Of(already, "more number that the cases speak for is", "more numbers that the cases speak for are")} learnt already.")];
    }

    /// <summary>What a counted proposal says of itself on its card; nothing for one that was not counted.</summary>
    /// <param name="justSeen">True where the numbers were read just before: then they are not read once more.</param>
    public static IEnumerable<CardBlock> Blocks(KnowledgeBase rules, Proposal proposal, bool justSeen = false)
    {
        if (CountedNumbers.Read(proposal) is not { } counted) yield break;
        if (counted.Why.Length > 0) yield return Say.Text(counted.Why);
        if (justSeen) yield break;
        yield return Say.Text($"Counted on {ProposalCards.Day(counted.Basis.Until)} from {Cases(counted)}. Nothing but these numbers would change.");
        var moving = counted.Numbers.Where(n => !counted.Out.Contains(n.Key)).ToList();
        foreach (var block in Say.List("What would move", moving.Take(LearningCards.MostShown).Select(n => n.Says))) yield return block;
        if (moving.Count > LearningCards.MostShown) yield return Say.Text($"And {moving.Count - LearningCards.MostShown} smaller ones.");
        if (moving.Count == 0) yield return Say.Text("All of it is left out, so it changes nothing. Take one in again, or put it away.");
        foreach (var block in Say.List("Left out, and so as it is", counted.Out.Select(key => $"{Say.Capital(TargetWords.Called(rules, key))}.").Take(LearningCards.MostShown))) yield return block;
    }

    /// <summary>What moves, in short, for the log; nothing for a proposal that was not counted.</summary>
    public static IEnumerable<string> Short(RulesNow rules, Proposal proposal) => CountedNumbers.Read(proposal) is { } counted ? Short(rules, counted) : [];

    public static IEnumerable<string> Short(RulesNow rules, CountedNumbers counted)
    {
        var (before, after) = (LearntSteps.ByKey(rules.LearntNumbers), LearntSteps.ByKey(counted.Then(rules.LearntNumbers)));
        string Number(ImmutableSortedDictionary<string, double> numbers, string key) => numbers.TryGetValue(key, out var number) ? TargetWords.Number(key, number) : "the rules' own word";
        return counted.Numbers.Where(n => !counted.Out.Contains(n.Key)).Select(n => $"{Say.Capital(TargetWords.Called(rules.Knowledge, n.Key))}: from {Number(before, n.Key)} to {Number(after, n.Key)}.");
    }

    public static IEnumerable<CardOption> Options(TeachAct act, Proposal proposal)
    {
        if (!proposal.IsOpen || CountedNumbers.Read(proposal) is not { } counted || !MayChange(act, proposal)) yield break;
        if (!counted.Numbers.IsEmpty) yield return new TeachPress(TeachVerb.Numbers, proposal.Id).Option("One number after the other", OptionRole.Help);
        yield return new TeachPress(TeachVerb.CountAnew, proposal.Id).Option("count anew", OptionRole.Help);
    }

    /// <summary>A page of numbers to choose from.</summary>
    public static Card Numbers(TeachAct act, Proposal proposal, CountedNumbers counted, int from)
    {
        var page = counted.Numbers.Skip(from).Take(Page).ToList();
        return new Card(
            counted.Numbers.Length <= Page ? "The numbers" : string.Create(CultureInfo.InvariantCulture, $"The numbers, {from + 1} to {from + page.Count} of {counted.Numbers.Length}"),
            [Say.Text("Pick one to see what it rests on, to leave it out, or never to learn it.")],
            [
                .. page.Select(n => new TeachPress(TeachVerb.Number, proposal.Id, TargetWords.Mark(n.Key))
                    .Option(Label($"{(counted.Out.Contains(n.Key) ? "left out: " : "")}{TargetWords.Called(act.Rules.Knowledge, n.Key)}"))),
                .. from + Page < counted.Numbers.Length ? new[] { new TeachPress(TeachVerb.Numbers, proposal.Id, TeachPress.Text(from + Page)).Option("more", OptionRole.Help) } : [],
                new TeachPress(TeachVerb.Look, proposal.Id).Option("the whole proposal", OptionRole.Help),
            ]);
    }

    public static Card Number(TeachAct act, Proposal proposal, CountedNumbers counted, CountedNumber number, bool never)
    {
        var (mark, left) = (TargetWords.Mark(number.Key), counted.Out.Contains(number.Key));
        return new Card(
            Say.Capital(TargetWords.Called(act.Rules.Knowledge, number.Key)),
            [
                Say.Text(number.Says),
                .. left ? new CardBlock[] { Say.Text("It is left out of this proposal, and stays as it is.") } : [],
                .. never ? new CardBlock[] { Say.Text("Your club has chosen never to learn it.") } : [],
            ],
            [
                new TeachPress(TeachVerb.LeaveOut, proposal.Id, mark, left ? "in" : "out").Option(left ? "Take it in again" : "Leave it out"),
                .. act.Teacher.May(TeachingRights.Manage) ? new[] { LearningChoices.NeverOption(mark, !never) } : [],
                new TeachPress(TeachVerb.Numbers, proposal.Id).Option("the other numbers", OptionRole.Help),
                new TeachPress(TeachVerb.Look, proposal.Id).Option("the whole proposal", OptionRole.Help),
            ]);
    }

    /// <summary>After the last number of ShedBot's own proposal was left out.</summary>
    public static Card PutAway { get; } = new(
        "Put away",
        [Say.Text("All of its numbers are left out now, so it would change nothing, and is put away. Nothing of it is put up again before clearly more cases are closed; what could be learnt shows it at any time.")],
        [new TeachPress(TeachVerb.Learn).Option("what could be learnt", OptionRole.Help), new TeachPress(TeachVerb.Rules).Option("the rules", OptionRole.Help)]);

    public static string Cases(CountedNumbers counted) => string.Create(
        CultureInfo.InvariantCulture,
        $"{(counted.Cases == 1 ? "1 closed case" : $"{counted.Cases} closed cases")} of {(counted.Members == 1 ? "1 member" : $"{counted.Members} members")}, {counted.Mended} of them mended and stayed so");

    public static string TitleOf(int numbers) => numbers == 1 ? "Learnt from mended cases: one number" : string.Create(CultureInfo.InvariantCulture, $"Learnt from mended cases: {numbers} numbers");

    /// <summary>Its author's; and ShedBot's own, of whoever may propose.</summary>
    public static bool MayChange(TeachAct act, Proposal proposal) => proposal.By == act.Teacher.Who || proposal.By == default;

    private static string Label(string text) => text.Length <= MostLabel ? text : string.Concat(text.AsSpan(0, MostLabel - 1), "…");
}
