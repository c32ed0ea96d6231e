using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using ShedBot.Coaching.Learning;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Wording;

namespace ShedBot.Coaching.Teaching.Moves;

/// <summary>The numbers of a club's rules that can be learnt: their short names, how they are called, and what they are without anything learnt.</summary>
internal static class TargetWords
{
    private const int MarkLetters = 10;

    /// <summary>A short name that fits where ids are too long. Two targets of one club have the same with a chance below one in a million.</summary>
    public static string Mark(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)))[..MarkLetters];

    /// <returns>Null when the text is no key.</returns>
    public static LearningTarget? Read(string key) => key.Split(' ') switch
    {
        ["odds", var fault] => new OddsTarget(fault),
        ["link", var fault, var finding, var state] => new LinkTarget(fault, finding, state),
        ["mend", var repair, var fault] => new MendTarget(repair, fault),
        _ => null,
    };

    /// <summary>Of which number a mark is the name, among all that the rules have; null for none.</summary>
    public static LearningTarget? Find(KnowledgeBase rules, string mark) => All(rules).FirstOrDefault(t => Mark(t.Key) == mark);

    /// <summary>As a moderator would call it; a number that the rules have no more by its key.</summary>
    public static string Called(KnowledgeBase rules, string key) => Read(key) switch
    {
        OddsTarget t when rules.Faults.TryGetValue(t.Fault, out var fault) => $"how common it is that {fault.Is}",
        LinkTarget t when rules.Faults.TryGetValue(t.Fault, out var fault) => $"how often \"{State(rules, t)}\" is seen when {fault.Is}",
        MendTarget t when rules.Repairs.TryGetValue(t.Repair, out var repair) && rules.Faults.TryGetValue(t.Fault, out var fault) => $"how often it helps to {repair.Does}, when {fault.Is}",
        _ => key,
    };

    /// <summary>The number without anything learnt: 1 for odds, the chance of its word for the others; null where the rules have no such number.</summary>
    public static double? Plain(KnowledgeBase rules, string key) => Read(key) switch
    {
        OddsTarget t when rules.Faults.ContainsKey(t.Fault) => 1,
        LinkTarget t when rules.Faults.TryGetValue(t.Fault, out var fault) && fault.ShowsAs.TryGetValue(t.Finding, out var states) && states.TryGetValue(t.State, out var word) => Chance(word),
        MendTarget t when rules.Repairs.TryGetValue(t.Repair, out var repair) && repair.Mends.TryGetValue(t.Fault, out var word) => Chance(word),
        _ => null,
    };

    /// <summary>As it stands in a sentence: "1.8 times as common", "72 %".</summary>
    public static string Number(string key, double number) => Read(key) is not OddsTarget ? string.Create(CultureInfo.InvariantCulture, $"{number * 100:0} %")
        : number >= 1 ? string.Create(CultureInfo.InvariantCulture, $"{number:0.##} times as common")
        : string.Create(CultureInfo.InvariantCulture, $"{1 / number:0.##} times as rare");

    private static IEnumerable<LearningTarget> All(KnowledgeBase rules) =>
    [
        .. rules.Faults.Keys.Select(f => new OddsTarget(f)),
        .. rules.Faults.Values.SelectMany(f => f.ShowsAs.SelectMany(s => s.Value.Keys.Select(state => new LinkTarget(f.Id, s.Key, state)))),
        .. rules.Repairs.Values.SelectMany(r => r.Mends.Keys.Select(f => new MendTarget(r.Id, f))),
    ];

    private static double? Chance(string word) => ChanceWords.TryChance(word, out var chance) ? chance : null;

    private static string State(KnowledgeBase rules, LinkTarget target) => rules.Findings.TryGetValue(target.Finding, out var finding)
        ? finding.States.FirstOrDefault(s => s.Id == target.State)?.Says ?? target.State
        : rules.Complaints.GetValueOrDefault(target.Finding)?.Called ?? target.Finding;
}
