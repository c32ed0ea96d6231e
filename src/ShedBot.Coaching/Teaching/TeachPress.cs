using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Coaching.Teaching.Reporting;

namespace ShedBot.Coaching.Teaching;

/// <summary>What an option of a teaching card does. Its names stand in the ids of options: never rename a member.</summary>
public enum TeachVerb
{
    /// <summary>What stands and what waits.</summary>
    Rules,
    Waiting,

    /// <summary>One proposal.</summary>
    Look,

    /// <summary>The sheets to choose from; for a tip when one is named.</summary>
    Sheets,

    /// <summary>Begins a sheet; for a tip when one is named.</summary>
    Begin,

    /// <summary>The next question, or the one named.</summary>
    GoOn,

    /// <summary>An answer that was picked.</summary>
    Say,

    /// <summary>Passes over a question that may be.</summary>
    Skip,

    /// <summary>All that a sheet was told.</summary>
    Sheet,
    HandIn,
    Try,
    Publish,

    /// <summary>Turns a proposal down; wants a reason.</summary>
    Refuse,
    Withdraw,
    AskTakeBack,
    TakeBack,
    Download,
    Tips,
    Tip,

    /// <summary>Turns a tip down; wants a reason.</summary>
    Decline,
    Log,
    WholeLog,
    Editions,
    Conflicts,
    Settings,
    TwoPeople,

    /// <summary>How the club learns.</summary>
    Learning,

    /// <summary>What could be learnt.</summary>
    Learn,
    ProposeLearnt,
    CountAnew,

    /// <summary>The numbers of a proposal that was counted.</summary>
    Numbers,
    Number,
    LeaveOut,
    Never,

    /// <summary>The reports to choose from.</summary>
    Reports,
    Report,

    /// <summary>Words that were not understood.</summary>
    Unheard,
    UnheardWords,

    /// <summary>Begins the sheet that teaches words.</summary>
    Means,

    /// <summary>Looks for what words mean; wants words of what is meant.</summary>
    OtherMeaning,
    MeansNothing,

    /// <summary>Begins a cause for a complaint, or for one that is not in the rules.</summary>
    CauseFor,
    CheckFor,

    /// <summary>Begins a check of a finding.</summary>
    CheckOf,

    /// <summary>All that the trial of a proposal measured.</summary>
    Figures,
}

/// <summary>An option of a teaching card; its text is the option's id. Says all by itself, so that a press is understood however late it comes.</summary>
/// <param name="A">The proposal, tip, sheet or edition; see <see cref="Request"/>.</param>
/// <param name="B">The question, version or second number.</param>
/// <param name="C">The value.</param>
public sealed record TeachPress(TeachVerb Verb, string A = "", string B = "", string C = "")
{
    private const string Prefix = "teach";
    private const char Between = '|';

    /// <returns>As in "teach|Say|P12|complaint|drags".</returns>
    public override string ToString() => string.Join(Between, Prefix, Verb, A, B, C);

    public CardOption Option(string label, OptionRole role = OptionRole.Answer) => new(ToString(), label, role);

    /// <returns>The press, or null when the text was never one of ours.</returns>
    public static TeachPress? Read(string option) => option.Split(Between) is [Prefix, var verb, var a, var b, var c] && Enum.IsDefined(typeof(TeachVerb), verb)
        ? new TeachPress(Enum.Parse<TeachVerb>(verb), a, b, c)
        : null;

    /// <summary>True when words must be told first: <see cref="With"/> then makes the request.</summary>
    public bool WantsWords => Verb is TeachVerb.Refuse or TeachVerb.Decline or TeachVerb.OtherMeaning;

    /// <summary>What to ask for the words; empty when none are wanted.</summary>
    public string AsksFor => Verb switch
    {
        TeachVerb.Refuse => "Why not? A sentence for its author.",
        TeachVerb.Decline => "Why not? A kind sentence for who gave it.",
        TeachVerb.OtherMeaning => "What do they mean? Some words of it.",
        _ => "",
    };

    /// <summary>The heading over it.</summary>
    public string AsksTitle => Verb == TeachVerb.OtherMeaning ? "Something else" : "Why not?";

