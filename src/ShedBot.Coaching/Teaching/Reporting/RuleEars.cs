using System.Runtime.CompilerServices;
using ShedBot.Coaching.Learning.Reports;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Coaching.Teaching.Reporting;

/// <summary>Listens with the rules of clubs; a listener takes a part of a second to make, so those of rules that are in use are kept. Safe to share between threads.</summary>
internal sealed class RuleEars
{
    private readonly ConditionalWeakTable<KnowledgeBase, Listener> listeners = new();
    private readonly ConditionalWeakTable<KnowledgeBase, UnheardReport> reports = new();

    public UnheardReport Of(RulesNow rules)
    {
        var before = listeners.GetValue(rules.Base.Knowledge!, Listener.For);
        return reports.GetValue(rules.Knowledge, k => new UnheardReport(k, Listener.For(k, before), before));
    }
}
