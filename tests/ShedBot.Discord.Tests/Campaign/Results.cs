using System.Globalization;
using System.Text;
using ShedBot.Discord.Tests.EndToEnd;

namespace ShedBot.Discord.Tests.Campaign;

/// <summary>The sums of a campaign, and the page that tells of them.</summary>
internal sealed class Results(int seed, int wanted)
{
    private readonly DateTime began = DateTime.UtcNow;

    public int Rounds { get; set; }

    public int Turns { get; set; }

    public int Deeds { get; set; }

    public int Silent { get; set; }

    public int NeededRestart { get; set; }

    public List<string> Lost { get; } = [];

    public List<string> Doubled { get; } = [];

    public List<string> Mismatched { get; } = [];

    public void Add(Inspection seen)
    {
        Turns += seen.Turns;
        Silent += seen.Silent;
        Lost.AddRange(seen.Lost);
        Doubled.AddRange(seen.Doubled);
        Mismatched.AddRange(seen.Mismatched);
    }

    public string Page(CampaignClub club)
    {
        var page = new StringBuilder();
        var counts = club.Platform.Faults.Injected;
        page.AppendLine("# What goes wrong on the platform, and what it costs").AppendLine();
        page.AppendLine("Invented riders of an invented club begin cases, answer by buttons, lists, words and forms, look on, call a helper and leave, others chat and use commands of no case, while the stand-in for the");
        page.AppendLine("platform injects faults by a seeded plan and the program is ended or killed at random moments and started again on the same data file. After each round the");
        page.AppendLine("faults stop, all that is left is said, and what is kept is compared with what the platform shows. The plan is seeded; which task meets which fault is up to");
        page.AppendLine("the machine, so a second run injects the same kinds at the same rates, not the very same story.").AppendLine();
        page.AppendLine("```").AppendLine(CultureInfo.InvariantCulture, $"SHEDBOT_FAULTS={wanted} dotnet test -c Release tests/ShedBot.Discord.Tests --filter FaultCampaign").AppendLine("```").AppendLine();
        page.AppendLine("Two cores shared with other work while it ran; connection pauses and heartbeats twenty times as quick as on the platform, everything else in true time.").AppendLine();
        page.AppendLine("Does it bite? Once both guards against doubling were taken out (the nonce of a message, and the look into the thread where it is not known whether one went");
        page.AppendLine("out), a run of 853 faults found six messages doubled. With the nonce alone taken out, a run of 1,200 found none.").AppendLine();
        page.AppendLine("| | |").AppendLine("| --- | --: |");
        Row("seed", seed);
        Row("faults injected", counts.Values.Sum());
        Row("faults wanted", wanted);
        Row("minutes", (int)Math.Ceiling((DateTime.UtcNow - began).TotalMinutes));
        Row("rounds", Rounds);
        Row("deeds of riders that could be turns", Deeds);
        Row("turns taken", Turns);
        Row("restarts in good order", club.Restarts);
        Row("restarts after a kill", club.Kills);
        Row("**turns lost** after they were shown as taken", Lost.Count);
        Row("**messages, threads or turns doubled**", Doubled.Count);
        Row("**kept and shown differ**", Mismatched.Count);
        Row("**crashes**", club.Crashes.Count);
        Row("errors logged that are mistakes of ours", club.Errors.Count);
        Row("requests that broke the platform's rules", club.Platform.Violations.Count);
        Row("deeds whose every try failed, their rider told to repeat them", club.ToldToRepeat);
        Row("presses announced, then neither counted nor told (the question stood unchanged)", Silent);
        Row("rounds whose last words came only with a restart (else ten minutes later)", NeededRestart);
        page.AppendLine().AppendLine("| fault | times |").AppendLine("| --- | --: |");
        foreach (var (kind, times) in counts.OrderBy(c => c.Key)) Row(kind.ToString(), times);
        return page.ToString();

        void Row(string what, int number) => page.AppendLine(CultureInfo.InvariantCulture, $"| {what} | {number:N0} |");
    }

    /// <summary>The file docs/fault-campaign.md of this checkout.</summary>
    public static string File => Path.Combine(Path.GetDirectoryName(ConversationScript.Folder())!, "fault-campaign.md");
}
