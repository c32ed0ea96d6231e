using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Speaking;

namespace ShedBot.Coaching.Teaching;

/// <summary>What members know: passed on, looked at, turned down kindly. Taking one up begins a sheet.</summary>
internal static class TipActs
{
    /// <summary>Of the words of a tip, in characters.</summary>
    public const int MostWords = 1500;

    /// <summary>That one member may have waiting.</summary>
    public const int MostWaiting = 10;

    private const int MostRead = 100, MostWhere = 300;

    public static async Task<TeachAnswer> PassAsync(TeachAct act, PassTip request)
    {
        var words = CleanText.Of(request.Words).Trim();
        if (!words.Any(char.IsLetterOrDigit)) return TeachAnswer.No("empty", "Say what you know, in a sentence or two.");
        if (words.Length > MostWords) return TeachAnswer.No("long", $"That is {words.Length} letters long; {MostWords} fit. What is the heart of it?");
        var from = request.From ?? act.Teacher.Who;
        if (ClubId.Serving(from) != act.Club) return TeachAct.Gone;
        if (request.Id is { } given && await act.Store.FindTipAsync(act.Club, given, act.Ct) is not null) return new TeachAnswer(Thanks(act, from, request.FromName));
        if ((await act.Store.TipsAsync(act.Club, TipState.Waiting, MostRead, act.Ct)).Count(t => t.PassedOnBy == act.Teacher.Who) >= MostWaiting)
            return TeachAnswer.No("many", $"{MostWaiting} tips of yours are waiting to be read. Thank you! Give them a little time.");
        var id = request.Id ?? await act.NextIdAsync('T', async i => await act.Store.FindTipAsync(act.Club, i, act.Ct) is not null);
        var name = TeachAct.NameOf(request.FromName.Length > 0 ? request.FromName : act.Teacher.Name);
        var tip = new Tip(id, act.Club, from, name, act.Teacher.Who, words, CleanText.OneLine(request.Where, MostWhere), TipState.Waiting, null, "", act.At, 1);
        await act.SaveAsync([act.Audit(AuditAct.TipCame, id, from == act.Teacher.Who ? "gave a tip" : $"passed on what {name} said")], tip: tip);
        return new TeachAnswer(Thanks(act, from, name));
    }

    public static async Task<TeachAnswer> ListAsync(TeachAct act) => new(TipCards.List(await act.Store.TipsAsync(act.Club, TipState.Waiting, MostRead, act.Ct)));

    public static async Task<TeachAnswer> ShowAsync(TeachAct act, ShowTip request) =>
        await act.Store.FindTipAsync(act.Club, request.Tip, act.Ct) is { } tip ? new TeachAnswer(TipCards.Of(tip)) : TeachAct.Gone;

    public static async Task<TeachAnswer> DeclineAsync(TeachAct act, DeclineTip request)
    {
        if (await act.Store.FindTipAsync(act.Club, request.Tip, act.Ct) is not { } tip) return TeachAct.Gone;
        if (tip.State != TipState.Waiting) return TeachAnswer.No("taken", TipCards.WhyNotWaiting(tip));
        if (ProposalActs.Reason(request.Reason) is not { } reason) return TeachAnswer.No("reason", "Say why in a kind sentence; it goes to who gave the tip.");
        var after = tip with { State = TipState.Declined, Answer = reason, Version = tip.Version + 1 };
        var no = new Card(
            "About your tip",
            [Say.Text($"You said: \"{CleanText.OneLine(tip.Words, 300)}\""), Say.Text($"Thank you for it. This time it did not become a rule: {reason}"), Say.Text("Please go on telling us what you find.")],
            []);
        await act.SaveAsync([act.Audit(AuditAct.TipDeclined, tip.Id, $"declined the tip of {TeachAct.NameOf(tip.FromName)}: {reason}")], tip: after, say: [act.Word(tip.From, $"{tip.Id}/declined", no)]);
        return new TeachAnswer(new Card("Declined", [Say.Text("Who gave it is told kindly, with your reason.")], [new TeachPress(TeachVerb.Tips).Option("the other tips", OptionRole.Help)]));
    }

    private static Card Thanks(TeachAct act, MemberId from, string name) => new(
        "Thank you", [Say.Text($"It is passed on to those who look after the rules. {(from == act.Teacher.Who ? "You hear" : $"{TeachAct.NameOf(name)} hears")} from me when it is used, or why not.")], []);
}
