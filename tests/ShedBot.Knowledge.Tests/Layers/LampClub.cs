using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Tests.Samples;

namespace ShedBot.Knowledge.Tests.Layers;

/// <summary>An invented club that rides with the made-up lamp, and its own word over the rules.</summary>
internal static class LampClub
{
    public const string File = "our-rules.yaml";

    public static RuleBase Base { get; } = RuleBase.Of([RuleText.FromText(LampRules.File, LampRules.Text)]);

    public static Credit Credit { get; } = new("Mod A", "Rider B", "common practice", new DateOnly(2026, 5, 1));

    /// <summary>A cause that the base does not know, with a finding, a check and a repair, and changes of the base of every sort.</summary>
    public const string Text = """
        about:
          covers: an invented club
          edition: 3
          author: Mod A
          source: common practice
          date: 2026-05-01

        findings:
          - id: switch-feel
            means: how the switch feels
            states:
              - {id: clicks, says: It clicks}
              - {id: limp, says: It moves without a click}

        faults:
          - id: switch-worn
            is: the switch is worn out
            because: Its spring is tired, so it does not close.
            how common: uncommon
            shows as:
              dark: {yes: likely}
              switch-feel: {limp: very likely}
            said by: Rider B

        checks:
          - id: press-switch
            tells: switch-feel
            ask: Does the switch click?
            why: A worn one moves without a click.
            minutes: 1
            hands on: no
            reliability: plain to see

        repairs:
          - id: new-switch
            does: fit a new switch
            mends: {switch-worn: almost certain}
            minutes: 10
            steps:
              - do: Fit it.
            prove: [Press it; the lamp lights]

        mends:
          - {of: fault, id: wire-off, key: how common, was: common, now: very common}
          - {of: fault, id: bulb-loose, key: shows as / dark / yes, was: unlikely, now: likely, said by: Rider C}
          - {of: complaint, id: dark, key: riders say, add: nothing shines}
          - {of: word, id: lamp, key: riders say, drop: light}

        retires:
          - {of: fault, id: bulb-burnt, because: all our lamps have diodes}
        """;

    public static Layer Layer { get; } = Of(Text);

    public static Layer Of(string text)
    {
        var read = Knowledge.Layers.Layer.Read(RuleText.FromText(File, text));
        Assert.Empty(read.Problems.Select(p => p.ToString()));
        return read.Layer!;
    }
}
