using ShedBot.Knowledge.Loading;

namespace ShedBot.Knowledge.Tests.Samples;

/// <summary>A small set of rules without a problem, about a made-up bicycle lamp, that tests bend one thing at a time.</summary>
internal static class LampRules
{
    public const string File = "knowledge/lamp.yaml";

    public const string Text = """
        about:
          covers: an invented hub-driven lamp
          author: the made-up club
          source: common practice
          date: 2026-03-31

        complaints:
          - id: dark
            called: the lamp stays dark
            in short: The wheel turns and there is no light at all.
            riders say:
              - no light at all
              - lamp is dead
          - id: flickers
            called: the lamp flickers
            in short: Light comes and goes while riding.
            riders say:
              - light comes and goes

        findings:
          - id: bulb-look
            means: how the bulb looks
            states:
              - {id: clear, says: Clear and whole}
              - {id: black, says: Black inside, riders say: [bulb is black]}
              - {id: loose, says: It wobbles in its socket}
            seen anyway: {loose: almost no chance}
          - id: wire-run
            means: how the wire sits in its clip
            states:
              - {id: firm, says: Firm}
              - {id: hanging, says: It hangs down, stop riding: "It can get into the spokes: tie it up before you ride."}

        facts:
          - id: bulb-age
            called: how old the bulb is
            ask: When was the bulb last changed?
            values:
              - {id: this-year, says: This year, how often: likely}
              - {id: years-ago, says: Years ago, how often: unlikely, riders say: [never changed it]}
              - {id: no-bulb, says: It has no bulb, how often: almost no chance}
            keeps for days: 90
          - id: glass-kind
            called: what the lamp glass is made of
            ask: Is the lamp glass made of glass?
            values:
              - {id: real-glass, says: Real glass, how often: likely}
              - {id: clear-plastic, says: Plastic, how often: unlikely}
            keeps for days: 365

        faults:
          - id: bulb-burnt
            is: the bulb is burnt out
            because: The thread has melted, so no current can flow.
            how common: very common
            shows as:
              dark: {yes: almost certain}
              bulb-look: {black: likely}
            moved by:
              - {fact: bulb-age, is: years-ago, times: 6}
              - {fact: bulb-age, is: no-bulb, times: 0}
          - id: bulb-loose
            is: the bulb is not screwed in
            because: It touches its contact only now and then.
            how common: common
            shows as:
              flickers: {yes: very likely}
              dark: {yes: unlikely}
              bulb-look: {loose: very likely}
          - id: wire-off
            is: the wire has come off
            because: There is no way for the current.
            how common: common
            shows as:
              dark: {yes: very likely}
              flickers: {yes: unlikely}
              wire-run: {hanging: very likely}

        checks:
          - id: look-at-bulb
            tells: bulb-look
            ask: How does the bulb look?
            why: A black bulb is burnt out, a wobbling one only wants a turn.
            how: [Open the lamp glass, Look at the bulb against the sky]
            minutes: 2
            cover: lamp-glass
            hands on: yes
            reliability: plain to see
          - id: follow-wire
            tells: wire-run
            ask: Is the wire firm in its clip?
            why: A wire that has come off hangs down.
            how: [Follow the wire with your eyes from the hub to the lamp]
            answers: {hanging: It hangs beside the fork}
            minutes: 1
            effort: 1
            hands on: no
            reliability: easy to misread

        covers:
          - id: lamp-glass
            called: the lamp glass (one screw)
            minutes: 3
            tools: [screwdriver]
            how: [Undo the screw, Lift the glass off]

        repairs:
          - id: fit-bulb
            does: fit a new bulb
            mends: {bulb-burnt: almost certain}
            minutes: 5
            money: 2
            cover: lamp-glass
            hazard: medium
            parts: [{name: bulb, size: match the figures stamped on the old one}]
            cautions:
              - {word: CAUTION, hazard: Broken glass, consequence: cuts fingers, avoid: hold the bulb in a cloth}
            steps:
              - do: Take the old bulb out.
              - do: Screw the new one in.
                note: It should stop firmly.
            prove: [Spin the wheel; the lamp lights]
            watch: [Look again after a week]
            prevent: [Carry a spare]
          - id: tighten-bulb
            does: screw the bulb in
            mends: {bulb-loose: almost certain}
            minutes: 1
            cover: lamp-glass
            steps:
              - do: Turn the bulb until it stops.
            prove: [Shake the lamp; the light stays]
          - id: join-wire
            does: put the wire back
            mends: {wire-off: very likely}
            minutes: 4
            steps:
              - do: Push the wire on and clip it.
            prove: [Tug at it; it stays]

        how to:
          - id: which-bulb
            called: which bulb fits
            riders ask: [what bulb do I need]
            answer: [Read the figures on the base of the old one.]

        emergencies:
          - id: lamp-smokes
            called: the lamp is smoking
            riders say: [smoke from the lamp]
            caution: {word: WARNING, hazard: Hot wire, consequence: burns skin, avoid: stop the wheel and keep off}
            do now: [Stop the wheel, Stand clear]
            ends coaching: yes

        before hands on:
          ask: Is all of this so?
          points: [The wheel stands still]
          ready: Yes, all of it
          not yet: Not yet
          dangers:
            - {says: It smokes, emergency: lamp-smokes}

        words:
          - {concept: lamp, riders say: [headlight, light]}

        service:
          - id: wipe-glass
            called: a clean lamp glass
            does: wipe the lamp glass
            why: Dust takes half the light.
            minutes: 7
            hazard: low
            tools: [soft cloth]
            cautions:
              - {word: NOTICE, hazard: A hot lamp, consequence: burns fingers, avoid: let it cool}
            steps:
              - do: Wipe the glass.
                note: A damp cloth does.
            every: [14 riding days, 300 km]
            after:
              - {events: [fitted, fit-bulb], at: [before the next ride, 10 km]}
              - {events: [look-at-clip], at: [1 riding day]}
            dusty counts: 3
            only if:
              - {fact: glass-kind, is: [real-glass]}
            done by: [fit-bulb]
            reveals: [dark]
          - id: look-at-clip
            called: a firm wire
            does: look whether the wire is firm
            why: A loose wire gets into the spokes.
            minutes: 6
            steps:
              - do: Look at the clip.
            before each ride: yes
        """;

    public static LoadResult Load() => KnowledgeLoader.Load([RuleText.FromText(File, Text)]);

    public static KnowledgeBase Knowledge() => Load().Knowledge!;

    /// <summary>The rules with pieces of text put in others' places: piece, instead, piece, instead. Each piece must stand there exactly once.</summary>
    public static LoadResult With(params string[] swaps) => KnowledgeLoader.Load([RuleText.FromText(File, Bent(swaps))]);

    /// <inheritdoc cref="With"/>
    public static string Bent(params string[] swaps)
    {
        var text = Text.ReplaceLineEndings("\n");
        for (var i = 0; i < swaps.Length; i += 2)
        {
            Assert.True(text.Split(swaps[i]).Length == 2, $"'{swaps[i]}' must stand in the rules exactly once.");
            text = text.Replace(swaps[i], swaps[i + 1], StringComparison.Ordinal);
        }

        return text;
    }
}
