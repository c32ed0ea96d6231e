using Xunit.Abstractions;

namespace ShedBot.Knowledge.Tests.Understanding;

/// <summary>
/// Judged on messages that others labelled (the README beside this file; the labels are one person's judgement, common practice). The
/// blind set counts: its texts were never read while the matcher and the phrases were worked on, and are not printed here. The floors
/// stand a little under what is reached, so that a change for the worse is noticed.
/// </summary>
public class ScoreTests(ITestOutputHelper output)
{
    [Fact]
    public void Understand_BlindMessages_ReachesTheFloors()
    {
        var scores = Scores.Over(RiderMessage.Read("messages.blind.jsonl"));
        output.WriteLine(scores.ToString());

        Assert.InRange(scores.Of("top complaint"), 0.80, 1);
        Assert.InRange(scores.Of("exact set"), 0.79, 1);
        Assert.InRange(scores.Of("emergency, any noticed"), 0.78, 1);
        Assert.InRange(scores.Of("false alarm"), 0, 0.04);
        Assert.InRange(scores.Of("not mine or ours"), 0.92, 1);
        Assert.InRange(scores.Of("plain, asked which is meant"), 0, 0.02);
        Assert.InRange(scores.Of("nothing denied is heard"), 0.80, 1);
    }

    [Theory]
    [InlineData("messages.dev.jsonl")]
    [InlineData("messages.more.jsonl")]
    public void Understand_MessagesItWasTunedOn_ReachesTheFloors(string file)
    {
        var scores = Scores.Over(RiderMessage.Read(file));
        output.WriteLine(scores.ToString());

        Assert.InRange(scores.Of("top complaint"), 0.94, 1);
        Assert.InRange(scores.Of("exact set"), 0.885, 1);
        Assert.InRange(scores.Of("not mine or ours"), 0.97, 1);
        Assert.InRange(scores.Of("emergency, any noticed"), 0.97, 1);
        Assert.InRange(scores.Of("false alarm"), 0, 0.01);
        Assert.InRange(scores.Of("how-to wrongly offered"), 0, 0.03);
        Assert.InRange(scores.Of("plain, asked which is meant"), 0, 0.01);
        Assert.InRange(scores.Of("could be either, asked"), 0.9, 1);
    }

    /// <summary>Only the emergency of these is labelled. They were tuned on: they hold what was learnt and prove nothing new.</summary>
    [Fact]
    public void Understand_DangersAndWhatOnlySoundsSo_ReachesTheFloors()
    {
        var scores = Scores.Over(RiderMessage.Read("messages.danger.jsonl"));
        output.WriteLine(scores.ToString());

        Assert.InRange(scores.Of("emergency, any noticed"), 0.92, 1);
        Assert.InRange(scores.Of("emergency noticed"), 0.90, 1);
        Assert.InRange(scores.Of("false alarm"), 0, 0.02);
    }

    [Fact]
    public void Understand_PhrasesOfTheRules_HearsTheirOwnComplaint()
    {
        var missed = Shipped.Knowledge.Complaints.Values
            .SelectMany(c => c.RidersSay.Select(p => (c.Id, Phrase: p)))
            .Where(p => Shipped.Listener.Understand(p.Phrase).Complaints is not [var top, ..] || top.Id != p.Id)
            .ToList();
        var all = Shipped.Knowledge.Complaints.Values.Sum(c => c.RidersSay.Length);
        output.WriteLine($"{all - missed.Count} of {all}");
        missed.ForEach(m => output.WriteLine($"{m.Id}: {m.Phrase}"));

        Assert.InRange((double)missed.Count / all, 0, 0.02);
    }
}
