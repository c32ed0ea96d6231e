using ShedBot.Coaching.Tests.Samples;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Tests.Trials;

/// <summary>The pump with one rule changed, as a proposal would change it.</summary>
internal static class PumpEdits
{
    public static KnowledgeBase Changed(string from, string to)
    {
        Assert.Contains(from, Pump.Text, StringComparison.Ordinal);
        return Pump.Load(Pump.Text.Replace(from, to, StringComparison.Ordinal));
    }

    /// <summary>A cause that the pump's rules do not know, with all that belongs to it.</summary>
    public static KnowledgeBase WithStrainer { get; } = Pump.Load(WithStrainerText);

    public static string WithStrainerText => Pump.Text
        .Replace("\nfacts:\n", """

          - id: strainer
            means: what the strainer in the tank looks like
            states:
              - {id: clear, says: It is clear}
              - {id: blocked, says: It is full of leaves, riders say: [the strainer is full of leaves]}

        facts:

        """, StringComparison.Ordinal)
        .Replace("\nchecks:\n", """

          - id: strainer-blocked
            is: the strainer in the tank is blocked
            because: Leaves keep the water from the pump.
            how common: very common
            shows as:
              no-water: {yes: almost certain}
              hums: {yes: unlikely}
              strainer: {blocked: almost certain}

        checks:
          - id: look-strainer
            tells: strainer
            ask: What does the strainer in the tank look like?
            why: Leaves in it stop the water.
            minutes: 1
            hazard: none
            hands on: no
            reliability: plain to see

        """, StringComparison.Ordinal)
        .Replace("\nhow to:\n", """

          - id: clean-strainer
            does: clean the strainer
            mends: {strainer-blocked: almost certain}
            minutes: 10
            hazard: none
            steps: [{do: Lift it out and rinse it}]
            prove: [Run the pump for a minute and see water come]
            watch: [Look into the tank next week]
            prevent: [Put a lid on the tank]

        how to:

        """, StringComparison.Ordinal);
}
