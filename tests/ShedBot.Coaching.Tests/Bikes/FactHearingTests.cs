using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Tests.Logbook;

namespace ShedBot.Coaching.Tests.Bikes;

public sealed class FactHearingTests
{
    [Theory]
    [InlineData("the bar is 18.2 mm", "bar-length=18.2")]
    [InlineData("The bucking bar measures 18,2mm.", "bar-length=18.2")]
    [InlineData("clutch drags, push rod is 3/4\" and dry", "bar-length=19.05")]
    [InlineData("it has a 44 tooth sprocket", "rear-sprocket=44")]
    [InlineData("44T rear sprocket, 10 tooth front sprocket", "rear-sprocket=44 small-sprocket=10")]
    [InlineData("the sprocket has 36 teeth", "rear-sprocket=36")]
    [InlineData("26 inch wheels", "wheel=26in")]
    [InlineData("tyre says 54-559", "")]
    [InlineData("on the tyre stands 54-559", "wheel=54-559")]
    [InlineData("I run 26 x 2.125 tyres on it", "wheel=54-559")]
    [InlineData("clutch slips on my 66cc, 26\" wheels", "engine-size=66cc wheel=26in")]
    [InlineData("my 66cc clutch won't let go", "engine-size=66cc")]
    [InlineData("engine is 47 x 38 mm", "engine-size=47x38")]
    [InlineData("I run 24:1 mix", "oil-ratio=24:1")]
    [InlineData("main jet is 70", "main-jet=70")]
    public void Hear_WhatIsUnmistakable_IsKept(string words, string heard) => Assert.Equal(heard, Heard(words));

    [Theory]
    [InlineData("is the bar 18.2 mm?")]
    [InlineData("should the bar be 18.2 mm")]
    [InlineData("the bar is 18.2 mm, or is it? the bar is 17 mm")]
    [InlineData("I think the bar is 18.2 mm")]
    [InlineData("the old bar is 18.2 mm")]
    [InlineData("the handlebar is 25.4 mm")]
    [InlineData("the handle bar is 25.4 mm")]
    [InlineData("the bar is 3 mm off")]
    [InlineData("slack is 18.2 mm")]
    [InlineData("the bar isn't 18.2 mm")]
    [InlineData("a mate's 66cc")]
    [InlineData("it's not a 66cc")]
    [InlineData("hasn't got a 44 tooth sprocket")]
    [InlineData("66cc of oil")]
    [InlineData("22 tooth sprocket")]
    [InlineData("at 12:30 the mix ran out")]
    [InlineData("rode 26 km in 44 min")]
    [InlineData("do 44 tooth sprockets fit?")]
    [InlineData("the front wheel is 26 inch wheels")]
    [InlineData("call 55-123")]
    public void Hear_WhatCouldBeOtherwise_IsNotTaken(string words) => Assert.Equal("", Heard(words));

    [Theory]
    [InlineData("the bar is 18.2 mm", true)]
    [InlineData("it's a 66cc with 26 inch wheels and a 44 tooth sprocket.", true)]
    [InlineData("the bar is 18.2 mm and the clutch drags", false)]
    [InlineData("clutch slips on my 66cc", false)]
    public void SaysNothingElse_ALine_IsTrueForFactsAlone(string words, bool alone) => Assert.Equal(alone, FactHearing.SaysNothingElse(words));

    private static string Heard(string words) => string.Join(' ', FactHearing.Hear(words, Bench.Knowledge, Bench.Today).Select(f => $"{f.Field}={f.Value}").Order(StringComparer.Ordinal));
}
