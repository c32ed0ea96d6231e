using Json.Schema;

namespace ShedBot.DiscordStandIn.Checks.Contract;

/// <summary>Turns a validator's tree of failures into the few sentences that matter: where the description allows one of several shapes,
/// only the shape that was meant is spoken of.</summary>
internal static class Reasons
{
    /// <returns>One sentence for each failure, each beginning with the place in the body; empty when the result is valid.</returns>
    public static IReadOnlyList<string> Of(EvaluationResults result) => result.IsValid ? [] : [.. Own(result), .. Below(result)];

    private static IEnumerable<string> Own(EvaluationResults result)
    {
        foreach (var (keyword, text) in result.Errors ?? [])
            yield return keyword.Length == 0 && Path(result).EndsWith("/additionalProperties", StringComparison.Ordinal)
                ? $"{Place(result)}: the platform knows no such field here"
                : $"{Place(result)}: {text}";
    }

    private static IEnumerable<string> Below(EvaluationResults result)
    {
        var children = result.Details ?? [];
        var branches = children.Where(child => IsBranch(result, child)).ToList();
        foreach (var child in children.Except(branches))
            foreach (var reason in Of(child))
                yield return reason;

        // A union that fits in one branch is content, whatever the other branches say.
        if (branches.Count == 0 || branches.Any(branch => branch.IsValid)) yield break;

        var meant = branches.Where(branch => !IsOfAnotherKind(branch)).Select(Of).MinBy(reasons => reasons.Count);
        foreach (var reason in meant ?? [$"{Place(result)}: is none of the kinds or values allowed here"])
            yield return reason;
    }

    private static bool IsBranch(EvaluationResults parent, EvaluationResults child)
    {
        var step = Path(child)[Path(parent).Length..];
        return step.StartsWith("/oneOf/", StringComparison.Ordinal) || step.StartsWith("/anyOf/", StringComparison.Ordinal);
    }

    /// <summary>Whether a branch fails already at what tells the branches apart: the JSON type, a fixed value, or the field <c>type</c>.</summary>
    private static bool IsOfAnotherKind(EvaluationResults branch) => Failures(branch).Any(failure =>
        Place(failure) == Place(branch)
            ? failure.Errors!.Keys.Any(keyword => keyword is "type" or "const" or "enum")
            : Place(failure) == Place(branch).TrimEnd('/') + "/type");

    private static IEnumerable<EvaluationResults> Failures(EvaluationResults result) =>
        (result.Details ?? []).Where(child => !child.IsValid).SelectMany(Failures).Concat(result.Errors is null ? [] : [result]);

    private static string Path(EvaluationResults result) => result.EvaluationPath.ToString();

    private static string Place(EvaluationResults result) => result.InstanceLocation.ToString() is { Length: > 0 } place ? place : "/";
}
