using ShedBot.Knowledge.Understanding;

namespace ShedBot.Knowledge.Tests.Understanding;

public class AnswerListenerTests
{
    private static readonly AnswerOption[] Swing =
    [
        new("full", "It swings all the way", ["the arm swings fully"]),
        new("barely", "It barely moves", ["the arm hardly moves"]),
        new("flexes", "It bends or the cover lifts", ["the arm bends when I pull"]),
    ];

    private static readonly AnswerOption[] YesNo = [new("yes", "Yes, it does", []), new("no", "No, it does not", [])];

    [Theory]
    [InlineData("2", "barely")]
    [InlineData("the second one", "barely")]
    [InlineData("the last one", "flexes")]
    [InlineData("option 1 please", "full")]
    [InlineData("It barely moves", "barely")]
    [InlineData("it bends a bit", "flexes")]
    [InlineData("barly moves", "barely")]
    [InlineData("the cover lifts", "flexes")]
    public void Hear_WordsForAnOption_IsThatOption(string words, string option) =>
        Assert.Equal((AnswerKind.Option, option), (AnswerListener.Hear(words, Swing)!.Kind, AnswerListener.Hear(words, Swing)!.OptionId));

    [Theory]
    [InlineData("yes", "yes")]
    [InlineData("yup", "yes")]
    [InlineData("yeah kinda", "yes")]
    [InlineData("nope", "no")]
    [InlineData("nah", "no")]
    [InlineData("not really", "no")]
    public void Hear_YesOrNo_IsTheOptionThatBeginsSo(string words, string option) =>
        Assert.Equal(option, AnswerListener.Hear(words, YesNo)!.OptionId);

    [Fact]
    public void Hear_SoftYes_IsLessSureThanAPlainOne() =>
        Assert.True(AnswerListener.Hear("yeah kinda", YesNo)!.Score < AnswerListener.Hear("yeah", YesNo)!.Score);

    [Theory]
    [InlineData("dunno", AnswerKind.NotSure)]
    [InlineData("no idea", AnswerKind.NotSure)]
    [InlineData("not sure", AnswerKind.NotSure)]
    [InlineData("hard to tell", AnswerKind.NotSure)]
    [InlineData("still no idea mate", AnswerKind.NotSure)]
    [InlineData("nope, dunno", AnswerKind.NotSure)]
    [InlineData("havent got a clue", AnswerKind.NotSure)]
    [InlineData("cant get at it", AnswerKind.Cannot)]
    [InlineData("can't do that right now", AnswerKind.Cannot)]
    [InlineData("I don't have a puller", AnswerKind.Cannot)]
    [InlineData("skip", AnswerKind.Cannot)]
    [InlineData("go back", AnswerKind.Back)]
    [InlineData("oops", AnswerKind.Back)]
    [InlineData("why do you ask?", AnswerKind.Why)]
    [InlineData("why", AnswerKind.Why)]
    [InlineData("show me how", AnswerKind.ShowMe)]
    [InlineData("how do I do that", AnswerKind.ShowMe)]
    [InlineData("what is a set screw", AnswerKind.ShowMe)]
    [InlineData("stop", AnswerKind.Stop)]
    [InlineData("forget it", AnswerKind.Stop)]
    [InlineData("leave", AnswerKind.Stop)]
    [InlineData("Leave, please", AnswerKind.Stop)]
    [InlineData("I want to leave", AnswerKind.Stop)]
    public void Hear_WordsAboutTheQuestion_AreThatKind(string words, AnswerKind kind) =>
        Assert.Equal(kind, AnswerListener.Hear(words, Swing)!.Kind);

    [Theory]
    [InlineData("")]
    [InlineData("🔥")]
    [InlineData("9")]
    [InlineData("yes")]
    [InlineData("there is oil all over the pads")]
    [InlineData("the lever lock pops out as well")]
    public void Hear_WordsThatFitNoOption_AreNoAnswer(string words) => Assert.Null(AnswerListener.Hear(words, Swing));

    [Fact]
    public void Understand_WithAnOpenQuestion_TellsTheAnswer() =>
        Assert.Equal("barely", Shipped.Listener.Understand("hardly moves at all", new ListeningContext(Swing)).Answer?.OptionId);
}
