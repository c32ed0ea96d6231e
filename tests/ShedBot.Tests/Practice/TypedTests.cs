using ShedBot.Practice;
using ShedBot.Tests.Cards;

namespace ShedBot.Tests.Practice;

public sealed class TypedTests
{
    private static readonly AnswerKeys Keys = AnswerKeys.Of(SampleCards.Everything);

    [Theory]
    [InlineData("1", "It swings all the way")]
    [InlineData(" 2. ", "It sticks")]
    [InlineData("n", "Not sure")]
    [InlineData("C", "Can't do that now")]
    [InlineData("w", "Why do you ask?")]
    [InlineData("e)", "Change an earlier answer")]
    public void Read_AKeyOfTheCard_PicksItsOption(string line, string label) =>
        Assert.Equal(label, Assert.IsType<TypedOption>(Typed.Read(line, Keys)).Option.Label);

    [Theory]
    [InlineData("3")]
    [InlineData("")]
    [InlineData("it sticks")]
    [InlineData("as before")]
    [InlineData("as soon as I let go it drags")]
    [InlineData("as a;b")]
    [InlineData("my bike")]
    [InlineData("skip it")]
    [InlineData("skip that one please")]
    [InlineData("😀")]
    public void Read_AnythingElse_IsWordsForTheCoach(string line) =>
        Assert.Equal(line, Assert.IsType<TypedWords>(Typed.Read(line, Keys)).Words);

    /// <summary>A letter that ends a case counts only where it is offered: a slip of the finger must not end one.</summary>
    [Theory]
    [InlineData("h")]
    [InlineData("l")]
    public void Read_ALetterThatEndsACaseAndIsNotOffered_StaysALetter(string line) =>
        Assert.Equal(line, Assert.IsType<TypedWords>(Typed.Read(line, AnswerKeys.None)).Words);

    [Theory]
    [InlineData("belief", typeof(TypedBelief))]
    [InlineData("Cases", typeof(TypedCases))]
    [InlineData("bike", typeof(TypedBike))]
    [InlineData("HELP", typeof(TypedHelp))]
    [InlineData("bye", typeof(TypedBye))]
    public void Read_AWordOfTheTerminal_IsForTheTerminal(string line, Type type) => Assert.IsType(type, Typed.Read(line, Keys));

    [Theory]
    [InlineData("skip", "")]
    [InlineData("skip 7 days", "7 days")]
    [InlineData("skip to 1 june", "to 1 june")]
    public void Read_Skip_SaysHowFar(string line, string words) => Assert.Equal(new TypedSkip(words), Typed.Read(line, Keys));

    [Fact]
    public void Read_ALetterThatTheCardDoesNotOffer_IsSpokenInstead() =>
        Assert.Equal("it came back", Assert.IsType<TypedWords>(Typed.Read("R", Keys)).Words);

    [Fact]
    public void Read_AsAndAName_SwitchesMember() => Assert.Equal(new TypedAs(new MemberName("Mira")), Typed.Read("as Mira", Keys));

    [Fact]
    public void Id_OfANameInAnyCase_IsTheSame() => Assert.Equal(new MemberName("MIRA").Id, new MemberName("mira").Id);
}
