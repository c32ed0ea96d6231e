using System.Collections.Immutable;
using System.Globalization;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using ShedBot.Benchmarks.Deciding;
using ShedBot.Benchmarks.Rules;
using ShedBot.Coaching;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Understanding;
using ShedBot.Storage;

namespace ShedBot.Benchmarks.Clubs;

/// <summary>
/// From a moderator's press on 'publish' to the card of the first turn that the new rules serve, over a durable data file; each run is a club of its own.
/// Beside it what the same would be without layers: all rule files read, looked over and compiled anew, with the listener, and the turn.
/// </summary>
[ShortRun(RunStrategy.Monitoring, warmups: 3, runs: 30)]
public class PublishToFirstUse
{
    private readonly string folder = Directory.CreateTempSubdirectory("shed-bench-").FullName;
    private LiteShedStore store = null!;
    private Ground ground = null!;
    private ClubCoaches coaches = null!;
    private TeachDesk desk = null!;
    private RecordedTurn turn = null!;
    private Teacher moderator = null!;
    private Proposal tried = null!;
    private int club;

    /// <summary>A phrase changes what is listened for, so the club gets a listener of its own; a strength does not.</summary>
    [Params("strength", "phrase")]
    public string Changed { get; set; } = "";

    [GlobalSetup]
    public async Task Setup()
    {
        var under = RuleBase.Of(ClubRules.Files);
        ground = new Ground(under, new Coach(under.Knowledge!, Listener.For(under.Knowledge!), new CoachOptions()));
        store = await LiteShedStore.OpenAsync(new StoreOptions { Path = Path.Combine(folder, "publish.db") }, CancellationToken.None);
        coaches = new ClubCoaches(store, () => ground);
        desk = new TeachDesk(store, () => under, new NothingTried());
        turn = RecordedTurns.Of(ground.Coach, 12, 1)[^1];
    }

    [GlobalCleanup]
    public async Task Cleanup()
    {
        desk.Dispose();
        await store.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>A proposal that was written and tried.</summary>
    [IterationSetup(Target = nameof(Publish))]
    public void Prepare() => PrepareAsync().GetAwaiter().GetResult();

    [Benchmark(Baseline = true)]
    public object LoadAllAnew()
    {
        var knowledge = KnowledgeLoader.Load(ClubRules.Files).Knowledge!;
        return Take(new Coach(knowledge, Listener.For(knowledge), new CoachOptions()));
    }

    [Benchmark]
    public async Task<object> Publish()
    {
        await ActAsync(new Publish(tried.Id, tried.Version));
        var served = await coaches.RulesAsync(moderator.Club, CancellationToken.None);
        return served.Edition == 1 ? Take(served.Coach) : throw new InvalidOperationException("The turn is not served by what was published.");
    }

    private async Task PrepareAsync()
    {
        var id = new ClubId(string.Create(CultureInfo.InvariantCulture, $"club-{++club}"));
        moderator = new Teacher(id, id.Member("moderator"), "A", TeachingRights.All);
        var answers = Changed == "phrase"
            ? new Dictionary<string, string> { ["of"] = "complaint", ["rule"] = "drags", ["add"] = "it creeps off like an old lorry in neutral" }
            : new Dictionary<string, string> { ["cause"] = "slack-too-big", ["what"] = "+sign", ["sign"] = "drags", ["word"] = "very likely" };
        var answer = await ActAsync(new BeginSheet(Changed));
        while (answer.Question is { } question) answer = await ActAsync(new AnswerSheet(answer.Proposal!.Id, question.Id, answers.TryGetValue(question.Id, out var given) ? [given] : []));
        tried = (await ActAsync(new TryOut(answer.Proposal!.Id))).Proposal!;
    }

    private async Task<TeachAnswer> ActAsync(TeachRequest request)
    {
        var answer = await desk.HandleAsync(moderator, request, RecordedTurns.Noon, CancellationToken.None);
        return answer.Refused is { } refused ? throw new InvalidOperationException($"{request}: {refused.Say}") : answer;
    }

    private Turn Take(Coach coach) => coach.Take(turn.Before, turn.Bike, turn.Incoming, RecordedTurns.Noon);

    /// <summary>A trial takes its time before anybody can publish; it is measured by itself.</summary>
    private sealed class NothingTried : ITrials
    {
        public Task<TriedOut> TryAsync(KnowledgeBase old, KnowledgeBase changed, ImmutableArray<ClosedCase> cases, IProgress<double>? progress, CancellationToken ct) => Task.FromResult(new TriedOut("", []));

        public ImmutableArray<CardBlock> Show(string report, KnowledgeBase old, KnowledgeBase changed) => [];
    }
}
