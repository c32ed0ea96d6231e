using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Learning;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Reporting;
using ShedBot.Coaching.Teaching.Writing;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>Words that were not understood, at the desk: ranked, taught with one tap, gone when they are understood, and never another club's.</summary>
public sealed class UnheardTests : IDisposable
{
    private const string Trot = "she fancies a trot when i stop at the lights", Plugh = "xyzzy plugh";

    private readonly School school = new();

    public void Dispose() => school.Dispose();

    [Fact]
    public async Task List_SameWordsOfSeveralFirst_OneMembersMarked()
    {
        Hear("ann", Plugh);
        Hear("ann", Plugh);
        Hear("ben", Trot);
        Hear("cy", "She fancies a TROT, when I stop at the lights!");

        var card = (await school.DoAsync(School.Ada, new ShowUnheard())).Card;

        var text = School.Text(card);
        Assert.Contains("stop at the lights!\" Said 2 times, by 2 members.", text, StringComparison.Ordinal);
        Assert.Contains($"\"{Plugh}\" Said 2 times, by one member only.", text, StringComparison.Ordinal);
        Assert.True(text.IndexOf("TROT", StringComparison.Ordinal) < text.IndexOf("plugh", StringComparison.Ordinal));
        Assert.All(new[] { "ann", "ben", "cy" }, m => Assert.DoesNotContain(School.Club.Member(m).Value, text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task List_WhatIsUnderstoodByNow_IsLeftOut()
    {
        Hear("ann", "my clutch drags");
        Hear("ann", Plugh);

        var text = School.Text((await school.DoAsync(School.Ada, new ShowUnheard())).Card);

        Assert.DoesNotContain("drags", text, StringComparison.Ordinal);
        Assert.Contains(Plugh, text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task List_MoreThanAPage_GoesOn()
    {
        for (var i = 0; i < UnheardCards.PageRows + 1; i++) Hear("ann", $"{Plugh} {(char)('a' + i)}x");

        var first = (await school.DoAsync(School.Ada, new ShowUnheard())).Card;
        var more = first.Options.Single(o => o.Label == "more of them");
        var second = (await school.DoAsync(School.Ada, TeachPress.Read(more.Id)!.Request!)).Card;

        Assert.Equal(UnheardCards.PageRows, first.Options.Count(o => o.Id.StartsWith("teach|UnheardWords", StringComparison.Ordinal)));
        Assert.Single(second.Options, o => o.Id.StartsWith("teach|UnheardWords", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Means_OneTap_FillsTheSheet_AndOncePublishedTheNextIsUnderstoodAndTheWordsAreGone()
    {
        Hear("ann", Trot);

        var sheet = await TeachAsync(Trot, "drags");

        Assert.Null(sheet.Refused);
        Assert.Null(sheet.Question);
        Assert.Contains(Trot, School.Text(sheet.Card), StringComparison.Ordinal);
        Assert.Contains(sheet.Card.Options, o => o.Label == "Try it out");
        Assert.Contains($"{sheet.Proposal!.Id} would teach it.", School.Text((await school.DoAsync(School.Ada, new ShowUnheard())).Card), StringComparison.Ordinal);
        var tried = await school.DoAsync(School.Ada, new TryOut(sheet.Proposal.Id));
        Assert.Equal(1, (await school.DoAsync(School.Ada, new Publish(sheet.Proposal.Id, tried.Proposal!.Version))).Edition);
        Assert.DoesNotContain("trot", School.Text((await school.DoAsync(School.Ada, new ShowUnheard())).Card), StringComparison.Ordinal);
        Assert.Equal("drags", Assert.Single((await NextRiderAsync(Trot)).Complaints).Id);

        // Taken back, they are not understood any more, and stand there again.
        await school.DoAsync(School.Ada, new TakeBack(0, 1));
        Assert.Contains("trot", School.Text((await school.DoAsync(School.Ada, new ShowUnheard())).Card), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Means_TappedTwice_IsOneSheet()
    {
        Hear("ann", Trot);

        var (once, twice) = (await TeachAsync(Trot, "drags"), await TeachAsync(Trot, "drags"));

        Assert.Equal(once.Proposal!.Id, twice.Proposal!.Id);
        Assert.Single(await school.Shelf.ProposalsAsync(School.Club, ProposalState.Draft, 10, default));
    }

    [Fact]
    public async Task Means_SomethingSeen_TaughtAndGone()
    {
        Hear("ann", Plugh);
        var state = Meaning.All(School.Shipped.Knowledge!).First(m => m.Rule == "slack-now");

        var sheet = await school.DoAsync(School.Ada, new TeachMeaning(UnheardCards.Mark(Plugh), state.Mark));
        var tried = await school.DoAsync(School.Ada, new TryOut(sheet.Proposal!.Id));

        Assert.Equal(1, (await school.DoAsync(School.Ada, new Publish(sheet.Proposal.Id, tried.Proposal!.Version))).Edition);
        Assert.DoesNotContain("plugh", School.Text((await school.DoAsync(School.Ada, new ShowUnheard())).Card), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Words_AnAnswerToAQuestion_OffersItsAnswers()
    {
        var check = School.Shipped.Knowledge!.Checks.Values.First(c => c.Tells == "slack-now");
        Hear("ann", Plugh, check.Id);

        var card = (await school.DoAsync(School.Ada, new ShowUnheardWords(UnheardCards.Mark(Plugh)))).Card;

        Assert.Contains(check.Ask, School.Text(card), StringComparison.Ordinal);
        Assert.Equal(School.Shipped.Knowledge.Findings["slack-now"].States.Length, card.Options.Count(o => o.Label.StartsWith("This means: ", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task SomethingElse_IsSearchedAmongAll()
    {
        Hear("ann", Plugh);
        var ask = new TeachPress(TeachVerb.OtherMeaning, UnheardCards.Mark(Plugh));

        var found = await school.DoAsync(School.Ada, ask.With("drags")!);
        var none = await school.DoAsync(School.Ada, ask.With("xylophone")!);
        var sheet = await school.DoAsync(School.Ada, TeachPress.Read(none.Card.Options.Single(o => o.Label == "Go through all of them").Id)!.Request!);

        Assert.Contains(found.Card.Options, o => TeachPress.Read(o.Id) is { Verb: TeachVerb.Means } means && means.B == Mark("drags"));
        Assert.Contains("Nothing in the rules is called like", School.Text(none.Card), StringComparison.Ordinal);
        Assert.Equal(PhraseSheet.Of, sheet.Question?.Id);
        Assert.Equal(Plugh, Assert.Single(sheet.Proposal!.Answers[PhraseSheet.Add]));
    }

    [Fact]
    public async Task Nothing_DropsThemHoweverTheyAreWritten_AndIsInTheLogWithoutWordsOfOneMember()
    {
        Hear("ann", Trot);
        Hear("ben", "She fancies a trot, when I stop at the lights");
        Hear("ann", Plugh);

        await school.DoAsync(School.Ada, new DropUnheard(UnheardCards.Mark(Trot)));
        var left = await school.DoAsync(School.Ada, new DropUnheard(UnheardCards.Mark(Plugh)));

        Assert.Empty(school.Shelf.Unheard);
        Assert.Contains("None", School.Text(left.Card), StringComparison.Ordinal);
        var log = School.Text((await school.DoAsync(School.Ada, new ShowLog())).Card);
        Assert.Contains("trot", log, StringComparison.Ordinal);
        Assert.Contains("dropped words of one member", log, StringComparison.Ordinal);
        Assert.DoesNotContain("plugh", log, StringComparison.Ordinal);
        Assert.Equal("gone", (await school.DoAsync(School.Ada, new DropUnheard(UnheardCards.Mark(Plugh)))).Refused?.Code);
    }

    [Fact]
    public async Task Words_WithPrivateParts_AreShownAndTaughtWithoutThem()
    {
        const string Raw = "she fancies a trot when i stop at the lights, ring Zebedee on 01632 960 123";
        Hear("ann", Raw);

        var answers = new[]
        {
            await school.DoAsync(School.Ada, new ShowUnheard()), await school.DoAsync(School.Ada, new ShowUnheardWords(UnheardCards.Mark(Raw))),
            await school.DoAsync(School.Ada, new SearchMeaning(UnheardCards.Mark(Raw), "drags")), await school.DoAsync(School.Ada, new TeachMeaning(UnheardCards.Mark(Raw), Mark("drags"))),
        };

        Assert.All(answers, a => Assert.DoesNotContain("960", School.Text(a.Card), StringComparison.Ordinal));
        Assert.All(answers, a => Assert.DoesNotContain("Zebedee", School.Text(a.Card), StringComparison.Ordinal));
        Assert.Equal(Trot, Assert.Single(answers[^1].Proposal!.Answers[PhraseSheet.Add]));
    }

    [Fact]
    public async Task AnotherClub_SeesAndReachesNothing()
    {
        Hear("ann", Trot);
        var stranger = School.Member("ada", TeachingRights.All, new ClubId("other-club"));
        var mark = UnheardCards.Mark(Trot);

        Assert.DoesNotContain("trot", School.Text((await school.DoAsync(stranger, new ShowUnheard())).Card), StringComparison.Ordinal);
        foreach (var act in new TeachRequest[] { new ShowUnheardWords(mark), new SearchMeaning(mark, "drags"), new TeachMeaning(mark, Mark("drags")), new DropUnheard(mark) })
        {
            var answer = await school.DoAsync(stranger, act);
            Assert.Equal("gone", answer.Refused?.Code);
            Assert.DoesNotContain("trot", School.Text(answer.Card), StringComparison.Ordinal);
        }

        Assert.Single(school.Shelf.Unheard);
    }

    private void Hear(string member, string words, string expected = UnheardWords.Trouble) =>
        school.Shelf.Unheard.Add(new UnheardWords(School.Club.Member(member), words, expected, School.Noon.AddMinutes(school.Shelf.Unheard.Count)));

    private Task<TeachAnswer> TeachAsync(string words, string complaint) => school.DoAsync(School.Ada, new TeachMeaning(UnheardCards.Mark(words), Mark(complaint)));

    private static string Mark(string complaint) => Meaning.All(School.Shipped.Knowledge!).Single(m => m.Rule == complaint && m.State.Length == 0 && m.Of == "complaint").Mark;

    /// <summary>How the club's coach hears the next rider.</summary>
    private async Task<Understood> NextRiderAsync(string words)
    {
        var plain = new Coach(School.Shipped.Knowledge!, Listener.For(School.Shipped.Knowledge!), new CoachOptions());
        return (await new ClubCoaches(school.Shelf, () => new Ground(School.Shipped, plain)).OfAsync(School.Club, default)).Listener.Understand(words);
    }
}
