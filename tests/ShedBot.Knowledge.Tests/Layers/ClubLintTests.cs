using ShedBot.Knowledge.Layers;

namespace ShedBot.Knowledge.Tests.Layers;

/// <summary>The linter's rules for all files, on what clubs are likely to write: each is told at the club's own line, in words of the trade.</summary>
public class ClubLintTests
{
    private const string Slack = """
        faults:
          - id: bulb-slack
            is: the bulb has worked loose
            because: It was shaken.
            how common: rare
            shows as:
              flickers: {yes: very likely}
              dark: {yes: unlikely}
              bulb-look: {loose: very likely}

        """;

    private const string Turn = """
        repairs:
          - id: glue-bulb
            does: glue the bulb in
            mends: {bulb-slack: likely}
            minutes: 9
            steps: [{do: Glue it.}]

        """;

    /// <param name="at">A piece of the line on which it is told.</param>
    /// <param name="says">A piece of what is told.</param>
    [Theory]
    [InlineData("R041", Slack + Turn + "    prove: [Shake it.]\n", "flickers: {yes: very likely}", "nothing tells 'bulb-slack' from 'bulb-loose'")]
    [InlineData("R051", Slack + Turn, "glue-bulb", "does not say how to prove that it held")]
    [InlineData("R050", Slack, "bulb-slack", "no repair mends 'bulb-slack'")]
    [InlineData("R033", "mends:\n  - {of: fault, id: bulb-loose, key: shows as / bulb-look / loose, was: very likely, now: almost no chance}\n", "bulb-look / loose", "is seen anyway just as often")]
    [InlineData("R030", "mends:\n  - {of: finding, id: bulb-look, key: seen anyway / loose, was: almost no chance, now: very unlikely}\n  - {of: fault, id: bulb-loose, key: shows as / bulb-look / loose, was: very likely, now: almost no chance}\n", "bulb-loose", "seen anyway with 'very unlikely'")]
    [InlineData("R013", "mends:\n  - {of: fault, id: bulb-loose, key: how common, was: common, now: usual}\n", "now: usual", "'usual' is no word for 'how common'")]
    [InlineData("R014", "mends:\n  - {of: check, id: look-at-bulb, key: minutes, was: '2', now: 9000}\n", "9000", "must be from 0 to 600")]
    [InlineData("R022", "mends:\n  - {of: fault, id: bulb-loose, key: shows as / bulb-look / lose, now: likely}\n", "lose", "has no state 'lose'")]
    [InlineData("R021", "mends:\n  - {of: check, id: look-at-bulb, key: tells, was: bulb-look, now: bulb-lok}\n", "bulb-lok", "which is no finding or complaint")]
    [InlineData("R052", "mends:\n  - {of: repair, id: join-wire, key: hazard, now: medium}\n", "now: medium", "has the hazard 'medium' and no caution")]
    [InlineData("R060", "mends:\n  - {of: complaint, id: dark, key: riders say, add: smoke from the lamp}\n", "smoke from the lamp", "stands with")]
    [InlineData("R020", "complaints:\n  - {id: bulb-look, called: x, in short: x, riders say: [odd]}\nmends:\n  - {of: fault, id: wire-off, key: shows as / bulb-look / black, now: likely}\n", "id: bulb-look", "stands twice")]
    [InlineData("R020", "findings:\n  - {id: dark, means: x, states: [{id: a, says: A}, {id: b, says: B}]}\n", "id: dark", "stands twice")]
    [InlineData("R021", "retires:\n  - {of: cover, id: lamp-glass, because: open lamps}\nchecks:\n  - {id: look, tells: bulb-look, ask: How?, why: x, minutes: 1, cover: lamp-glass, hands on: yes, reliability: plain to see}\n", "cover: lamp-glass", "which is no cover")]
    public void Load_ClubsSlip_IsToldAtTheClubsLine(string code, string club, string at, string says)
    {
        club = club.ReplaceLineEndings("\n");

        var (_, problems) = new LayerCase(code, club, at, "").Run(club);

        var hit = Assert.Single(problems, p => p.Code == code);
        Assert.Equal(LampClub.File, hit.File);
        Assert.Contains(at, (LayerCase.About + club).Split('\n')[hit.Line - 1], StringComparison.Ordinal);
        Assert.Contains(says, hit.What, StringComparison.Ordinal);
    }

    /// <summary>Two faults of one repair need not be told apart.</summary>
    [Fact]
    public void Load_TwinMendedByTheSameRepair_IsFine()
    {
        var (load, problems) = new LayerCase("", "", "", "").Run(Slack + "mends:\n  - {of: repair, id: tighten-bulb, key: mends / bulb-slack, now: almost certain}\n");

        Assert.Empty(problems);
        Assert.Equal("almost certain", load!.Knowledge!.Repairs["tighten-bulb"].Mends["bulb-slack"]);
    }

    /// <summary>A cover opens on its own: there is no key by which one could be behind another, so no round of covers can be written.</summary>
    [Theory]
    [InlineData("cover")]
    [InlineData("behind")]
    public void Load_CoverBehindACover_CannotBeWritten(string key)
    {
        var (_, problems) = new LayerCase("", "", "", "").Run($"covers:\n  - {{id: tin, called: the tin, minutes: 1, how: [Lift it.], {key}: lamp-glass}}\n");

        Assert.Contains($"unknown key '{key}'", Assert.Single(problems).What, StringComparison.Ordinal);
        Assert.Null(LayeredRules.Load(LampClub.Base, Layer.Empty.Apply([new MendValue(new(RuleKind.Cover, "lamp-glass"), new(key), null, "lamp-glass", LampClub.Credit)]).Layer ?? LampClub.Of("about: {covers: x}\nmends:\n  - {of: cover, id: lamp-glass, key: " + key + ", now: lamp-glass, source: x, author: x, date: 2026-05-01}\n")).Knowledge);
    }
}
