using ShedBot.Trade.Gearing;

namespace ShedBot.Trade.Tests.Gearing;

public class TyreMarkingTests
{
    // Source: ISO 5775-1 marking, circumference pi x (559 + 2 x width).
    [Theory]
    [InlineData("50-559", 2.070)]
    [InlineData("54-559", 2.095)]
    [InlineData("57-559", 2.114)]
    public void TheoreticalCircumference_26InchTyres_MatchesTable(string marking, double metres) =>
        Printed.Matches(metres, 3, TyreMarking.Read(marking)!.TheoreticalCircumference.Meters);

    [Theory]
    [InlineData("it says 50-559 on the side (26 x 2.00)")]
    [InlineData("50 - 559")]
    [InlineData("ETRTO 50-559, 40 psi max")]
    public void Read_MarkingAmongOtherWords_FindsIt(string text) =>
        Assert.Equal(new TyreMarking(Length.FromMillimeters(50), Length.FromMillimeters(559)), TyreMarking.Read(text));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("26x2.125")]
    [InlineData("50-5599")]
    [InlineData("14-559")]
    [InlineData("50-149")]
    public void Read_NoUsableMarking_GivesNull(string? text) => Assert.Null(TyreMarking.Read(text));

    [Fact]
    public void Constructor_WidthBeyondAnyTyre_Refuses() =>
        Refusal.Says(
            "width", "Must be between 15 mm and 130 mm; was 131 mm.",
            () => _ = new TyreMarking(Length.FromMillimeters(131), Length.FromMillimeters(559)));
}
