using System.Collections.Immutable;
using System.Text.RegularExpressions;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Logbook;
using ShedBot.Coaching.Speaking;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Bikes;

/// <summary>The sheet asked through, one question at a time: what is missing or stale, the most useful first. Each answer is kept at once, so leaving loses nothing.</summary>
/// <param name="Fields">What is asked, in order; fixed when it begins.</param>
/// <param name="At">The question that is open; the number of fields once all were put.</param>
public sealed partial record GuidedSetUp(ImmutableArray<string> Fields, int At)
{
    private const string Prefix = "sheet";
    private const char Between = '|';

    /// <returns>Null when there is nothing to ask.</returns>
    public static GuidedSetUp? Begin(BikeProfile bike, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset at)
    {
        ImmutableArray<string> wanted = [.. BikeSheet.Of(knowledge).Where(f => FactAge.IsWanted(f, bike, speaker.DayOf(at), speaker.Zone)).Select(f => f.Id)];
        return wanted.IsEmpty ? null : new GuidedSetUp(wanted, 0);
    }

    public bool IsOver => At >= Fields.Length;

    public GuidedSetUp Next() => this with { At = At + 1 };

    public GuidedSetUp Back() => this with { At = Math.Max(0, At - 1) };

    /// <summary>The open question. Rules that no longer know a field pass over it.</summary>
    /// <param name="lead">Something to say first, or null.</param>
    public Card? Question(BikeProfile bike, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset at, string? lead = null)
    {
        if (IsOver || BikeSheet.Find(knowledge, Fields[At]) is not { } field) return null;
        var left = Fields.Length - At - 1;
        var known = bike.Facts.ContainsKey(field.Id) ? Say.Text($"So far {BikeLook.FieldLine(field, bike, speaker, speaker.DayOf(at))}.") : null;
        var options = field.Kind is Kinds.ChoiceKind choice ? choice.Values.Select(v => new CardOption(string.Join(Between, Prefix, field.Id, v.Id), v.Says)) : [];
        return new Card(
            field.Ask,
            [
                .. lead is null ? [] : new CardBlock[] { Say.Text(lead) }, Say.Text(field.Find), .. known is null ? [] : new CardBlock[] { known },
                Say.Text($"{(left == 0 ? "This is the last one" : $"{left} more after this")}. Don't know: skip. One back: back. Enough for today: stop."),
            ],
            [.. options]);
    }

    /// <summary>What is said first.</summary>
    public const string Opening = "A few short questions. All can be skipped, and you can stop at any time; each answer is kept at once.";

    public static Card NothingToAsk { get; } = new("There is nothing left to ask", [Say.Text("All of it is known, and still good. To look at it: bike.")], []);

    public static Card Done(bool whole) => new(whole ? "That was all of it" : "Good. What you told me is kept", [Say.Text("Change any of it at any time, or leave it. To look at it: bike.")], []);

    /// <returns>The fact that an option of a question stands for, or null when it is none of these.</returns>
    public static FactTold? Picked(string option) => option.Split(Between) is [Prefix, var field, var value] ? new FactTold(field, value) : null;

    /// <summary>Reads a line as an answer to the open question.</summary>
    public SetUpAnswer Read(string line, KnowledgeBase knowledge, Speaker speaker, DateTimeOffset at)
    {
        var plain = line.Trim().TrimEnd('.', '!').ToLowerInvariant();
        switch (plain)
        {
            case "skip" or "n" or "not sure" or "don't know" or "dont know" or "i don't know" or "no idea" or "dunno" or "unknown" or "next":
                return new SetUpSkip();
            case "back" or "b":
                return new SetUpBack();
            case "stop" or "enough" or "later" or "leave" or "l" or "quit" or "no more":
                return new SetUpStop();
        }

        if (IsOver || BikeSheet.Find(knowledge, Fields[At]) is not { } field) return new SetUpStop();
        var read = field.Kind.Read(line, new Kinds.Writer(speaker.Units, speaker.DayOf(at)));
        // "I don't have the tools" is as good as skip.
        if (read.Refused is not null && CannotNow().IsMatch(plain)) return new SetUpSkip();
        return read.Refused is { } refused ? new SetUpUnclear($"{refused.Say} Or skip, or stop.") : new SetUpTold(new FactTold(field.Id, read.Must));
    }

    [GeneratedRegex(@"\A(?!.*\d).*\b(?:can'?t|cannot|no (?:tool|caliper|clue|idea)s?|don'?t (?:have|own|know|remember)|haven'?t|not (?:now|here|sure)|never (?:looked|measured)|forgot\w*)\b", RegexOptions.CultureInvariant)]
    private static partial Regex CannotNow();
}

/// <summary>What a line says to the open question of the set-up.</summary>
public abstract record SetUpAnswer;

public sealed record SetUpTold(FactTold Fact) : SetUpAnswer;

public sealed record SetUpSkip : SetUpAnswer;

public sealed record SetUpBack : SetUpAnswer;

public sealed record SetUpStop : SetUpAnswer;

/// <param name="Say">What to write instead.</param>
public sealed record SetUpUnclear(string Say) : SetUpAnswer;
