using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Logbook;

namespace ShedBot.Practice;

/// <summary>The guided set-up of a bike at the practice terminal. While it is open a line is an answer to it, unless it tells of a trouble.</summary>
internal sealed class SettingUp(Logbook logbook, PracticeRules rules, Panel panel, Speakers speakers, TimeProvider clock)
{
    private static readonly HashSet<string> Beginnings = new(
        ["set up", "set-up", "setup", "set up my bike", "set up the bike", "set my bike up", "bike set up", "bike set-up", "bike setup"], StringComparer.OrdinalIgnoreCase);

    private GuidedSetUp? open;

    public bool IsOpen => open is not null;

    public static bool Begins(string line) => Beginnings.Contains(line.Trim().TrimEnd('.', '!'));

    public async Task BeginAsync(MemberName member, CancellationToken ct)
    {
        var (bike, speaker) = (await logbook.BikeAsync(member, ct), await speakers.OfAsync(member, ct));
        open = GuidedSetUp.Begin(bike, rules.Knowledge, speaker, clock.GetUtcNow());
        if (open is null) panel.ShowAside(GuidedSetUp.NothingToAsk);
        else await AskAsync(member, GuidedSetUp.Opening, ct);
    }

    /// <summary>Another member, or something else to do: what was answered is kept.</summary>
    public void Leave() => open = null;

    /// <returns>False when no set-up is open, or the line is not for it: then it is closed, and the line is for whoever comes next.</returns>
    public async Task<bool> TakeAsync(MemberName member, string line, CancellationToken ct)
    {
        if (open is not { } at) return false;
        var picked = panel.Keys.Find(line.Trim().TrimEnd('.', ')')) is { } option ? GuidedSetUp.Picked(option.Id) : null;
        if (picked is null && rules.Coach.Hears(line)) return Give();
        SetUpAnswer answer = picked is not null ? new SetUpTold(picked) : at.Read(line, rules.Knowledge, await speakers.OfAsync(member, ct), clock.GetUtcNow());
        // "rode 12 km" and "plan" are no answers, and what they ask for is done.
        if (answer is SetUpUnclear && await logbook.ReadAsync(member, line, loose: false, ct) is { Refused: null }) return Give();
        switch (answer)
        {
            case SetUpTold told:
                await logbook.TakeAsync(member, (BikeRequest)new TellEntry([told.Fact]), ct);
                await GoToAsync(member, at.Next(), null, ct);
                break;
            case SetUpSkip:
                await GoToAsync(member, at.Next(), null, ct);
                break;
            case SetUpBack:
                await GoToAsync(member, at.Back(), null, ct);
                break;
            case SetUpUnclear unclear:
                await GoToAsync(member, at, unclear.Say, ct);
                break;
            default:
                Close(whole: false);
                break;
        }

        return true;
    }

    /// <summary>What is typed is for somebody else; the set-up can be begun again at any time.</summary>
    private bool Give()
    {
        Leave();
        panel.Clear();
        return false;
    }

    private async Task GoToAsync(MemberName member, GuidedSetUp to, string? lead, CancellationToken ct)
    {
        open = to;
        if (to.IsOver) Close(whole: true);
        else await AskAsync(member, lead, ct);
    }

    private async Task AskAsync(MemberName member, string? lead, CancellationToken ct)
    {
        panel.Clear();
        var card = open!.Question(await logbook.BikeAsync(member, ct), rules.Knowledge, await speakers.OfAsync(member, ct), clock.GetUtcNow(), lead);
        if (card is null) Close(whole: false);
        else panel.Show(card);
    }

    private void Close(bool whole)
    {
        open = null;
        panel.Clear();
        panel.ShowAside(GuidedSetUp.Done(whole));
    }
}
