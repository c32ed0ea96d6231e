using System.Collections.Immutable;
using ShedBot.Knowledge.Loading.Yaml;
using ShedBot.Knowledge.Rules;

namespace ShedBot.Knowledge.Loading.Reading;

/// <summary>Gathers the rules of all files.</summary>
internal sealed class DraftBuilder
{
    private readonly ImmutableArray<Written<ComplaintRule>>.Builder complaints = ImmutableArray.CreateBuilder<Written<ComplaintRule>>();
    private readonly ImmutableArray<Written<FindingRule>>.Builder findings = ImmutableArray.CreateBuilder<Written<FindingRule>>();
    private readonly ImmutableArray<Written<FactRule>>.Builder facts = ImmutableArray.CreateBuilder<Written<FactRule>>();
    private readonly ImmutableArray<Written<FaultRule>>.Builder faults = ImmutableArray.CreateBuilder<Written<FaultRule>>();
    private readonly ImmutableArray<Written<CheckRule>>.Builder checks = ImmutableArray.CreateBuilder<Written<CheckRule>>();
    private readonly ImmutableArray<Written<CoverRule>>.Builder covers = ImmutableArray.CreateBuilder<Written<CoverRule>>();
    private readonly ImmutableArray<Written<RepairRule>>.Builder repairs = ImmutableArray.CreateBuilder<Written<RepairRule>>();
    private readonly ImmutableArray<Written<HowToRule>>.Builder howTos = ImmutableArray.CreateBuilder<Written<HowToRule>>();
    private readonly ImmutableArray<Written<EmergencyRule>>.Builder emergencies = ImmutableArray.CreateBuilder<Written<EmergencyRule>>();
    private readonly ImmutableArray<Written<WordRule>>.Builder words = ImmutableArray.CreateBuilder<Written<WordRule>>();
    private readonly ImmutableArray<Written<TriageRule>>.Builder triages = ImmutableArray.CreateBuilder<Written<TriageRule>>();
    private readonly ImmutableArray<Written<EitherRule>>.Builder eithers = ImmutableArray.CreateBuilder<Written<EitherRule>>();
    private readonly ImmutableArray<Written<ServiceRule>>.Builder service = ImmutableArray.CreateBuilder<Written<ServiceRule>>();

    public void Add(string file, MapNode root)
    {
        var about = root["about"] as MapNode;
        Each(complaints, "complaints", ReadCauses.Complaint);
        Each(findings, "findings", ReadCauses.Finding);
        Each(facts, "facts", ReadCauses.Fact);
        Each(faults, "faults", ReadCauses.Fault);
        Each(checks, "checks", ReadWork.Check);
        Each(covers, "covers", ReadWork.Cover);
        Each(repairs, "repairs", ReadWork.Repair);
        Each(howTos, "how to", ReadAdvice.HowTo);
        Each(emergencies, "emergencies", ReadAdvice.Emergency);
        Each(words, "words", ReadAdvice.Word);
        Each(eithers, "could be either", ReadAdvice.Either);
        Each(service, "service", ReadService.Task);
        if (root["before hands on"] is MapNode triage) triages.Add(Item(triage, ReadAdvice.Triage));

        void Each<T>(ImmutableArray<Written<T>>.Builder list, string key, Func<Fields, T> read)
        {
            if (root[key] is ListNode items) list.AddRange(items.Items.OfType<MapNode>().Select(m => Item(m, read)));
        }

        Written<T> Item<T>(MapNode node, Func<Fields, T> read) => new(read(new Fields(node, file, about)), node, file);
    }

    public Draft Build() => new(
        complaints.ToImmutable(),
        findings.ToImmutable(),
        facts.ToImmutable(),
        faults.ToImmutable(),
        checks.ToImmutable(),
        covers.ToImmutable(),
        repairs.ToImmutable(),
        howTos.ToImmutable(),
        emergencies.ToImmutable(),
        words.ToImmutable(),
        triages.ToImmutable(),
        eithers.ToImmutable(),
        service.ToImmutable());
}
