using System.Globalization;
using ShedBot.Coaching.Cases;

namespace ShedBot.Coaching.Turns;

/// <summary>The id of an option: which question it answers and what it says, so that a press can be judged late, twice, or made up.</summary>
/// <param name="Serial">The serial of the question.</param>
/// <param name="Token">What it says, such as <c>state:full</c> or <c>not-sure</c>.</param>
public readonly record struct OptionId(int Serial, string Token)
{
    public const string NotSure = "not-sure", Cannot = "cannot", ShowMe = "show-me", Why = "why", Back = "back", Leave = "leave",
        Ready = "ready", NotYet = "not-yet", Done = "done", StepByStep = "step-by-step", Held = "held", Better = "better",
        NoChange = "no-change", CameBack = "came-back", NoneOfThese = "none-of-these", Helper = "helper",
        Safe = "safe", Change = "change", GoOn = "go-on";

    private const string StatePrefix = "state:", ComplaintPrefix = "complaint:", DangerPrefix = "danger:", AnswerPrefix = "answer:", EitherPrefix = "either:";

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Serial}/{Token}");

    public static string For(Ask open, string token) => new OptionId(open.Serial, token).ToString();

    public static string State(string id) => StatePrefix + id;

    public static string Complaint(string id) => ComplaintPrefix + id;

    public static string Danger(string emergency) => DangerPrefix + emergency;

    /// <param name="turn">The turn that wrote the entry.</param>
    public static string Answer(int turn) => string.Create(CultureInfo.InvariantCulture, $"{AnswerPrefix}{turn}");

    /// <param name="place">The place of the answer among those that tell apart, from 0.</param>
    public static string Either(int place) => string.Create(CultureInfo.InvariantCulture, $"{EitherPrefix}{place}");

    public string? AsState => After(StatePrefix);

    public string? AsComplaint => After(ComplaintPrefix);

    public string? AsDanger => After(DangerPrefix);

    public int? AsAnswer => int.TryParse(After(AnswerPrefix), NumberStyles.None, CultureInfo.InvariantCulture, out var turn) ? turn : null;

    public int? AsEither => int.TryParse(After(EitherPrefix), NumberStyles.None, CultureInfo.InvariantCulture, out var place) ? place : null;

    /// <returns>The id, or null when the text was never one of ours.</returns>
    public static OptionId? Read(string text)
    {
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        return slash > 0 && slash < text.Length - 1
            && int.TryParse(text.AsSpan(0, slash), NumberStyles.None, CultureInfo.InvariantCulture, out var serial)
                ? new OptionId(serial, text[(slash + 1)..])
                : null;
    }

    private string? After(string prefix) => Token.StartsWith(prefix, StringComparison.Ordinal) ? Token[prefix.Length..] : null;
}
