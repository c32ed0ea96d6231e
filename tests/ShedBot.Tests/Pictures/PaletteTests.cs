using ShedBot.Coaching.Logbook;
using ShedBot.Pictures;

namespace ShedBot.Tests.Pictures;

/// <summary>Colours against WCAG 2.2: success criterion 1.4.3 asks 4.5:1 of letters, 1.4.11 asks 3:1 of marks that carry a meaning.</summary>
public sealed class PaletteTests
{
    [Theory]
    [InlineData(PictureLook.Dark)]
    [InlineData(PictureLook.Light)]
    public void Letters_OfEachLook_StandOutFromTheGround(PictureLook look)
    {
        var colours = Palette.Of(look);
        Assert.All([colours.Ink, colours.Pale], c => Assert.True(Contrast.Of(c, colours.Ground) >= 4.5, c));
        // The exclamation mark of what is overdue is a letter too, in the colour of the ground.
        Assert.True(Contrast.Of(colours.Ground, colours.Overdue) >= 4.5);
    }

    [Theory]
    [InlineData(PictureLook.Dark)]
    [InlineData(PictureLook.Light)]
    public void Marks_OfEachLook_StandOutFromTheGround(PictureLook look)
    {
        var colours = Palette.Of(look);
        Assert.All(
            [.. Enum.GetValues<TimelineSign>().Select(colours.Of), colours.Rest, colours.Ink], c => Assert.True(Contrast.Of(c, colours.Ground) >= 3, c));
    }

    /// <summary>Black and white: 21 by the definition. #767676 on white is the lightest grey that passes 4.5:1, from memory.</summary>
    [Theory]
    [InlineData("#000000", "#ffffff", 21)]
    [InlineData("#ffffff", "#ffffff", 1)]
    [InlineData("#767676", "#ffffff", 4.54)]
    public void Of_KnownPairs_IsTheKnownRatio(string one, string other, double ratio) => Assert.Equal(ratio, Contrast.Of(one, other), 0.01);
}