    public TeachRequest? With(string words) => Verb switch
    {
        TeachVerb.Refuse => new Refuse(A, words),
        TeachVerb.Decline => new DeclineTip(A, words),
        TeachVerb.OtherMeaning => new SearchMeaning(A, words),
        _ => Request,
    };

    /// <summary>What is asked for; null when words must be told first, or when it was never one of ours.</summary>
    public TeachRequest? Request => Verb switch
    {
        TeachVerb.Rules => new ShowRules(),
        TeachVerb.Waiting => new ShowWaiting(),
        TeachVerb.Look => new ShowProposal(A),
        TeachVerb.Sheets => new ChooseSheet(A.Length > 0 ? A : null),
        TeachVerb.Begin => new BeginSheet(A, B.Length > 0 ? B : null),
        TeachVerb.GoOn => new GoOn(A, B.Length > 0 ? B : null),
        TeachVerb.Say => new AnswerSheet(A, B, C),
        TeachVerb.Skip => new AnswerSheet(A, B),
        TeachVerb.Sheet => new ShowSheet(A),
        TeachVerb.Figures => new ShowFigures(A),
        TeachVerb.HandIn => new HandIn(A),
        TeachVerb.Try => new TryOut(A),
        TeachVerb.Publish => Number(B) is { } version ? new Publish(A, version) : null,
        TeachVerb.Withdraw => new Withdraw(A),
        TeachVerb.AskTakeBack => Number(A) is { } edition ? new AskTakeBack(edition) : null,
        TeachVerb.TakeBack => Number(A) is { } edition && Number(B) is { } newest ? new TakeBack(edition, newest) : null,
        TeachVerb.Download => new DownloadRules(),
        TeachVerb.Tips => new ShowTips(),
        TeachVerb.Tip => new ShowTip(A),
        TeachVerb.Log => new ShowLog(Before(A)),
        TeachVerb.WholeLog => new ShowLog(Before(A), Whole: true),
        TeachVerb.Editions => new ShowEditions(),
        TeachVerb.Conflicts => new ShowConflicts(),
        TeachVerb.Settings => new ShowTeachingSettings(),
        TeachVerb.TwoPeople => new ChooseTeaching(TwoPeople: A == "on"),
        TeachVerb.Learning => Enum.IsDefined(typeof(LearningMode), A) ? new ChooseTeaching(Learning: Enum.Parse<LearningMode>(A)) : null,
        TeachVerb.Learn => new ShowLearning(),
        TeachVerb.ProposeLearnt => new ProposeLearnt(),
        TeachVerb.CountAnew => new CountAnew(A),
        TeachVerb.Numbers => new ShowNumbers(A, Number(B) ?? 0),
        TeachVerb.Number => new ShowNumber(A, B),
        TeachVerb.LeaveOut => new LeaveOut(A, B, C == "out"),
        TeachVerb.Never => new NeverLearn(A, B == "on"),
        TeachVerb.Reports => new ShowReports(),
        TeachVerb.Report => Named<ReportKind>(A) is { } kind ? new ShowReport(kind, Named<PictureLook>(B) ?? PictureLook.Dark) : null,
        TeachVerb.Unheard => new ShowUnheard(Number(A) ?? 0),
        TeachVerb.UnheardWords => new ShowUnheardWords(A),
        TeachVerb.Means => new TeachMeaning(A, B),
        TeachVerb.MeansNothing => new DropUnheard(A),
        TeachVerb.CauseFor => RuleStarts.Cause(A),
        TeachVerb.CheckFor => new ChooseCheckFor(A),
        TeachVerb.CheckOf => RuleStarts.Check(A),
        _ => null,
    };

    /// <summary>A number as a press carries it.</summary>
    public static string Text(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static int? Number(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    /// <summary>By its whole name alone: a number would do for a member too, and is never ours.</summary>
    private static T? Named<T>(string text) where T : struct, Enum => Enum.GetNames<T>().Contains(text, StringComparer.Ordinal) ? Enum.Parse<T>(text) : null;

    private static long Before(string text) => long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : long.MaxValue;
}
