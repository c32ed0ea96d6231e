using System.Collections.Immutable;
using ShedBot.Coaching.Bikes;
using ShedBot.Coaching.Cases;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;
using ShedBot.Reasoning.Evidences;
using ShedBot.Reasoning.Inference;
using ShedBot.Reasoning.Modelling;

namespace ShedBot.Coaching.Thinking;

/// <summary>A case seen through the rules: its entries as evidence, and what follows from them. Worked out anew each turn.</summary>
internal sealed class CaseView
{
    /// <summary>After so long the word that all is safe must be given anew: the engine may be hot again.</summary>
    private static readonly TimeSpan ReadyLasts = TimeSpan.FromHours(6);

    /// <summary>Words for chances are bands of five per cent and more, so a bound of eight on what is left out is close enough to stay at pairs.</summary>
    public static InferenceOptions Bounds { get; } = new(RaiseAbove: 0.08);

    private readonly Lazy<DiagnosticModel> model;
    private readonly Lazy<Belief> belief;
    private readonly DateTimeOffset now;

    private CaseView(
        KnowledgeBase knowledge,
        ImmutableArray<CaseEntry> standing,
        ImmutableArray<Evidence> evidence,
        ImmutableArray<CaseEntry> evidenceFrom,
        ImmutableDictionary<string, string> facts,
        DateTimeOffset now)
    {
        this.now = now;
        Knowledge = knowledge;
        Standing = standing;
        Evidence = evidence;
        EvidenceFrom = evidenceFrom;
        Facts = facts;
        model = new Lazy<DiagnosticModel>(() => MachineProfile.ModelFor(knowledge, facts));
        belief = new Lazy<Belief>(() => Inferrer.Infer(Model, Evidence, Bounds));
    }

    public KnowledgeBase Knowledge { get; }

    /// <summary>The model of the rules with the priors moved by what is known of this bike.</summary>
    public DiagnosticModel Model => model.Value;

    public ImmutableArray<CaseEntry> Standing { get; }

    public ImmutableArray<Evidence> Evidence { get; }

    /// <summary>The entry that each piece of <see cref="Evidence"/> comes from.</summary>
    public ImmutableArray<CaseEntry> EvidenceFrom { get; }

    /// <summary>What is known of the bike, fact to value.</summary>
    public ImmutableDictionary<string, string> Facts { get; }

    public Belief Belief => belief.Value;

    /// <summary>Questions and checks that were put, whatever came of them.</summary>
    public int Asked => Standing.Count(IsQuestion);

    /// <summary>The same since the last repair was tried.</summary>
    public int AskedSinceRepair => SinceRepair.Count(IsQuestion);

    /// <summary>What stands since the last repair that did not mend it, newest first: what is known of the machine as it is now.</summary>
    public IEnumerable<CaseEntry> SinceRepair => Standing.Reverse().TakeWhile(e => !IsRepairResult(e));

    /// <summary>What is open: the covers behind which something was answered since the last repair; a trial ride needs them shut again.</summary>
    public ImmutableHashSet<string> OpenCovers => SinceRepair
        .Where(e => e.Kind == EntryKind.Answer && Knowledge.Checks.ContainsKey(e.Subject))
        .Select(e => Knowledge.Checks[e.Subject].Cover)
        .OfType<string>()
        .ToImmutableHashSet(StringComparer.Ordinal);

    public bool Ready => LastReadiness is { Kind: EntryKind.Ready } ready && now - ready.At <= ReadyLasts;

    public bool SaidNotReady => LastReadiness is { Kind: EntryKind.NotReady };

    public IEnumerable<string> Complaints => Standing.Where(e => e.Kind == EntryKind.Complaint).Select(e => e.Subject).Distinct();

    private CaseEntry? LastReadiness => Standing.LastOrDefault(e => e.Kind is EntryKind.Ready or EntryKind.NotReady);

    public static CaseView Of(Case @case, BikeProfile bike, KnowledgeBase knowledge, DateTimeOffset now) =>
        Of([.. @case.Standing], BikeFacts.Fresh(bike, knowledge, now), knowledge, now);

    /// <summary>The same case, had this fact this value.</summary>
    public CaseView WithFact(string fact, string value)
    {
        var facts = Facts.SetItem(fact, value);
        return new CaseView(Knowledge, Standing, Evidence, EvidenceFrom, facts, now);
    }

    private static CaseView Of(ImmutableArray<CaseEntry> standing, ImmutableDictionary<string, string> facts, KnowledgeBase knowledge, DateTimeOffset now)
    {
        standing = standing.RemoveAll(e => !Knows(knowledge, e));
        foreach (var entry in standing.Where(e => e.Kind == EntryKind.Fact && e.Value is not null))
            facts = facts.SetItem(entry.Subject, entry.Value!);
        var evidence = ImmutableArray.CreateBuilder<Evidence>();
        var from = ImmutableArray.CreateBuilder<CaseEntry>();
        foreach (var entry in standing)
        {
            if (EntryEvidence.Of(entry, knowledge) is not { } piece) continue;
            evidence.Add(piece);
            from.Add(entry);
        }

        return new CaseView(knowledge, standing, evidence.ToImmutable(), from.ToImmutable(), facts, now);
    }

    /// <summary>Rules change while a case is open; what they know nothing of any more says nothing, and nobody is shown it.</summary>
    private static bool Knows(KnowledgeBase rules, CaseEntry entry) => entry.Kind switch
    {
        EntryKind.Complaint or EntryKind.Denied => rules.Complaints.ContainsKey(entry.Subject),
        EntryKind.Volunteered => rules.Findings.ContainsKey(entry.Subject),
        EntryKind.Either => rules.Eithers.Any(e => e.Id == entry.Subject),
        EntryKind.Fact or EntryKind.FactUnknown => rules.Facts.ContainsKey(entry.Subject),
        EntryKind.Unheard => rules.Checks.ContainsKey(entry.Subject) || rules.Facts.ContainsKey(entry.Subject),
        EntryKind.Answer or EntryKind.NotSure or EntryKind.Cannot or EntryKind.AskedAgain => rules.Checks.ContainsKey(entry.Subject),
        EntryKind.RepairShown or EntryKind.RepairRefused or EntryKind.RepairFailed or EntryKind.RepairBetter or EntryKind.RepairHeld or EntryKind.CameBack => rules.Repairs.ContainsKey(entry.Subject),
        _ => true,
    };

    private static bool IsQuestion(CaseEntry entry) =>
        entry.Kind is EntryKind.Answer or EntryKind.NotSure or EntryKind.Cannot or EntryKind.Fact or EntryKind.FactUnknown;

    private static bool IsRepairResult(CaseEntry entry) =>
        entry.Kind is EntryKind.RepairFailed or EntryKind.RepairBetter or EntryKind.CameBack;
}
