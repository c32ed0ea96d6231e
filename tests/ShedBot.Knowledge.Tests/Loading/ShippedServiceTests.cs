using System.Globalization;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Knowledge.Tests.Loading;

/// <summary>The shipped service tasks. Intervals are common practice, no source; figures in steps name theirs beside the check.</summary>
public class ShippedServiceTests
{
    private static readonly KnowledgeBase Shipped =
        KnowledgeLoader.Load(KnowledgeFolder.Read(Path.Combine(ShippedRulesTests.Root(), "knowledge"))).Knowledge!;

    /// <summary>The trade's service card, row by row; common practice, no source.</summary>
    [Theory]
    [InlineData("14 riding days", "grease-bar-ball-cam smear-on-gears oil-clutch-cable oil-brake-and-throttle-cables look-at-slack spokes sprocket-bolts")]
    [InlineData("10 hours", "air-filter plug-look engine-mounts exhaust-nuts")]
    [InlineData("25 hours", "new-plug head-nuts-cold carburettor-bowl measure-chain")]
    [InlineData("50 hours", "clear-the-port fuel-line tyres brake-pads hubs")]
    [InlineData("100 hours", "measure-pads feel-bearings-and-seals compression-log renew-cables frame-cracks")]
    [InlineData("1 year", "measure-pads feel-bearings-and-seals compression-log renew-cables frame-cracks")]
    [InlineData("150 km", "oil-chain")]
    public void Every_RowOfTheServiceCard_IsThere(string interval, string tasks)
    {
        Assert.True(IntervalWords.TryRead(interval, out var wanted));
        Assert.All(tasks.Split(' '), task => Assert.Contains(wanted, Shipped.Service[task].Every));
    }

    /// <summary>Running in and re-checks after work; common practice, no source.</summary>
    [Theory]
    [InlineData("head-once-cold", "fitted", "1 riding day")]
    [InlineData("chain-settling", "fitted", "1 km|10 km|50 km")]
    [InlineData("chain-settling", "set-chain", "1 km|10 km|50 km")]
    [InlineData("sprocket-bolts", "fitted", "10 km|50 km")]
    [InlineData("slack-while-bedding", "fitted", "1 riding day|2 riding days")]
    [InlineData("slack-while-bedding", "new-pads", "1 riding day|2 riding days")]
    [InlineData("slack-while-bedding", "adjust-from-start", "1 riding day|2 riding days")]
    [InlineData("try-cover-screws", "fitted", "1 riding day|2 riding days")]
    [InlineData("try-centre-nut", "new-key", "1 riding day|10 km|50 km")]
    [InlineData("first-bolt-round", "fitted", "before the next ride|1 hour|5 hours")]
    [InlineData("grease-bar-ball-cam", "fitted", "before the next ride")]
    [InlineData("barrel-home-again", "take-up-on-the-road", "before the next ride")]
    [InlineData("air-filter", "fitted", "100 km")]
    [InlineData("long-term-oil", "fitted", "500 km")]
    public void After_Event_IsDueAsTheTradeSays(string task, string happened, string times)
    {
        var wanted = times.Split('|').Select(t => IntervalWords.TryRead(t, out var interval) ? interval : throw new FormatException(t));

        Assert.Equal(wanted, Assert.Single(Shipped.Service[task].After, a => a.Events.Contains(happened)).At.AsEnumerable());
    }

    /// <summary>Set once or twice it is bedding; setting the slack must not ask for the same look for ever.</summary>
    [Fact]
    public void After_SlackSetAgain_DoesNotStartOver() =>
        Assert.DoesNotContain(Shipped.Service["slack-while-bedding"].After, a => a.Events.Contains("set-slack"));

    /// <summary>What a repair asks to be watched in the first rides comes round by itself.</summary>
    [Theory]
    [InlineData("slack-while-bedding", "slack")]
    [InlineData("try-cover-screws", "the screws")]
    [InlineData("try-centre-nut", "nut after")]
    [InlineData("look-into-housing", "housing")]
    [InlineData("chain-settling", "chain")]
    public void After_RepairToBeWatched_FollowsOnIt(string task, string watched)
    {
        var events = Shipped.Service[task].After.SelectMany(a => a.Events).ToHashSet();
        var asking = Shipped.Repairs.Values.Where(r => r.Id != "set-slack" && r.Watch.Any(w => w.Contains(watched, StringComparison.OrdinalIgnoreCase) && w.Contains("after", StringComparison.OrdinalIgnoreCase))).ToList();

        Assert.NotEmpty(asking);
        Assert.All(asking, r => Assert.Contains(r.Id, events));
    }

    [Fact]
    public void BeforeEachRide_Shipped_IsOneTask() =>
        Assert.Equal("before-riding", Assert.Single(Shipped.Service.Values, t => t.BeforeEachRide).Id);

