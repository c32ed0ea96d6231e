using ShedBot.Trade.Bolts;
using ShedBot.Trade.Figures;

namespace ShedBot.Trade.Tests.Bolts;

public class TorqueAnswerTests
{
    // Rule: ask the size before giving a torque; common practice, borne out by the proof-load test of the M8 figure on an M6.
    [Fact]
    public void For_ThreadNotMeasured_AsksAndGivesNoFigure()
    {
        var ask = Assert.IsType<TorqueAnswer.AskTheSize>(
            TorqueAnswer.For(null, PropertyClass.Class48, ThreadCondition.Dry));

        Assert.Equal(
            "Which thread is it? Hold a pitch gauge on a clean screw and measure across the thread: "
            + "0.8 mm pitch is M5, 1.0 mm pitch is M6, 1.25 mm pitch is M8, 1.5 mm pitch is M10.",
            ask.Question);
    }

    // Source: Shigley, bolted joints; 0.75 x 310 MPa x 20.1 mm2 x 0.20 x 6 mm by hand.
    [Fact]
    public void For_MeasuredThread_GivesTheFigureWithItsInputs()
    {
        var answer = Assert.IsType<TorqueAnswer.Give>(
            TorqueAnswer.For(MetricThread.M6, PropertyClass.Class48, ThreadCondition.Dry));
        var given = answer.Figure;

        Assert.Equal(
            "This is the most for the bolt. In aluminium the case may strip first: have at least 9 mm of thread in the metal, "
            + "and stop if it turns soft.",
            answer.Caution);
        Printed.Matches(5.6, 1, given.Value.NewtonMeters);
        Assert.Equal(SourceMark.FromMemory, given.Mark);
        Assert.Equal(["0.2", "310 MPa", "20.1 mm2", "6 mm"], given.Inputs.Select(input => input.Given));
        Assert.All(given.Inputs, input => Assert.NotEmpty(input.MeasureYours));
    }
}
