using System.Collections.Immutable;
using System.Text;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Problems;

namespace ShedBot.Coaching.Teaching;

/// <summary>A club's own rules as a file: out to be looked at or changed by hand, and in again as a proposal.</summary>
internal static class FileActs
{
    private const int MostTold = 10;

    public static async Task<TeachAnswer> DownloadAsync(TeachAct act)
    {
        await act.SaveAsync([act.Audit(AuditAct.Downloaded, act.Rules.Edition == 0 ? "" : TeachPress.Text(act.Rules.Edition), "took the rules out as a file")]);
        var text = act.Rules.Layer.As(act.Rules.Edition == 0 ? null : act.Rules.Edition).Write();
        return new TeachAnswer(
            new Card("Your club's own rules", [Say.Text(act.Rules.Layer.IsEmpty ? "There are none yet, so the file is nearly empty." : $"As of edition {act.Rules.Edition}. Change it in any editor and hand it in again: it is looked over and tried like everything else.")], []),
            Files: [new CopyFile(Layer.DefaultFile, "application/yaml", [.. Encoding.UTF8.GetBytes(text)])]);
    }

    public static async Task<TeachAnswer> UploadAsync(TeachAct act, UploadRules request)
    {
        if (request.Bytes.Length > Layer.MaxBytes) return TeachAnswer.No("big", $"That file has {request.Bytes.Length:N0} bytes; {Layer.MaxBytes:N0} are read at most.");
        var read = Layer.Read(new RuleText(Layer.DefaultFile, request.Bytes.AsMemory()));
        if (read.Layer is not { } wanted) return Broken(read.Problems);
        // What others have published since the file went out is kept: only what the file itself changes is taken from it.
        var from = act.Rules.Layer;
        if (wanted.Edition is { } number && number != act.Rules.Edition)
        {
            if (number == 0) from = Layer.Empty;
            else if (await act.Store.FindEditionAsync(act.Club, number, act.Ct) is { } edition) from = edition.ReadLayer();
            else return TeachAnswer.No("edition", $"The file says that it was edition {number}, and there is none. Download it anew, or take the line with the edition out.");
        }

        var changes = from.ChangesTo(wanted);
        if (changes.IsEmpty) return TeachAnswer.No("nothing", "The file says the same as the rules do now.");
        var id = await act.NextIdAsync('P', async i => await act.Store.FindProposalAsync(act.Club, i, act.Ct) is not null);
        var proposal = Proposal.New(id, act.Teacher with { Name = act.Name }, "", act.At) with
        {
            Version = 1,
            Changes = ChangesText.Write(changes),
            Title = changes.Length == 1 ? "From a file: one change" : $"From a file: {changes.Length} changes",
        };
        await act.SaveAsync([act.Audit(AuditAct.Uploaded, id, $"handed in the file \"{CleanText.OneLine(request.Name, 80)}\" with {(changes.Length == 1 ? "one change" : $"{changes.Length} changes")}")], proposal);
        return ProposalActs.Look(act, proposal);
    }

    private static TeachAnswer Broken(ImmutableArray<Problem> problems)
    {
        ImmutableArray<Problem> errors = [.. problems.Where(p => p.Severity == Severity.Error)];
        return new TeachAnswer(
            new Card(
                "The file cannot be used yet",
                [new ListBlock("", [.. errors.Take(MostTold).Select(p => $"Line {p.Line}: {p.What} {p.Mend}".TrimEnd())]), .. errors.Length > MostTold ? new CardBlock[] { Say.Text($"And {errors.Length - MostTold} more.") } : []],
                []),
            new Refusal("file", "The file cannot be used yet."));
    }
}
