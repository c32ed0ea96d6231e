using ShedBot.Coaching.Teaching.Writing;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>What people type behind the beginning of a sentence, on a telephone or not, stands inside of sentences afterwards.</summary>
public class FragmentTests
{
    [Theory]
    [InlineData("The small ball is missing.", "the small ball is missing")]
    [InlineData("most likely the small ball is missing", "the small ball is missing")]
    [InlineData("Most likely The wire has frayed .", "the wire has frayed")]
    [InlineData("The trouble is that it rattles at idle", "it rattles at idle")]
    [InlineData("the small ball is missing", "the small ball is missing")]
    [InlineData("Woodruff key sheared", "Woodruff key sheared")]
    [InlineData("CDI box is wet", "CDI box is wet")]
    [InlineData("it needs a shim ...", "it needs a shim ...")]
    [InlineData(".", ".")]
    [InlineData("", "")]
    public void Of_AsPeopleTypeIt_FitsInsideASentence(string typed, string fits) => Assert.Equal(fits, Fragment.Of(typed));

    [Theory]
    [InlineData("Tighten the three screws.", "tighten the three screws")]
    [InlineData("Time to fit a new wire", "fit a new wire")]
    [InlineData("WD is no grease", "WD is no grease")]
    public void ToDo_AsPeopleTypeIt_BeginsWithASmallVerb(string typed, string fits) => Assert.Equal(fits, Fragment.ToDo(typed));
}
