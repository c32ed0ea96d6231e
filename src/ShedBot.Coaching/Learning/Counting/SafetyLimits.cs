using ShedBot.Knowledge;

namespace ShedBot.Coaching.Learning.Counting;

/// <summary>What learning may never make seem less likely: whatever a rider must stop for.</summary>
internal sealed class SafetyLimits
{
    private readonly KnowledgeBase knowledge;
    private readonly HashSet<string> grave;

    public SafetyLimits(KnowledgeBase knowledge)
    {
        this.knowledge = knowledge;
        grave = [.. knowledge.Faults.Values.Where(f => f.ShowsAs.Any(s => s.Value.Keys.Any(state => Stops(s.Key, state)))).Select(f => f.Id)];
    }

    /// <summary>The fault shows as something for which a rider must stop.</summary>
    public bool IsGrave(string fault) => grave.Contains(fault);

    /// <summary>The state means 'stop riding'.</summary>
    public bool Stops(string finding, string state) =>
        knowledge.Findings.TryGetValue(finding, out var rule) && rule.States.Any(s => s.Id == state && s.StopRiding is not null);

    /// <summary>Some state of the finding means 'stop riding'; more of another state would leave less for it.</summary>
    public bool Stops(string finding) => knowledge.Findings.TryGetValue(finding, out var rule) && rule.States.Any(s => s.StopRiding is not null);
}
