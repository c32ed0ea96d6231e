using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Speaking;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching;

/// <summary>Publishing, and taking back: each makes the next edition.</summary>
internal static class PublishActs
{
    public static async Task<TeachAnswer> PublishAsync(TeachAct act, Publish request)
    {
        if (await act.FindAsync(request.Proposal) is not { } proposal) return TeachAct.Gone;
        if (!proposal.IsOpen) return TeachAnswer.No("state", ProposalCards.Standing(proposal));
        if (proposal.Version != request.Version) return Again(act, proposal, "stale", "It was changed since you looked at it. Here it is as it is now.");
        if ((await act.Store.TeachingSettingsAsync(act.Club, act.Ct)).TwoPeople && proposal.By == act.Teacher.Who)
            return Again(act, proposal, "two-people", "In this club nobody publishes a proposal of their own. Hand it in, and somebody else publishes it.");
        if (ProposalActs.Unfit(act, proposal) is { } unfit) return unfit;
        if (await LearnActs.StaleAsync(act, proposal) is { } stale) return stale;
        if (proposal.Trial is not { } trial || !ProposalCards.IsOf(trial, act, proposal))
            return Again(act, proposal, "trial", proposal.Trial is null ? "Try it out first, so that you see what it does." : "The rules have changed since it was tried. Try it once more.");
        var check = Checked.Of(act.Rules, proposal, act.SheetOf(proposal));
        if (!trial.Safe || LayerSafety.Check(act.Rules.Base.Knowledge!, check.Knowledge!) is { IsEmpty: false }) return Again(act, proposal, "unsafe", "It would make the coach less safe, so it cannot be published. Try it out to see why.");

        var edition = Edition(act, check.Layer!, proposal.Learnt.Length == 0 ? act.Rules.Learnt : Kept(proposal.Learnt), proposal.Title, proposal.Id);
        var after = proposal with { State = ProposalState.Published, Edition = edition.Number, ChangedAt = act.At, Version = proposal.Version + 1 };
        var tip = proposal.Tip is { } id ? await act.Store.FindTipAsync(act.Club, id, act.Ct) : null;
        var used = tip is { State: TipState.Taken } && tip.Proposal == proposal.Id ? tip with { State = TipState.Used, Version = tip.Version + 1 } : null;
        await act.SaveAsync(
            [
                act.Audit(AuditAct.Published, Number(edition.Number), $"published {proposal.Id}, {proposal.Title}: {string.Join(' ', check.Reads.Concat(MoveCards.Short(act.Rules, proposal)))}"),
                .. used is null ? [] : new[] { act.Audit(AuditAct.TipUsed, used.Id, $"the tip of {TeachAct.NameOf(used.FromName)} became part of edition {Number(edition.Number)}") },
            ],
            after, used, edition: edition, say: Words(act, after, used));
        return new TeachAnswer(Done($"Edition {Number(edition.Number)} is out", $"{proposal.Title}. It counts from the next thing anybody says to the coach.", edition.Number), null, after, Edition: edition.Number);
    }

    /// <summary>What taking back would mean.</summary>
    public static async Task<TeachAnswer> AskAsync(TeachAct act, AskTakeBack request)
    {
        var (to, refused) = await ToAsync(act, request.Edition);
        if (refused is not null) return refused;
        var changes = act.Rules.Layer.ChangesTo(to!.Layer);
        return new TeachAnswer(new Card(
            $"Take back to {Called(request.Edition)}?",
            [
                .. Say.List("That would change", new RuleReading(act.Rules.Knowledge, to.Load.Knowledge).Of(changes)),
                .. await HeldNumbers.TakenBackAsync(act, to),
                Say.Text("Nothing is lost: what is taken back stays an edition, and can be brought back in the same way."),
            ],
            [
                new TeachPress(TeachVerb.TakeBack, Number(request.Edition), Number(act.Rules.Edition)).Option($"Yes, take back to {Called(request.Edition)}"),
                new TeachPress(TeachVerb.Editions).Option("No, leave it", OptionRole.Help),
            ]));
    }