    /// <summary>A fact that only service asks for.</summary>
    [Theory]
    [InlineData("feel-outer-bearing", "outer-bearing", "shielded open")]
    [InlineData("look-at-return-spring", "return-spring", "fitted")]
    [InlineData("tensioner", "chain-tensioner", "fitted")]
    public void OnlyIf_PartThatNotEveryBikeHas_IsAskedFor(string task, string fact, string values)
    {
        var condition = Assert.Single(Shipped.Service[task].OnlyIf);

        Assert.Equal(fact, condition.Fact);
        Assert.Equal(values.Split(' '), condition.Values.AsEnumerable());
    }

    /// <summary>Every task that is done with tools or fluids near chain, heat, fuel or dust carries a caution, the most serious first (ANSI Z535.6, from memory).</summary>
    [Fact]
    public void Cautions_EveryTask_StandMostSeriousFirst() => Assert.All(Shipped.Service.Values, task =>
    {
        var ranks = task.Cautions.Select(c => SignalWords.All.ToList().IndexOf(c.Word)).ToList();
        Assert.NotEmpty(ranks);
        Assert.True(ranks.SequenceEqual(ranks.Order()), task.Id);
    });

    /// <summary>Fuel in the open is told with the strongest word, and outdoors, cold and without flame.</summary>
    [Theory]
    [InlineData("fuel-line")]
    [InlineData("carburettor-bowl")]
    [InlineData("long-term-oil")]
    public void Cautions_FuelInTheOpen_AreDanger(string task)
    {
        var caution = Shipped.Service[task].Cautions[0];

        Assert.Equal("DANGER", caution.Word);
        Assert.All(new[] { "outdoors", "cold engine", "no flame" }, words => Assert.Contains(words, caution.Avoid, StringComparison.Ordinal));
    }

    /// <summary>'Due: ...' and 'time to ...' are read out in the middle of a sentence.</summary>
    [Fact]
    public void CalledAndDoes_EveryTask_FitIntoASentence() => Assert.All(Shipped.Service.Values, task =>
    {
        Assert.All(new[] { task.Called, task.Does }, t => Assert.True(char.IsLower(t[0]) && char.IsLetter(t[^1]) && t.Length < 90, $"{task.Id}: {t}"));
        Assert.All(task.Steps.SelectMany(s => new[] { s.Do, s.Note ?? "." }), t => Assert.True(t[^1] is '.', $"{task.Id}: {t}"));
    });

    /// <summary>1 litre at 16, 20, 25 and 32 to 1: plain arithmetic, 1000 / ratio.</summary>
    [Theory]
    [InlineData("run-it-in", 16)]
    [InlineData("run-it-in", 20)]
    [InlineData("long-term-oil", 25)]
    [InlineData("long-term-oil", 32)]
    public void Steps_OilForALitre_IsTheArithmetic(string task, int ratio)
    {
        var text = string.Join(' ', Shipped.Service[task].Steps.Select(s => $"{s.Do} {s.Note}"));
        var exact = 1000.0 / ratio;

        Assert.Contains(
            new[] { exact, Math.Round(exact) }.Select(ml => string.Create(CultureInfo.InvariantCulture, $"{ml} ml at {ratio} to 1")),
            said => text.Contains(said, StringComparison.Ordinal));
    }

    /// <summary>
    /// Torque of a soft stud, dry: T = 0.2 x F x d with F three quarters of the proof load (Shigley's bolted joints, from memory). Stress areas
    /// 36.6 mm2 (M8) and 20.1 mm2 (M6) and proof strength 310 MPa of class 4.8 are those of ISO 898-1, from memory.
    /// </summary>
    [Theory]
    [InlineData(8, 36.6, "8 mm about 13.6 Nm")]
    [InlineData(6, 20.1, "6 mm about 5.6 Nm")]
    public void Steps_HeadNutTorque_IsTheBoltFormula(double diameter, double area, string said)
    {
        var torque = 0.2 * 0.75 * 310 * area * diameter / 1000;

        Assert.Contains(said, string.Join(' ', Shipped.Service["head-nuts-cold"].Steps.Select(s => s.Note)), StringComparison.Ordinal);
        Assert.Contains(torque.ToString("0.0", CultureInfo.InvariantCulture), said, StringComparison.Ordinal);
    }

    /// <summary>24 pitches of a half-inch chain are 24 x 12.7 mm (ISO 606, from memory); 306.4 mm is half a percent over, where chain gauges say replace.</summary>
    [Fact]
    public void Steps_ChainWear_IsHalfAPercentOverNew()
    {
        var text = string.Join(' ', Shipped.Service["measure-chain"].Steps.Select(s => s.Do));

        Assert.Contains((24 * 12.7).ToString("0.0", CultureInfo.InvariantCulture), text, StringComparison.Ordinal);
        Assert.Contains("306.4 mm", text, StringComparison.Ordinal);
        Assert.InRange(306.4 / (24 * 12.7), 1.005, 1.0055);
    }
}
