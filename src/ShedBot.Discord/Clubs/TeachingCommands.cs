using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Reporting;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>
/// The commands with which a club looks after its own rules. The platform shows them to every member, since whoever may propose is chosen by role with us; what
/// somebody may is asked on every act.
/// </summary>
internal static class TeachingCommands
{
    public const string Rules = "rules", Tip = "tip", PassOn = "Pass on as a tip";

    public const string Show = "show", Write = "write", GoOn = "go-on", Waiting = "waiting", FileIn = "file-in", FileOut = "file-out", Editions = "editions",
        TakeBack = "take-back", Log = "log", Tips = "tips", Settings = "settings", Reports = "reports", NotUnderstood = "words", Learn = "learn";

    public const string Sheet = "sheet", Proposal = "proposal", Answer = "answer", File = "file", Edition = "edition", Words = "words", Whole = "whole", Report = "report", Look = "look";

    public const string MayPropose = "may-propose", MayPublish = "may-publish", MayNoMore = "may-no-more", TwoPeople = "two-people", Learning = "learning", MostFactor = "most-times", MemberShare = "member-share";

    private const int InClub = 0, MostTyped = 100;

    /// <summary>As many letters as a tip may have.</summary>
    private const int MostWords = 1500;

    public static IReadOnlyList<Command> All { get; } =
    [
        new(Rules, CommandTypes.Slash, "For those who look after your club's own rules; shown to you alone", Contexts: [InClub], IntegrationTypes: [0], Options:
        [
            Sub(Show, "What stands and what waits"),
            Sub(Write, "A new rule, or a change of one, by short questions", Typed(Sheet, "What you would like to write; leave it out to see all")),
            Sub(GoOn, "Go on with what you have begun", Typed(Proposal, "Which; leave it out to see all"), Typed(Answer, "Your answer to the open question, where it is picked from a list")),
            Sub(Waiting, "Proposals that wait, and what you have begun"),
            Sub(FileIn, "Hand in your club's rules as a file", new CommandOption(File, "A text file, at most 256 kB", OptionTypes.Attachment, Required: true)),
            Sub(FileOut, "Take your club's rules out as a file"),
            Sub(Editions, "What was published, and when"),
            Sub(TakeBack, "Go back to an older edition; I ask first", new CommandOption(Edition, "Its number; 0 for the project's rules alone", OptionTypes.Whole, Required: true)),
            Sub(Log, "Who did what, and when", new CommandOption(Whole, "Also how drafts were written", OptionTypes.YesNo)),
            Sub(Tips, "What members have passed on"),
            Sub(Learn, "What your club's mended cases could teach, with the numbers"),
            Sub(
                Reports,
                "What your club's closed cases tell",
                new CommandOption(Report, "Which; leave it out to see all", OptionTypes.Text, Choices: [.. Enum.GetValues<ReportKind>().Select(k => new CommandChoice(ReportMenu.Called(k), k.ToString()))]),
                new CommandOption(Look, "How its picture looks; dark if you leave it out", OptionTypes.Text, Choices: [new("dark", nameof(PictureLook.Dark)), new("light", nameof(PictureLook.Light))])),
            Sub(NotUnderstood, "Words that were not understood, and what they mean"),
            Sub(
                Settings,
                "How your club goes about its rules; without a choice I tell how it is",
                new CommandOption(MayPropose, "A role that may write and try", OptionTypes.Role),
                new CommandOption(MayPublish, "A role that may publish", OptionTypes.Role),
                new CommandOption(MayNoMore, "A role that may neither any more", OptionTypes.Role),
                new CommandOption(TwoPeople, "Nobody publishes a proposal of their own", OptionTypes.YesNo),
                new CommandOption(Learning, "What is done with what mended cases teach", OptionTypes.Text, Choices:
                [
                    new("it is only counted", nameof(LearningMode.Off)),
                    new("it becomes a proposal", nameof(LearningMode.Proposals)),
                    new("it goes live by itself within the limits", nameof(LearningMode.Automatic)),
                ]),
                new CommandOption(MostFactor, "The most times that learning moves how common a cause is; 1 to 10", OptionTypes.Number),
                new CommandOption(MemberShare, "The most that one member counts for, in percent of all", OptionTypes.Number)),
        ]),
        new(Tip, CommandTypes.Slash, "Tell those who look after the rules what you know about the clutch", Contexts: [InClub], IntegrationTypes: [0], Options:
        [
            new CommandOption(Words, "What you have found, as you would tell a friend", OptionTypes.Text, Required: true, MaxLength: MostWords),
        ]),
        new(PassOn, CommandTypes.Message, Contexts: [InClub], IntegrationTypes: [0]),
    ];

    /// <summary>Whether a command, by its name, is one of these.</summary>
    public static bool Has(string? name) => name is Rules or Tip or PassOn;

    private static CommandOption Typed(string name, string description) => new(name, description, OptionTypes.Text, MaxLength: MostTyped, Autocomplete: true);

    private static CommandOption Sub(string name, string description, params CommandOption[] options) =>
        new(name, description, OptionTypes.SubCommand, Options: options.Length == 0 ? null : options);
}
