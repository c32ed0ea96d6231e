using ShedBot.Trade.Figures;

namespace ShedBot.Trade.Bolts;

/// <summary>The answer to "how tight?": a figure when the thread is known, otherwise the question that comes first.</summary>
public abstract record TorqueAnswer
{
    private TorqueAnswer()
    {
    }

    /// <summary>No torque can be given yet: the figure for one size up breaks the smaller screw.</summary>
    /// <param name="Question">What to ask the rider.</param>
    public sealed record AskTheSize(string Question) : TorqueAnswer;

    /// <summary>A torque for a known thread.</summary>
    /// <param name="Figure">The torque with its inputs and source.</param>
    /// <param name="Caution">What to say beside it: the figure spares the bolt, not the thread it goes into.</param>
    public sealed record Give(TradeFigure<Torque> Figure, string Caution) : TorqueAnswer;

    /// <summary>Tightening torque, or the question about the size.</summary>
    /// <param name="thread">The thread as the rider measured it, or null when nobody has measured.</param>
    /// <param name="strength">Strength class read off the head; an unmarked stud counts as the weakest.</param>
    /// <param name="condition">Dry or oiled threads.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a named condition.</exception>
    public static TorqueAnswer For(MetricThread? thread, PropertyClass strength, ThreadCondition condition) =>
        thread is null
            ? new AskTheSize(
                "Which thread is it? Hold a pitch gauge on a clean screw and measure across the thread: "
                + string.Join(", ", MetricThread.All.Select(t => $"{t.Pitch.Millimeters:0.0#} mm pitch is {t.Name}")) + ".")
            : new Give(
                new TradeFigure<Torque>(
                    Tightening.ForPreload(thread, strength, condition),
                    "T = K x 0.75 x S_p x A_s x d",
                    "Shigley, bolted joints; ISO 898-1 proof stress from memory",
                    SourceMark.FromMemory,
                    InputsOf(thread, strength, condition)),
                "This is the most for the bolt. In aluminium the case may strip first: have at least "
                + $"{Shown.Millimetres(ThreadEngagement.LeastInAluminium(thread).Value)} of thread in the metal, and stop if it turns soft.");

    private static FigureInput[] InputsOf(MetricThread thread, PropertyClass strength, ThreadCondition condition) =>
    [
        new("Torque factor K", Shown.Plain(Tightening.TorqueFactor(condition)), "Feel the threads: dry, or wet with oil?"),
        new(
            $"Proof stress S_p of class {strength.Marking}", Shown.Megapascals(strength.ProofStress),
            "Read the number on the head; with no number, count it as 4.6."),
        new($"Stress area A_s of {thread.Name}", Shown.SquareMillimetres(thread.StressArea), "Confirm the pitch with a gauge."),
        new("Diameter d", Shown.Millimetres(thread.Diameter), "Vernier across the outside of the thread."),
    ];
}
