using ShedBot.Reasoning.Modelling;

namespace ShedBot.Reasoning.Exchange;

/// <summary>The <c>model</c> part of a <see cref="ModelLine"/>: a check and the finding it observes are one there, and carry the same id here.</summary>
internal static class ModelFields
{
    private const string Other = "other";

    public static DiagnosticModel Read(JsonField model)
    {
        var checks = model.Need("checks").Items().ToList();
        return DiagnosticModel.Create(
            model.Need("faults").Items().Select(f => new Fault(Id(f), f.Need("prior").Number(), Id(f) == Other)),
            checks.Select(ReadFinding),
            checks.Select(c => new Check(Id(c), Id(c), Cost(c), Error(c.Maybe("err")), c.Maybe("cluster")?.Text())),
            model.Maybe("repairs")?.Items().Select(r => new Repair(
                Id(r), Cost(r), [.. r.Need("fixes").Numbers().OrderBy(f => f.Key, StringComparer.Ordinal).Select(f => new Fix(f.Key, f.Value))],
                r.Maybe("cluster")?.Text())) ?? [],
            model.Maybe("clusters")?.Items().Select(c => new Cover(Id(c), Cost(c))) ?? [],
            model.Need("help").Need("cost").Number());
    }

    private static Finding ReadFinding(JsonField check) => Finding.YesNo(
        Id(check),
        check.Maybe("leak")?.Number() ?? 0,
        check.Need("p_yes").Numbers().OrderBy(p => p.Key, StringComparer.Ordinal).Select(p => (p.Key, p.Value)));

    private static AnswerError Error(JsonField? error) =>
        new(error?.Maybe("fp")?.Number() ?? 0, error?.Maybe("fn")?.Number() ?? 0);

    private static string Id(JsonField item) => item.Need("id").Text();

    private static StepCost Cost(JsonField item) => new(item.Need("cost").Number());
}
