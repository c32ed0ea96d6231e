using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Thinking;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Coaching.Speaking;

/// <summary>The cause, the reasons, the repair, the proof, the prevention.</summary>
internal static class RepairCards
{
    /// <summary>From this chance on a cause is named as found; below it the repair is offered as the thing worth trying first.</summary>
    private const double Found = 0.5;

    public static Card Cause(CaseView view, Ask open)
    {
        var repair = view.Knowledge.Repairs[open.Subject];
        var blocks = ImmutableArray.CreateBuilder<CardBlock>();
        var mended = Mended(view, repair);
        blocks.AddRange(CauseBlocks(view, mended));
        blocks.Add(Beliefs.Bars(view, 4));
        blocks.AddRange(RepairBlocks(view, repair));
        var (top, chance) = mended[0];
        var title = chance >= Found
            ? $"{Say.Capital(Beliefs.Word(chance))}: {Beliefs.Is(view.Knowledge, top)}"
            : $"Worth trying first: {repair.Does}";
        return new Card(title, blocks.ToImmutable(), CauseOptions(view, open), Beliefs.Progress(view));
    }

    public static Card Step(CaseView view, Ask open)
    {
        var repair = view.Knowledge.Repairs[open.Subject];
        var at = Math.Clamp(open.Position, 0, repair.Steps.Length - 1);
        var step = repair.Steps[at];
        var last = at == repair.Steps.Length - 1;
        return new Card(
            $"Step {at + 1} of {repair.Steps.Length}: {repair.Does}",
            [.. at == 0 ? Say.Cautions(repair.Cautions) : [], new StepsBlock("", at + 1, [new CardStep(step.Do, step.Note)])],
            [
                last ? Say.Option(open, OptionId.Done, "Done, that was the last one") : Say.Option(open, OptionId.StepByStep, "Done, next"),
                Say.Help(open, OptionId.Cannot, "I'm stuck here"),
                Say.Help(open, OptionId.Back, "Back"),
            ],
            Beliefs.Progress(view));
    }

    public static Card Prove(CaseView view, Ask open)
    {
        var repair = view.Knowledge.Repairs[open.Subject];
        return new Card(
            "Now prove that it holds",
            [.. Say.Steps("Prove it", repair.Prove), Say.Text("Then tell me how it went. If you can only ride tomorrow, answer tomorrow: I keep your place.")],
            [
                Say.Option(open, OptionId.Held, "It holds, the trouble is gone"),
                Say.Option(open, OptionId.Better, "Better, but not gone"),
                Say.Option(open, OptionId.NoChange, "No change"),
                Say.Help(open, OptionId.Back, "Back to the repair"),
            ],
            Beliefs.Progress(view));
    }

    public static Card Solved(CaseView view, Ask open, RepairRule repair, IReadOnlyList<(string Fault, double Chance)> causes, IReadOnlyList<string> alsoFound)
    {
        var blocks = ImmutableArray.CreateBuilder<CardBlock>();
        blocks.Add(Say.Text(causes.Count > 0
            ? $"So it was this: {Say.Join([.. causes.Select(c => Beliefs.Is(view.Knowledge, c.Fault))])}. I have written \"{repair.Does}\" into your bike's log."
            : $"I have written \"{repair.Does}\" into your bike's log."));
        if (alsoFound.Count > 0)
            blocks.Add(Say.Text($"Put this right too before you ride far, though the trouble is gone: {Say.Join(alsoFound)}."));
        blocks.AddRange(Say.List("Watch in the next rides", repair.Watch));
        blocks.AddRange(Say.List("So that it stays away", repair.Prevent));
        return new Card("Good. That is that mended.", blocks.ToImmutable(), [Say.Help(open, OptionId.CameBack, "It came back")]);
    }

    /// <summary>The faults that a repair can mend, most likely first; never empty.</summary>
    public static IReadOnlyList<(string Fault, double Chance)> Mended(CaseView view, RepairRule repair) =>
        [.. Beliefs.Ranked(view).Where(f => repair.Mends.ContainsKey(f.Fault))];

    public static ImmutableArray<CardOption> CauseOptions(CaseView view, Ask open) =>
    [
        Say.Option(open, OptionId.Done, "Done, now let me prove it"),
        .. view.Knowledge.Repairs[open.Subject].Steps.Length > 1 ? [Say.Option(open, OptionId.StepByStep, "One step at a time")] : Array.Empty<CardOption>(),
        Say.Option(open, OptionId.Cannot, "I can't do this one"),
        Say.Help(open, OptionId.Why, "Why do you think so?"),
        .. view.Standing.Any(Striking.MayGoBackTo) ? [Say.Help(open, OptionId.Back, "Back")] : Array.Empty<CardOption>(),
        Say.Help(open, OptionId.Helper, "I'd rather have a helper"),
    ];

    private static IEnumerable<CardBlock> CauseBlocks(CaseView view, IReadOnlyList<(string Fault, double Chance)> mended)
    {
        var (top, chance) = mended[0];
        if (view.Knowledge.Faults.TryGetValue(top, out var fault))
        {
            var alone = chance >= Found ? "" : $"{Say.Capital(Beliefs.Word(chance))}, but the cheapest thing to rule out next: {fault.Is}. ";
            yield return Say.Text(alone + fault.Because);
        }

        foreach (var block in Reasons.Blocks(view, top, 3, 1)) yield return block;

        // Several faults at once is the usual case on a neglected bike: say so rather than let the second one look like a failed repair.
        var also = Beliefs.Ranked(view)
            .Where(f => f.Fault != top && f.Chance >= Found && view.Knowledge.Faults.ContainsKey(f.Fault))
            .Select(f => $"{Beliefs.Is(view.Knowledge, f.Fault)} ({Beliefs.Word(f.Chance)})")
            .ToList();
        if (also.Count > 0) yield return Say.Text($"And there is more than one thing wrong, I think: {Say.Join(also)}. One after the other.");
    }

    private static IEnumerable<CardBlock> RepairBlocks(CaseView view, RepairRule repair)
    {
        yield return Say.Text($"The repair: {repair.Does}. About {Math.Round(repair.Minutes)} min"
            + (repair.Tools.IsEmpty ? ", no tools." : $"; {Say.Join(repair.Tools)}."));
        if (repair.ForHelper is not null) yield return Say.Text($"Let a practised hand do this one, or stand beside you: {repair.ForHelper}");
        foreach (var block in Say.List("Parts", repair.Parts.Select(p => $"{p.Name}: {p.Size}"))) yield return block;
        foreach (var block in Say.Cautions(repair.Cautions)) yield return block;
        if (repair.Cover is not null)
        {
            var cover = view.Knowledge.Covers[repair.Cover];
            foreach (var block in Say.Steps($"To get there, take off {cover.Called}", cover.How)) yield return block;
        }

        yield return new StepsBlock("In this order", 1, [.. repair.Steps.Select(s => new CardStep(s.Do, s.Note))]);
    }
}
