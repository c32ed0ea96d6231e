using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Teaching;
using ShedBot.Knowledge;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>A trial that finds nothing, at once.</summary>
internal sealed class QuickTrials : ITrials
{
    public Task<TriedOut> TryAsync(KnowledgeBase old, KnowledgeBase changed, ImmutableArray<ClosedCase> cases, IProgress<double>? progress, CancellationToken ct) =>
        Task.FromResult(new TriedOut("none", []));

    public ImmutableArray<CardBlock> Show(string report, KnowledgeBase old, KnowledgeBase changed) => [new TextBlock("It was tried.")];

    public ImmutableArray<CardBlock> Figures(string report, KnowledgeBase old, KnowledgeBase changed) => [new TextBlock("It was measured.")];
}

/// <summary>A trial that is done when the test says so.</summary>
internal sealed class HeldTrials : ITrials
{
    private readonly TaskCompletionSource done = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Trials that were begun.</summary>
    public int Begun { get; private set; }

    /// <summary>Where the trial that runs tells how far it is.</summary>
    public IProgress<double>? Far { get; private set; }

    public void Finish() => done.TrySetResult();

    public async Task<TriedOut> TryAsync(KnowledgeBase old, KnowledgeBase changed, ImmutableArray<ClosedCase> cases, IProgress<double>? progress, CancellationToken ct)
    {
        (Far, Begun) = (progress, Begun + 1);
        await done.Task.WaitAsync(ct);
        return new TriedOut("none", []);
    }

    public ImmutableArray<CardBlock> Show(string report, KnowledgeBase old, KnowledgeBase changed) => [new TextBlock("It was tried.")];

    public ImmutableArray<CardBlock> Figures(string report, KnowledgeBase old, KnowledgeBase changed) => [];
}
