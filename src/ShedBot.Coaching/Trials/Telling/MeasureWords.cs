using System.Globalization;
using ShedBot.Coaching.Trials.Scoring;

namespace ShedBot.Coaching.Trials.Telling;

/// <summary>Measures and verdicts in plain words.</summary>
public static class MeasureWords
{
    public static string Name(Measure measure) => measure switch
    {
        Measure.RightLead => "Right cause in front",
        Measure.Brier => "How far off the beliefs are",
        Measure.Log => "Surprise at what it was",
        Measure.CalibrationError => "How far from its word a chance is",
        Measure.Cost => "Cost of a case",
        Measure.Asked => "Questions and checks",
        Measure.RightCause => "Mended, right cause in front",
        Measure.Mended => "Mended",
        Measure.HandedOver => "Handed to a helper",
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "A new measure needs a name."),
    };

    public static string Value(Measure measure, double value) => measure switch
    {
        Measure.RightLead or Measure.RightCause or Measure.Mended or Measure.HandedOver => Text($"{value * 100:0} %"),
        Measure.Cost => Text($"{value:0} min"),
        Measure.Asked => Text($"{value:0.0}"),
        _ => Text($"{value:0.000}"),
    };

    /// <returns>As in "old 71 %, new 76 %: better".</returns>
    public static string Line(Compared compared) => compared.Differ == 0
        ? $"{Name(compared.Measure)}: {Value(compared.Measure, compared.Old)} both, exactly alike"
        : $"{Name(compared.Measure)}: old {Value(compared.Measure, compared.Old)}, new {Value(compared.Measure, compared.New)} ({Change(compared)}): {Word(compared)}";

    /// <returns>As in "change -2 to +12 points".</returns>
    public static string Change(Compared compared) => compared.Measure switch
    {
        Measure.RightLead or Measure.RightCause or Measure.Mended or Measure.HandedOver =>
            Text($"change {Signed(compared.Low * 100, "0")} to {Signed(compared.High * 100, "0")} points"),
        Measure.Cost => Text($"change {Signed(compared.Low, "0")} to {Signed(compared.High, "0")} min"),
        Measure.Asked => Text($"change {Signed(compared.Low, "0.0")} to {Signed(compared.High, "0.0")}"),
        _ => Text($"change {Signed(compared.Low, "0.000")} to {Signed(compared.High, "0.000")}"),
    };

    public static string Word(Compared compared) => compared.Verdict switch
    {
        Verdict.Better => "better",
        Verdict.Worse => "worse",
        _ => compared.Differ < Compared.FewestThatDiffer ? "too few that differ" : "not told from no difference",
    };

    public static string Word(Verdict verdict) => verdict switch
    {
        Verdict.Better => "better",
        Verdict.Worse => "worse",
        Verdict.Mixed => "better in one thing, worse in another",
        _ => "no difference that is sure",
    };

    private static string Signed(double value, string format)
    {
        var text = Math.Abs(value).ToString(format, CultureInfo.InvariantCulture);
        return double.Parse(text, CultureInfo.InvariantCulture) == 0 ? "0" : value > 0 ? "+" + text : "-" + text;
    }

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
