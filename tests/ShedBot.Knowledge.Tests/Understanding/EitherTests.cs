namespace ShedBot.Knowledge.Tests.Understanding;

/// <summary>
/// A lever that does nothing may be the clutch's or a brake's. That both are told in the same words is common practice: the trade's tables of
/// symptoms list "lever goes to the bar" with either. The wordings are invented.
/// </summary>
public class EitherTests
{
    [Theory]
    [InlineData("the lever thing does nothing, bike just keeps going when i squeeze")]
    [InlineData("squeeze the handle and nothing")]
    [InlineData("the grip lever thing is dead")]
    [InlineData("it won't stop when I pull the lever")]
    [InlineData("bike doesn't stop when i squeeze the lever")]
    [InlineData("lever goes all the way to the bar")]
    [InlineData("lever’s floppy")]
    [InlineData("the left lever does nothing")]
    [InlineData("right hand lever goes to the bar and nothing")]
    [InlineData("neither lever does anything")]
    [InlineData("i pull the lever and the bike carries on")]
    [InlineData("lever went soft and the bike won't slow down")]
    [InlineData("squeezed the lever. Nothing happened")]
    [InlineData("my lever is broken")]
    [InlineData("the cable came off the lever")]
    [InlineData("lever does nothing, brakes are fine")]
    [InlineData("clutch lever or brake lever is dead, not sure which")]
    [InlineData("left brake lever does nothing")]
    [InlineData("the leaver does nuthin wen i sqeeze it")]
    [InlineData("how do I adjust the lever, it does nothing")]
    public void Understand_LeverThatDoesNothing_CouldBeEither(string words) =>
        Assert.Equal("which-lever", Shipped.Listener.Understand(words).Either);

    [Theory]
    [InlineData("pull the lever and it won't let go")]
    [InlineData("with the lever in it still will not go into neutral")]
    [InlineData("the lever is very heavy")]
    [InlineData("lever feels like a marshmallow")]
    [InlineData("bike keeps pulling with the lever in")]
    [InlineData("it squeaks when I let the lever out")]
    [InlineData("the lever of my car does nothing")]
    [InlineData("lever used to go to the bar, fixed it")]
    [InlineData("nothing new here")]
    [InlineData("the bike is dead. I was at the lake and then we went home again by train, all of us, and had tea. Which lever do you use?")]
    [InlineData("")]
    public void Understand_PlainWords_CouldNotBe(string words) => Assert.Null(Shipped.Listener.Understand(words).Either);

    /// <summary>Whoever names the clutch is not asked which lever, and is not sent away for want of other words.</summary>
    [Theory]
    [InlineData("clutch lever does nothing")]
    [InlineData("the clutch handle dont work no more")]
    public void Understand_ClutchNamed_HearsTheTrouble(string words)
    {
        var heard = Shipped.Listener.Understand(words);
        Assert.Null(heard.Either);
        Assert.Equal("drags", Assert.Single(heard.Complaints).Id);
    }

    [Theory]
    [InlineData("brake lever does nothing")]
    [InlineData("the brake handle is floppy")]
    [InlineData("front brake lever goes to the bar")]
    public void Understand_BrakeNamed_IsTheEmergency(string words)
    {
        var heard = Shipped.Listener.Understand(words);
        Assert.Null(heard.Either);
        Assert.Equal("brakes-failing", heard.Emergency);
    }

    [Theory]
    [InlineData("the bike won't stop", "what-keeps-it-going")]
    [InlineData("it wont stop", "what-keeps-it-going")]
    [InlineData("cant make it stop", "what-keeps-it-going")]
    [InlineData("bike keeps going even when i let off the gas", "what-keeps-it-going")]
    [InlineData("wet patch under the bike", "what-drips")]
    [InlineData("something is dripping from the bottom of it", "what-drips")]
    [InlineData("the engine leaks", "what-drips")]
    [InlineData("it smells funny after a ride", "what-smells")]
    [InlineData("smells like gas", "what-smells")]
    [InlineData("the bike stinks", "what-smells")]
    public void Understand_MoreThatCouldBeADanger_IsAskedAbout(string words, string question) =>
        Assert.Equal(question, Shipped.Listener.Understand(words).Either);

    [Theory]
    [InlineData("it won't stop squeaking")]
    [InlineData("can't stop it slipping")]
    [InlineData("the nut won't stop loosening")]
    [InlineData("black oil drips from the gear cover")]
    [InlineData("no leaks on it")]
    [InlineData("it smells burnt after a hill")]
    [InlineData("the clutch stinks")]
    public void Understand_SaidOfSomethingPlain_IsNot(string words) => Assert.Null(Shipped.Listener.Understand(words).Either);

    /// <summary>A danger that is told outright is no matter for a question.</summary>
    [Theory]
    [InlineData("i cant stop", "brakes-failing")]
    [InlineData("the bike wont stop, brakes are gone", "brakes-failing")]
    [InlineData("petrol is dripping from under the bike", "fuel-leak")]
    [InlineData("found a stain under it, smells of petrol", "fuel-leak")]
    [InlineData("it stinks of petrol", "fuel-leak")]
    [InlineData("gas handle stuck", "runaway-throttle")]
    [InlineData("brakes feel soft", "brakes-failing")]
    [InlineData("brake lever is stuck", "brakes-failing")]
    [InlineData("my brake lever goes nearly to the bar", "brakes-failing")]
    public void Understand_DangerToldOutright_IsTheEmergency(string words, string emergency)
    {
        var heard = Shipped.Listener.Understand(words);
        Assert.Null(heard.Either);
        Assert.Equal(emergency, heard.Emergency);
    }

    [Fact]
    public void Understand_BrakesAreAlright_SpeaksAgainstThatDanger() =>
        Assert.Contains("brakes-failing", Shipped.Listener.Understand("brakes are alright, the engine just keeps shoving").SpokenAgainst);

    /// <summary>What a rider says who means the machine is not a machine of another kind.</summary>
    [Theory]
    [InlineData("my motor bike wont let go when i squeeze the clutch", "drags")]
    [InlineData("my engine bike slips on hills", "slips")]
    public void Understand_OtherNamesForTheBike_AreOurs(string words, string complaint) =>
        Assert.Equal(complaint, Shipped.Listener.Understand(words).Complaints[0].Id);

    [Fact]
    public void Understand_BikeBroke_IsNoBrokenCable() => Assert.Empty(Shipped.Listener.Understand("my bike broke").Complaints);

    /// <summary>Eight words lie between at the most.</summary>
    [Theory]
    [InlineData("lever one two three four five six seven eight does nothing", true)]
    [InlineData("lever one two three four five six seven eight nine does nothing", false)]
    [InlineData("does nothing one two three four five six seven eight lever", true)]
    [InlineData("does nothing one two three four five six seven eight nine lever", false)]
    public void Understand_ThingAndWhatIsToldOfIt_StandCloseTogether(string words, bool either) =>
        Assert.Equal(either, Shipped.Listener.Understand(words).Either is not null);
}
