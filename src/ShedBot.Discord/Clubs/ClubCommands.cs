using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>The commands of a club, in the plain words of the trade.</summary>
internal static class ClubCommands
{
    public const string Trouble = "trouble", Case = "case", Bike = "bike", ShedBot = "shedbot", Club = "club", CoachThis = "Coach this";

    public const string Words = "words", Private = "private", Who = "who";

    public const string GoOn = "go-on", Thoughts = "thoughts", Helper = "helper", Leave = "leave";

    public const string About = "about", Privacy = "privacy";

    public const string SetUp = "set-up", Check = "check", HelpChannel = "help-channel", HelperRole = "helper-role", Units = "units", TimeZone = "time-zone";

    public const string Ride = "ride", Log = "log", Pause = "pause", Again = "again", Pace = "pace", Undo = "undo";

    public const string Service = "service", Plan = "plan", Done = "done", How = "how", Fitted = "fitted", Export = "export", Timeline = "timeline";

    public const string Reminders = "reminders", On = "on", Off = "off", Quiet = "quiet", Zone = "zone", Place = "place";

    public const string Hours = "hours", City = "city", Channel = "channel", Nowhere = "nowhere";

    public const string Distance = "distance", Time = "time", Weather = "weather", Day = "day", Until = "until", DaysAWeek = "days-a-week", Whole = "whole", Task = "task", Look = "look";

    public const string Show = "show", Tell = "tell", List = "list", New = "new", Use = "use", Name = "name", Remove = "remove", What = "what", Value = "value";

    private const int MostTyped = 100;

    private const int InClub = 0, WithUs = 1;

    public static IReadOnlyList<Command> All { get; } =
    [
        Slash(Trouble, "Something is wrong with the clutch: I find out with you what it is", [InClub],
        [
            new CommandOption(Words, "What the bike does, as you would tell a friend", OptionTypes.Text, MaxLength: 1500),
            new CommandOption(Private, "Only you, I and the moderators see it", OptionTypes.YesNo),
            BikeOption,
        ]),
        Slash(Case, "Your case in this thread", [InClub],
        [
            Sub(GoOn, "Put the open question once more at the end of the thread"),
            Sub(Thoughts, "What I think so far, and how surely; shown to you alone"),
            Sub(Helper, "Let somebody answer for you", new CommandOption(Who, "Who may answer", OptionTypes.User, Required: true)),
            Sub(Leave, "Put the case away"),
        ]),
        Slash(Bike, "What I know of your bike, or bikes; shown to you alone", [InClub],
        [
            Sub(Show, "What is known of it, what follows from that, and the work done on it", BikeOption),
            Sub(Tell, "One fact of it, as you like to write it", FactOption, Typed(Value, "Such as 18.2 mm; leave it out when it is not known any more"), BikeOption),
            Sub(SetUp, "Three short forms to fill in what you know", BikeOption),
            Sub(List, "Your bikes, and which one we talk of"),
            Sub(New, "One more bike", Typed(Name, "What you call it", required: true)),
            Sub(Use, "Talk of another bike from now on", BikeOption with { Required = true }),
            Sub(Name, "Give the bike we talk of a name", Typed(Name, "What you call it", required: true)),
            Sub(Remove, "Remove a bike with all that is kept of it; I ask first", BikeOption with { Required = true }),
        ]),
        Slash(Ride, "How you ride, for your bike's service plan; shown to you alone", [InClub], OfABike(
        [
            Sub(Log, "You rode", Typed(Distance, "Such as 12 km or 8 miles"), Typed(Time, "Such as 40 min or 1 h 20"), Weathers, Typed(Day, "When it was not today: yesterday, sunday, 1 march")),
            Sub(Pause, "You are not riding for a while", Typed(Until, "The day you ride again, such as 1 march; leave it out if you don't know")),
            Sub(Again, "You ride again, sooner than you said"),
            Sub(
                Pace,
                "How much you usually ride, told once",
                Typed(DaysAWeek, "Riding days in a week, such as 4", required: true),
                Typed(Distance, "On such a day, about: 10 km or 6 miles"),
                Typed(Time, "On such a day, about: 40 min")),
            Sub(Undo, "Take your last entry back, of a ride or of a service"),
        ])),
        Slash(Service, "What your bike needs, and when; shown to you alone", [InClub], OfABike(
        [
            Sub(Plan, "What is due next", new CommandOption(Whole, "All of it, not only the soonest", OptionTypes.YesNo)),
            Sub(
                Timeline,
                "What was done, what is due and what is coming, as a picture",
                new CommandOption(Look, "How the picture looks; dark if you leave it out", OptionTypes.Text, Choices: [new("dark", "dark"), new("light", "light")])),
            Sub(Done, "You have done a task", TaskOption, Typed(Day, "When it was not today: yesterday, sunday, 1 march")),
            Sub(How, "How a task is done: tools, cautions, steps", TaskOption),
            Sub(Fitted, "When the engine kit was fitted", Typed(Day, "Such as 2026-03-01 or 1 march", required: true)),
            Sub(Undo, "Take your last entry back, of a ride or of a service"),
            Sub(Export, "Your rides, work and bike as files to take away"),
        ])),
        Slash(Reminders, "A message from me when something falls due on your bike; shown to you alone", [InClub],
        [
            Sub(Show, "How they stand"),
            Sub(On, "Remind me", Typed(Time, "Around when, such as 18:00 or 7 pm")),
            Sub(Off, "Stop all reminders"),
            Sub(Quiet, "When I never write", Typed(Hours, "Such as 21:00 to 8:00; or none", required: true)),
            Sub(
                Zone,
                "The time zone you live in, when it is not the club's",
                new CommandOption(City, "Type your city and choose, as in Europe/Lisbon", OptionTypes.Text, Required: true, MaxLength: MostTyped, Autocomplete: true)),
            Sub(
                Again,
                "Hear again of what you had stopped",
                new CommandOption(Task, "Which; leave it out for all", OptionTypes.Text, MaxLength: MostTyped, Autocomplete: true)),
            Sub(
                Place,
                "Where I may mention you, once, when I cannot write to you; here unless you choose another",
                new CommandOption(Channel, "A channel that you read", OptionTypes.Channel, ChannelTypes: [ChannelTypes.Text, ChannelTypes.PublicThread, ChannelTypes.PrivateThread]),
                new CommandOption(Nowhere, "Never mention me", OptionTypes.YesNo)),
        ]),
        Slash(ShedBot, "About ShedBot, what it keeps, and how to leave", [InClub, WithUs],
        [
            Sub(About, "What I can do"),
            Sub(Privacy, "What I keep of you, for how long, and who sees it"),
            Sub(Leave, "Have everything removed that I keep of you"),
        ]),
        Slash(Club, "For moderators: how ShedBot works in this club", [InClub],
        [
            Sub(
                SetUp,
                "Choose where I help; without a choice I tell how it is",
                new CommandOption(HelpChannel, "Where members ask for help", OptionTypes.Channel, ChannelTypes: [ChannelTypes.Text, ChannelTypes.Forum]),
                new CommandOption(HelperRole, "Who is called when a case needs a human", OptionTypes.Role),
                new CommandOption(Units, "The units that the club thinks in", OptionTypes.Text, Choices: [new("millimetres and kilometres", "Metric"), new("inches and miles", "Imperial")]),
                new CommandOption(TimeZone, "Where the club rides, such as Europe/Lisbon", OptionTypes.Text, MaxLength: 60)),
            Sub(Check, "Look whether I may do all that I must"),
        ]) with { DefaultMemberPermissions = ((ulong)Rights.ManageGuild).ToString(System.Globalization.CultureInfo.InvariantCulture) },
        new Command(CoachThis, CommandTypes.Message, Contexts: [InClub], IntegrationTypes: [0]),
        .. TeachingCommands.All,
    ];

