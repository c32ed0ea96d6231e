using System.Text;
using ShedBot.Coaching.Teaching;
using ShedBot.Knowledge;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>
/// The six things that a rule most often has wrong, provoked as a moderator would, on a sheet and by file: each is told in a mechanic's words, and a sheet with the
/// question that mends it. Which rules clash is looked up in the shipped rules, so that it stays so when they change.
/// </summary>
public sealed class PlainLintTests
{
    private static KnowledgeBase Shipped => School.Shipped.Knowledge!;

    [Fact]
    public async Task Sheet_ContradictsAStrongerRule_AsksForTheWordAgain()
    {
        var (fault, finding, other) = Shipped.Faults.Values.SelectMany(f => f.ShowsAs.Select(s => (Fault: f, Sign: s)))
            .Where(x => Shipped.Findings.ContainsKey(x.Sign.Key) && x.Sign.Value.Count == 1 && x.Sign.Value.Values.First() == "almost certain")
            .SelectMany(x => Shipped.Findings[x.Sign.Key].States.Skip(1).Where(s => !x.Sign.Value.ContainsKey(s.Id)).Select(s => (x.Fault.Id, x.Sign.Key, s.Id)))
            .Order().First();
        using var school = new School();
        var written = await school.WriteAsync(School.Ada, "strength", new Dictionary<string, string[]>
        {
            ["cause"] = [fault],
            ["what"] = ["+sign"],
            ["sign"] = [finding],
            ["state"] = [other],
            ["word"] = ["very likely"],
        });
        IsTold(written, "Does not fit yet", "Those strengths cannot all be so at once: one thing cannot be found in two ways nearly always.", "word");
    }

    [Fact]
    public async Task Sheet_ACauseLikeAnotherOne_AsksForASignThatTellsThemApart()
    {
        var twin = Shipped.Faults.Values.Where(f => f.MovedBy.IsEmpty && f.ShowsAs.All(s => s.Value.Count == 1))
            .Where(f => f.ShowsAs.Count(s => Shipped.Complaints.ContainsKey(s.Key)) == 1 && f.ShowsAs.Count(s => Shipped.Findings.ContainsKey(s.Key)) is 1 or 2 or 3)
            .OrderBy(f => f.Id, StringComparer.Ordinal).First();
        var complaint = twin.ShowsAs.First(s => Shipped.Complaints.ContainsKey(s.Key));
        var answers = Without(Filled.Cause, "sign", "check");
        (answers["complaint"], answers["complaint-strength"]) = ([complaint.Key], [complaint.Value.Values.First()]);
        var number = 0;
        foreach (var (sign, states) in twin.ShowsAs.Where(s => s.Key != complaint.Key))
        {
            var id = ++number == 1 ? "sign" : $"sign-{number}";
            (answers[id], answers[id + "-state"], answers[id + "-strength"]) = ([sign], [states.Keys.First()], [states.Values.First()]);
        }

        using var school = new School();
        var written = await school.WriteAsync(School.Ada, "cause", answers);
        IsTold(written, "To look at", "Nothing tells this cause from another one. Name a sign that only one of the two shows.", "sign-2");
        Assert.Contains($"\"{twin.Is}\"", School.Text(written.Card));
    }

    [Fact]
    public async Task Sheet_ACheckWithoutACautionBesideAHazard_AsksHowDangerousItIs()
    {
        var warned = Shipped.Checks.Values.Where(c => c is { Hazard: "medium" or "high", Cautions.IsEmpty: false } && Shipped.Findings.ContainsKey(c.Tells)).OrderBy(c => c.Id, StringComparer.Ordinal).First();
        using var school = new School();
        var answers = new Dictionary<string, string[]>
        {
            ["finding"] = [warned.Tells],
            ["check-ask"] = ["How does it look from where you stand?"],
            ["check-why"] = ["From there it can be told."],
            ["check-minutes"] = ["1"],
            ["check-cover"] = ["+none"],
            ["check-hazard"] = ["none"],
            ["check-reliability"] = ["easy to misread"],
        };
        var written = await school.WriteAsync(School.Ada, "check", answers);
        IsTold(written, "To look at", "Another check of the same thing, or behind the same cover, warns of a danger, and this one does not.", "check-hazard");
        await school.DoAsync(School.Ada, new AnswerSheet(written.Proposal!.Id, "check-hazard", "medium"));
        var mended = await school.DoAsync(School.Ada, new AnswerSheet(written.Proposal.Id, "check-caution", "chain"));
        Assert.DoesNotContain("warns of a danger", School.Text((await school.DoAsync(School.Ada, new ShowProposal(mended.Proposal!.Id))).Card));
    }

    [Theory]
    [InlineData(false, "To look at", "That sign is found just as often on sound bikes, so it tells nothing.")]
    [InlineData(true, "Does not fit yet", "That is seen more often on sound bikes than you say it is seen with this cause")]
    public async Task Sheet_AStrengthThatDoesNothing_AsksForThatStrength(bool weaker, string under, string says)
    {
        var words = new[] { "almost no chance", "very unlikely", "unlikely", "roughly even chance", "likely" };
        var (finding, state, word) = Shipped.Findings.Values.SelectMany(f => f.SeenAnyway.Select(s => (f.Id, State: s.Key, Word: s.Value)))
            .Where(x => Shipped.Findings[x.Id].States[0].Id != x.State && Array.IndexOf(words, x.Word) >= 1).Order().First();
        var answers = Without(Filled.Cause, "sign", "check");
        (answers["sign"], answers["sign-state"], answers["sign-strength"]) = ([finding], [state], [weaker ? words[Array.IndexOf(words, word) - 1] : word]);
        using var school = new School();
        IsTold(await school.WriteAsync(School.Ada, "cause", answers), under, says, "sign-strength");
    }

