using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
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
/// <remarks>Not by the benchmark runner: it favours its own thread over those that the desk works on, which tells on a busy machine.</remarks>
internal sealed class PublishToFirstUse : IDisposable
{
    private const int Warmups = 2;

    private readonly Ground ground;
    private readonly ClubCoaches coaches;
    private readonly TeachDesk desk;
    private readonly RecordedTurn turn;
    private int club;

    private PublishToFirstUse(LiteShedStore store)
    {
        var under = RuleBase.Of(ClubRules.Files);
        ground = new Ground(under, new Coach(under.Knowledge!, Listener.For(under.Knowledge!), new CoachOptions()));
        coaches = new ClubCoaches(store, () => ground);
        desk = new TeachDesk(store, () => under, new NothingTried());
        turn = RecordedTurns.Of(ground.Coach, 12, 1)[^1];
    }

    public static async Task PrintAsync(int runs)
    {
        var folder = Directory.CreateTempSubdirectory("shed-bench-").FullName;
        await using (var store = await LiteShedStore.OpenAsync(new StoreOptions { Path = Path.Combine(folder, "publish.db") }, CancellationToken.None))
        {
            using var measured = new PublishToFirstUse(store);
            Console.WriteLine("| what is done | runs | p50 | longest | processor time, mean |");
            Console.WriteLine("| --- | --: | --: | --: | --: |");
            // A phrase changes what is listened for, so the club gets a listener of its own; a strength does not.
            foreach (var changed in new[] { "strength", "phrase" })
                await TellAsync($"published: another {changed}", runs, () => measured.TriedAsync(changed), measured.PublishAsync);
            await TellAsync("everything loaded anew", runs, () => Task.FromResult<(Teacher, Proposal)>(default), measured.LoadAllAnewAsync);
        }

        Directory.Delete(folder, recursive: true);
    }

    public void Dispose() => desk.Dispose();

    private static async Task TellAsync(string what, int runs, Func<Task<(Teacher, Proposal)>> prepare, Func<Teacher, Proposal, Task> run)
    {
        using var process = Process.GetCurrentProcess();
        var (taken, spent) = (new List<double>(), TimeSpan.Zero);
        for (var i = -Warmups; i < runs; i++)
        {
            var (who, tried) = await prepare();
            process.Refresh();
            var (before, clock) = (process.TotalProcessorTime, Stopwatch.GetTimestamp());
            await run(who, tried);
            var passed = Stopwatch.GetElapsedTime(clock).TotalMilliseconds;
            process.Refresh();
            if (i < 0) continue;
            taken.Add(passed);
            spent += process.TotalProcessorTime - before;
        }

        taken.Sort();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {what} | {runs} | {taken[(runs - 1) / 2]:0} ms | {taken[^1]:0} ms | {spent.TotalMilliseconds / runs:0} ms |"));
    }

    private async Task PublishAsync(Teacher who, Proposal tried)
    {
        await ActAsync(who, new Publish(tried.Id, tried.Version));
        var served = await coaches.RulesAsync(who.Club, CancellationToken.None);
        if (served.Edition != 1) throw new InvalidOperationException("The turn is not served by what was published.");
        Take(served.Coach);
    }

    private Task LoadAllAnewAsync(Teacher who, Proposal tried)
    {
        var knowledge = KnowledgeLoader.Load(ClubRules.Files).Knowledge!;
        Take(new Coach(knowledge, Listener.For(knowledge), new CoachOptions()));
        return Task.CompletedTask;
    }

    /// <summary>A proposal that was written and tried.</summary>
    private async Task<(Teacher, Proposal)> TriedAsync(string changed)
    {
        var id = new ClubId(string.Create(CultureInfo.InvariantCulture, $"club-{++club}"));
        var who = new Teacher(id, id.Member("moderator"), "A", TeachingRights.All);
        var answers = changed == "phrase"
            ? new Dictionary<string, string> { ["of"] = "complaint", ["rule"] = "drags", ["add"] = "it creeps off like an old lorry in neutral" }
            : new Dictionary<string, string> { ["cause"] = "slack-too-big", ["what"] = "+sign", ["sign"] = "drags", ["word"] = "very likely" };
        var answer = await ActAsync(who, new BeginSheet(changed));
        while (answer.Question is { } question) answer = await ActAsync(who, new AnswerSheet(answer.Proposal!.Id, question.Id, answers.TryGetValue(question.Id, out var given) ? [given] : []));
        return (who, (await ActAsync(who, new TryOut(answer.Proposal!.Id))).Proposal!);
    }

    private async Task<TeachAnswer> ActAsync(Teacher who, TeachRequest request)
    {
        var answer = await desk.HandleAsync(who, request, RecordedTurns.Noon, CancellationToken.None);
        return answer.Refused is { } refused ? throw new InvalidOperationException($"{request}: {refused.Say}") : answer;
    }

    private void Take(Coach coach) => coach.Take(turn.Before, turn.Bike, turn.Incoming, RecordedTurns.Noon);

    /// <summary>A trial takes its time before anybody can publish; it is measured by itself.</summary>
    private sealed class NothingTried : ITrials
    {
        public Task<TriedOut> TryAsync(KnowledgeBase old, KnowledgeBase changed, ImmutableArray<ClosedCase> cases, IProgress<double>? progress, CancellationToken ct) => Task.FromResult(new TriedOut("", []));

        public ImmutableArray<CardBlock> Show(string report, KnowledgeBase old, KnowledgeBase changed) => [];

        public ImmutableArray<CardBlock> Figures(string report, KnowledgeBase old, KnowledgeBase changed) => [];
    }
}
