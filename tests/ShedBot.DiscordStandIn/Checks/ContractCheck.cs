using ShedBot.DiscordStandIn.Checks.Contract;

namespace ShedBot.DiscordStandIn.Checks;

/// <summary>Holds every request against the platform's own published description: the operation must exist, its query parameters must be
/// known, and the JSON body must fit the schema with no field the schema does not name.</summary>
/// <remarks>The description is not part of this project. Where it is not found the check is off, and <see cref="About"/> says so.</remarks>
public sealed class ContractCheck : IRequestCheck
{
    private readonly Description? description;

    internal ContractCheck(Description? description, string about) => (this.description, About) = (description, about);

    /// <summary>One line for the log: where the description was read, or that the check is off.</summary>
    public string About { get; }

    public bool IsOn => description is not null;

    /// <summary>Looks for <c>shared/discord/openapi.json</c> beside or in some folder above the running program, or under the folder that
    /// the environment variable SHEDBOT_SHARED names.</summary>
    public static ContractCheck Find(Strictness strictness) =>
        SharedFolder.Description(AppContext.BaseDirectory, Environment.GetEnvironmentVariable(SharedFolder.Variable)) is { } path
            ? new ContractCheck(Description.Read(path, strictness), $"Requests are checked against the platform's published description ({path}).")
            : new ContractCheck(null, "The platform's published description is not here, so requests are not checked against it: put shared/discord/openapi.json beside the project, or set SHEDBOT_SHARED.");

    public IEnumerable<string> Violations(CheckedRequest request)
    {
        if (description is null) return [];
        if (description.Find(request.Method, request.Route) is not { } operation) return [$"{request.Method} {request.Route}: the platform has no such operation"];
        try
        {
            return [.. QueryReasons.Of(description, operation, request.Query), .. Body(description, operation, request)];
        }
        catch (InvalidOperationException)
        {
            // JSON lets half a surrogate pair be written as an escape; such a text cannot be read as a string.
            return ["body: holds a text that is not Unicode"];
        }
    }

    private static IEnumerable<string> Body(Description description, Operation operation, CheckedRequest request)
    {
        if (request.Parts.Count > 0 && !operation.TakesFiles) return ["body: the operation takes no files"];
        if (request.Body is not { } body) return operation.NeedsBody ? ["body: the operation needs one"] : [];
        if (operation.Body is not { } pointer) return ["body: the operation takes none"];
        if (operation.Branches is not { Count: > 0 } branches) return Reasons.Of(description.Evaluate(pointer, body));

        var index = branches.Index().Where(branch => branch.Item == Branch.Meant(request.Method, request.Route, body)).Select(branch => (int?)branch.Index).FirstOrDefault();
        return index is { } meant
            ? Reasons.Of(description.Evaluate($"{pointer}/anyOf/{meant}", body))
            : ["body: is none of the shapes we send here"];
    }
}