    [Fact]
    public async Task Sheet_TwoStrengths_ThatOfTheSignComplainedOfIsAskedFor()
    {
        var words = new[] { "almost no chance", "very unlikely", "unlikely", "roughly even chance", "likely" };
        var (finding, state, word) = Shipped.Findings.Values.SelectMany(f => f.SeenAnyway.Select(s => (f.Id, State: s.Key, Word: s.Value)))
            .Where(x => Shipped.Findings[x.Id].States[0].Id != x.State && Array.IndexOf(words, x.Word) >= 1).Order().First();
        var answers = new Dictionary<string, string[]>(Filled.Cause) { ["sign-2"] = [finding], ["sign-2-state"] = [state], ["sign-2-strength"] = [word] };
        using var school = new School();
        IsTold(await school.WriteAsync(School.Ada, "cause", answers), "To look at", "That sign is found just as often on sound bikes", "sign-2-strength");
    }

    [Fact]
    public async Task Sheet_ARepairWithNoProof_CannotBeHandedInAndAsksForTheProof()
    {
        using var school = new School();
        var id = (await school.DoAsync(School.Ada, new BeginSheet("cause"))).Proposal!.Id;
        foreach (var (question, values) in Filled.Cause.Where(a => a.Key != "repair-prove")) await school.DoAsync(School.Ada, new AnswerSheet(id, question, [.. values]));
        var answer = await school.DoAsync(School.Ada, new HandIn(id));
        Assert.Equal(("missing", "repair-prove"), (answer.Refused?.Code, answer.Question?.Id));
        Assert.Equal("empty", (await school.DoAsync(School.Ada, new AnswerSheet(id, "repair-prove"))).Refused?.Code);
    }

    [Theory]
    [InlineData("prove:", "The rider must be able to tell that the repair held.", "Add 'prove:'")]
    [InlineData("cautions:", "You say that it can hurt a little, but not how.", "Say under 'cautions' what is dangerous, or set 'hazard: none'.")]
    public async Task File_WithAKeyTakenOut_IsToldPlainlyAndWhatToWrite(string key, string says, string mend)
    {
        using var school = new School();
        await school.PublishAsync(School.Ada, "cause", Filled.Cause);
        var text = School.Text((await UploadAsync(school, WithoutKey(await DownloadAsync(school), key))).Card);
        Assert.Contains(says, text);
        Assert.Contains(mend, text);
        Assert.True(text.Contains("\"cut the tight tie and put a looser one on\"", StringComparison.Ordinal), text);
        Assert.DoesNotContain("Line ", text);
    }

    [Fact]
    public async Task File_WithACoverBehindACover_SaysThatCoversDoNotNest()
    {
        using var school = new School();
        await school.PublishAsync(School.Ada, "cover", Filled.Cover);
        var text = await DownloadAsync(school);
        var id = Shipped.Covers.Keys.Order(StringComparer.Ordinal).First();
        var answer = await UploadAsync(school, text.Replace("    minutes: 2\n", $"    minutes: 2\n    cover: {id}\n", StringComparison.Ordinal));
        Assert.Equal("file", answer.Refused?.Code);
        Assert.Contains("A cover lies behind no other", School.Text(answer.Card));
    }

    private static void IsTold(TeachAnswer answer, string under, string says, string question)
    {
        var text = School.Text(answer.Card);
        Assert.Contains(says, text);
        Assert.True(text.IndexOf(under, StringComparison.Ordinal) is >= 0 and var at && at < text.IndexOf(says, StringComparison.Ordinal), text);
        Assert.Contains(answer.Card.Options, o => o.Label.StartsWith("Mend: ", StringComparison.Ordinal) && TeachPress.Read(o.Id) is { Verb: TeachVerb.GoOn } press && press.B == question);
        Assert.DoesNotMatch("'[a-z]+-[a-z-]+'", text);
    }

    private static Dictionary<string, string[]> Without(Dictionary<string, string[]> answers, params string[] beginnings) =>
        answers.Where(a => !beginnings.Any(b => a.Key == b || a.Key.StartsWith(b + "-", StringComparison.Ordinal))).ToDictionary(StringComparer.Ordinal);

    /// <summary>A key of an item goes with all that stands under it.</summary>
    private static string WithoutKey(string text, string key)
    {
        var lines = text.Split('\n').ToList();
        var at = lines.FindIndex(l => l.StartsWith("    " + key, StringComparison.Ordinal));
        Assert.True(at >= 0, text);
        var end = at + 1;
        while (end < lines.Count && lines[end].StartsWith("      ", StringComparison.Ordinal)) end++;
        lines.RemoveRange(at, end - at);
        return string.Join('\n', lines);
    }

    private static Task<TeachAnswer> UploadAsync(School school, string text) => school.DoAsync(School.Ada, new UploadRules("club.yaml", [.. Encoding.UTF8.GetBytes(text)]));

    private static async Task<string> DownloadAsync(School school) =>
        Encoding.UTF8.GetString(Assert.Single((await school.DoAsync(School.Ada, new DownloadRules())).Files).Bytes.ToArray());
}
