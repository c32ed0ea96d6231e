using ShedBot.Knowledge;
using ShedBot.Knowledge.Compiling;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;

namespace ShedBot.Benchmarks.Rules;

/// <summary>Invented words of a club's own over the shipped rules.</summary>
internal static class ClubEditions
{
    private static readonly Credit Credit = new("a benchmark", null, Credit.CommonPractice, new DateOnly(2026, 5, 1));

    /// <summary>A cause with all that belongs to it, of another name in each club, and a mend of how common another is. What riders say stays as it is.</summary>
    public static Layer Cause(int club) => Read($$$"""
        about: {covers: invented rules, author: a benchmark, source: common practice, date: 2026-05-01}
        findings:
          - {id: cap-{{{club}}}, means: how the cap sits, states: [{id: fine, says: Fine}, {id: gone, says: Gone}]}
        faults:
          - {id: cap-gone-{{{club}}}, is: the cap is gone, because: It fell off., how common: uncommon, shows as: {drags: {yes: likely}, cap-{{{club}}}: {gone: almost certain} } }
        checks:
          - {id: look-cap-{{{club}}}, tells: cap-{{{club}}}, ask: Is the cap there?, why: It falls off., minutes: 1, hands on: no, reliability: plain to see}
        repairs:
          - {id: new-cap-{{{club}}}, does: fit a cap, mends: {cap-gone-{{{club}}}: almost certain }, minutes: 5, steps: [{do: Fit it.}], prove: [Look at it.]}
        mends:
          - {of: fault, id: cover-screws-loose, key: how common, was: common, now: very common}
        """);

    /// <summary>One strength of one sign of one fault: only cases in which that sign was told or looked for are believed otherwise.</summary>
    public static Layer Strength { get; } = Changed(new MendValue(new(RuleKind.Fault, "arm-off-neutral"), new("shows as / plate-moves / barely"), "likely", "roughly even chance", Credit));

    /// <summary>The cause of <see cref="Cause"/>, and a phrase: such a club needs a listener of its own.</summary>
    public static Layer Phrase(int club) => Cause(club).Apply([new MendList(new(RuleKind.Complaint, "drags"), new("riders say"), $"it creeps off like lorry number {club}", null, Credit)]).Layer!;

    public static KnowledgeBase Over(RuleBase under, Layer layer) =>
        LayeredRules.LoadKept(under, layer, CompileOptions.Default) is { SetAside.IsEmpty: true, Knowledge: { } knowledge } ? knowledge : throw new InvalidOperationException("The invented layer does not fit the rules.");

    private static Layer Changed(RuleChange change) => Layer.Empty.Apply([change]).Layer!;

    private static Layer Read(string text) => Layer.Read(RuleText.FromText(Layer.DefaultFile, text)).Layer!;
}