    private static CommandOption Weathers => new(
        Weather, "What it was like; dry if you leave it out", OptionTypes.Text, Choices: [new("dry", "dry"), new("wet or muddy", "wet"), new("dusty", "dusty")]);

    private static CommandOption TaskOption => new(Task, "Type a word of it and choose", OptionTypes.Text, Required: true, MaxLength: MostTyped, Autocomplete: true);

    /// <summary>For whoever keeps several; never asked of whoever keeps one.</summary>
    private static CommandOption BikeOption => new(Bike, "Which of your bikes, if you keep several", OptionTypes.Text, MaxLength: MostTyped, Autocomplete: true);

    private static IReadOnlyList<CommandOption> OfABike(IReadOnlyList<CommandOption> subs) => [.. subs.Select(s => s.Name == Export ? s : s with { Options = [.. s.Options ?? [], BikeOption] })];

    private static CommandOption FactOption => new(What, "Type a word of it and choose", OptionTypes.Text, Required: true, MaxLength: MostTyped, Autocomplete: true);

    private static CommandOption Typed(string name, string description, bool required = false) =>
        new(name, description, OptionTypes.Text, Required: required ? true : null, MaxLength: MostTyped);

    private static Command Slash(string name, string description, IReadOnlyList<int> contexts, IReadOnlyList<CommandOption>? options) =>
        new(name, CommandTypes.Slash, description, options, Contexts: contexts, IntegrationTypes: [0]);

    private static CommandOption Sub(string name, string description, params CommandOption[] options) =>
        new(name, description, OptionTypes.SubCommand, Options: options.Length == 0 ? null : options);
}