    public static async Task<TeachAnswer> TakeBackAsync(TeachAct act, TakeBack request)
    {
        if (request.Newest != act.Rules.Edition)
            return TeachAnswer.No("stale", $"Somebody has published edition {Number(act.Rules.Edition)} in the meantime. Look at the editions again before you take anything back.");
        var (to, refused) = await ToAsync(act, request.Edition);
        if (refused is not null) return refused;
        if (LayerSafety.Check(act.Rules.Base.Knowledge!, to!.Knowledge) is { IsEmpty: false } weaker)
            return TeachAnswer.No("unsafe", $"With the project's rules as they are now that edition would make the coach less safe: {weaker[0].What}");
        var (learnt, book) = await HeldNumbers.OfTakenBackAsync(act, to);
        var edition = Edition(act, to.Layer, learnt, $"Taken back to {Called(request.Edition)}", null);
        await act.SaveAsync([act.Audit(AuditAct.TookBack, Number(edition.Number), $"took back to {Called(request.Edition)}")], edition: edition, book: book);
        return new TeachAnswer(Done($"Taken back to {Called(request.Edition)}", $"It is edition {Number(edition.Number)} now, and counts from the next thing anybody says to the coach.", edition.Number), Edition: edition.Number);
    }

    private static async Task<(RulesNow? To, TeachAnswer? Refused)> ToAsync(TeachAct act, int number)
    {
        if (number == act.Rules.Edition) return (null, TeachAnswer.No("same", number == 0 ? "There is nothing to take back: the club has no rules of its own." : $"Edition {Number(number)} is the one that counts now."));
        var edition = number == 0 ? null : await act.Store.FindEditionAsync(act.Club, number, act.Ct);
        if (number < 0 || (number > 0 && edition is null)) return (null, TeachAnswer.No("gone", "There is no such edition. Editions are shown by rules editions."));
        var (layer, learnt) = (edition is null ? Layer.Empty : edition.ReadLayer(), edition?.Learnt ?? "");
        return (new RulesNow(act.Rules.Base, number, layer, learnt, LayeredRules.LoadKept(act.Rules.Base, layer, RulesNow.Options(learnt))), null);
    }

    public static RulesEdition Edition(TeachAct act, Layer layer, string learnt, string what, string? proposal)
    {
        var number = act.Rules.Edition + 1;
        return new RulesEdition(act.Club, number, layer.IsEmpty ? "" : layer.As(number).Write(), learnt, what, proposal, act.Teacher.Who, act.Name, act.Rules.BaseVersion, act.At);
    }

    /// <summary>Nothing learnt is kept as nothing.</summary>
    private static string Kept(string learnt) => LearntText.Read(learnt).Learnt is { IsNothing: true } ? "" : learnt;

    private static ImmutableArray<OutboxMessage> Words(TeachAct act, Proposal published, Tip? used) =>
    [
        .. used is null ? [] : new[]
        {
            act.Word(used.From, $"{used.Id}/used", new Card("Your tip is part of the rules now", [Say.Text($"You said: \"{CleanText.OneLine(used.Words, 300)}\""), Say.Text($"It became: {published.Title}. Thank you! The next rider with that trouble has it easier.")], [])),
        },
        .. published.By == act.Teacher.Who || published.By == default ? [] : new[]
        {
            act.Word(published.By, $"{published.Id}/published", new Card("Your proposal is published", [Say.Text($"{published.Title}. It is edition {Number(published.Edition)}, and counts from now on.")], [])),
        },
    ];

    private static TeachAnswer Again(TeachAct act, Proposal proposal, string code, string say) => new(ProposalCards.Of(act, proposal, lead: say), new Refusal(code, say), proposal);

    private static Card Done(string title, string say, int edition) => new(
        title,
        [Say.Text(say)],
        [new TeachPress(TeachVerb.AskTakeBack, Number(edition - 1)).Option("take it back", OptionRole.Help), new TeachPress(TeachVerb.Log).Option("what was done", OptionRole.Help), new TeachPress(TeachVerb.Rules).Option("the rules", OptionRole.Help)]);

    private static string Called(int edition) => edition == 0 ? "the project's rules alone" : $"edition {Number(edition)}";

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
