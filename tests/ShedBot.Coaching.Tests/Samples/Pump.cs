using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Tests.Samples;

/// <summary>A small machine of our own, so that tests of the talk do not change when the club's rules do.</summary>
internal static class Pump
{
    public static readonly DateTimeOffset Noon = new(2026, 5, 2, 12, 0, 0, TimeSpan.Zero);

    public static string Text { get; } = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Samples", "pump.yaml"));

    public static KnowledgeBase Knowledge { get; } = Load();

    public static Coach Coach { get; } = new(Knowledge, Listener.For(Knowledge), new CoachOptions { FactsWithin = 0 });

    public static KnowledgeBase Load(string? text = null, Learnt? learnt = null)
    {
        var result = KnowledgeLoader.Load([RuleText.FromText("pump.yaml", text ?? Text)], CompileOptions.Default with { Learnt = learnt });
        return result.Knowledge ?? throw new InvalidOperationException(string.Join('\n', result.Problems));
    }

    /// <summary>The coach of the same machine without one of its rules.</summary>
    /// <param name="id">A rule that no other one names, besides check and finding each other.</param>
    public static Coach Without(string id)
    {
        var (lines, kept, within) = (Text.Split('\n'), new List<string>(), false);
        foreach (var line in lines)
        {
            if (line.StartsWith("  - ", StringComparison.Ordinal)) within = line == $"  - id: {id}";
            else if (line.Length > 0 && line[0] != ' ') within = false;
            if (!within) kept.Add(line);
        }

        var rules = Load(string.Join('\n', kept));
        return CoachOf(rules);
    }

    public static Coach CoachOf(KnowledgeBase rules) => new(rules, Listener.For(rules), new CoachOptions { FactsWithin = 0 });
}

/// <summary>One member's talk with the coach, without a store.</summary>
internal sealed class Talk(Coach? coach = null)
{
    private int events;

    /// <summary>Another one is a change of the rules between two turns.</summary>
    public Coach Coach { get; set; } = coach ?? Pump.Coach;

    public Case Case { get; private set; } = Case.New(new CaseId("c1"), new MemberId("m1"), new BikeId("b1"), "here", Pump.Noon);

    public BikeProfile Bike { get; private set; } = BikeProfile.New(new BikeId("b1"), new MemberId("m1"));

    public DateTimeOffset Now { get; set; } = Pump.Noon;

    public ImmutableArray<Card> Said { get; private set; } = [];

    public Outcome? Outcome { get; private set; }

    public Card Last => Said[^1];

    public Turn LastTurn { get; private set; } = null!;

    public string AllText => string.Join('\n', Said.Select(Text));

    public Talk Say(string words) => Take(new MemberSaid($"e{++events}", words));

    /// <summary>Picks the option of the last card whose label starts so.</summary>
    public Talk Pick(string label)
    {
        var option = Last.Options.FirstOrDefault(o => o.Label.StartsWith(label, StringComparison.Ordinal))
            ?? throw new InvalidOperationException($"'{label}' is not offered by '{Last.Title}': {string.Join(" | ", Last.Options.Select(o => o.Label))}");
        return PickId(option.Id);
    }

    public Talk PickId(string id) => Take(new MemberChose($"e{++events}", id));

    public Talk Take(Incoming incoming)
    {
        LastTurn = Coach.Take(Case, Bike, incoming, Now);
        (Case, Bike, Outcome) = (LastTurn.Case, LastTurn.Bike, LastTurn.Outcome ?? Outcome);
        if (!LastTurn.Say.IsEmpty) Said = LastTurn.Say;
        return this;
    }

    public static string Text(Card card) => card.Title + "\n" + string.Join('\n', card.Blocks.Select(b => b switch
    {
        TextBlock text => text.Text,
        CautionBlock caution => $"{caution.Word}: {caution.Hazard} {caution.Consequence} {caution.Avoid}",
        StepsBlock steps => steps.Heading + ": " + string.Join(" / ", steps.Steps.Select(s => s.Do + s.Note)),
        ListBlock list => list.Heading + ": " + string.Join(" / ", list.Items),
        DrawingBlock drawing => drawing.Text,
        BeliefBlock belief => string.Join(" / ", belief.Lines.Select(l => $"{l.Cause} {l.Word}")),
        _ => throw new InvalidOperationException(b.GetType().Name),
    }));
}
