using System.Collections.Immutable;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Tests.Samples;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>An invented club in which rules are written: a shelf, a desk, and some members.</summary>
internal sealed class School : IDisposable
{
    public static readonly ClubId Club = new("spoke-and-spanner");
    public static readonly DateTimeOffset Noon = new(2026, 5, 1, 10, 0, 0, TimeSpan.Zero);
    private static readonly Lazy<RuleBase> Base = new(() => RuleBase.Of(KnowledgeFolder.Read(Path.Combine(Repository.Root, "knowledge"))));
    private static readonly Lazy<RuleBase> Small = new(() => RuleBase.Of([RuleText.FromText("pump.yaml", Pump.Text)]));

    /// <param name="rules">The project's rules; without them the shipped ones.</param>
    public School(RuleBase? rules = null)
    {
        Rules = rules ?? Shipped;
        Desk = new TeachDesk(Shelf, () => Rules, Trials);
    }

    public static RuleBase Shipped => Base.Value;

    /// <summary>The rules of the small machine, where it does not matter what the rules are about.</summary>
    public static RuleBase OfThePump => Small.Value;

    public RuleBase Rules { get; set; }

    public TeachingShelf Shelf { get; } = new();

    public FakeTrials Trials { get; } = new();

    public TeachDesk Desk { get; }

    public static Teacher Ada { get; } = Member("ada", TeachingRights.All);

    public static Teacher Bo { get; } = Member("bo", TeachingRights.All);

    public static Teacher Member(string name, TeachingRights rights, ClubId? club = null) => new(club ?? Club, (club ?? Club).Member(name), name, rights);

    public Task<TeachAnswer> DoAsync(Teacher who, TeachRequest request, DateTimeOffset? at = null) => Desk.HandleAsync(who, request, at ?? Noon, CancellationToken.None);

    /// <summary>Answers a whole sheet by what is given, and skips the rest.</summary>
    public async Task<TeachAnswer> WriteAsync(Teacher who, string sheet, IReadOnlyDictionary<string, string[]> answers, string? tip = null)
    {
        var answer = await DoAsync(who, new BeginSheet(sheet, tip));
        while (answer.Question is { } question)
        {
            Assert.True(answer.Refused is null, $"{question.Id}: {answer.Refused?.Say}");
            Assert.True(!question.Required || answers.ContainsKey(question.Id), $"'{question.Id}' is asked: {question.Put(answer.Sheet!.Context)}");
            answer = await DoAsync(who, new AnswerSheet(answer.Proposal!.Id, question.Id, [.. answers.GetValueOrDefault(question.Id) ?? []]));
        }

        return answer;
    }

    /// <summary>Writes, tries and publishes.</summary>
    public async Task<TeachAnswer> PublishAsync(Teacher who, string sheet, IReadOnlyDictionary<string, string[]> answers)
    {
        var written = await WriteAsync(who, sheet, answers);
        var tried = await DoAsync(who, new TryOut(written.Proposal!.Id));
        return await DoAsync(who, new Publish(tried.Proposal!.Id, tried.Proposal.Version));
    }

    public static string Text(Card card) => string.Join('\n',
    [
        card.Title,
        .. card.Blocks.SelectMany(b => b switch
        {
            TextBlock t => [t.Text],
            ListBlock l => [l.Heading, .. l.Items],
            _ => Array.Empty<string>(),
        }),
        .. card.Options.Select(o => $"[{o.Label}]"),
    ]);

    public void Dispose() => Desk.Dispose();
}

/// <summary>A trial that says what it was asked to try.</summary>
internal sealed class FakeTrials : ITrials
{
    public int Made { get; private set; }

    /// <summary>What the next trials find lost of safety.</summary>
    public ImmutableArray<string> Lost { get; set; } = [];

    /// <summary>Whether the next trials come out worse.</summary>
    public bool Worse { get; set; }

    /// <summary>Done while the next trial runs: what somebody else does meanwhile.</summary>
    public Func<Task>? Meanwhile { get; set; }

    public async Task<TriedOut> TryAsync(KnowledgeBase old, KnowledgeBase changed, ImmutableArray<ClosedCase> cases, IProgress<double>? progress, CancellationToken ct)
    {
        Made++;
        if (Meanwhile is { } act)
        {
            Meanwhile = null;
            await act();
        }

        return new TriedOut($"{old.Version} {changed.Version} {cases.Length}", Lost, Worse);
    }

    public ImmutableArray<CardBlock> Show(string report, KnowledgeBase old, KnowledgeBase changed) => [new TextBlock($"Tried: {report}")];

    public ImmutableArray<CardBlock> Figures(string report, KnowledgeBase old, KnowledgeBase changed) => [new TextBlock($"Measured: {report}")];
}
