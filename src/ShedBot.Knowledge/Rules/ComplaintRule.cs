using System.Collections.Immutable;

namespace ShedBot.Knowledge.Rules;

/// <summary>A trouble as a rider would name it. In the model it is a yes/no finding of the same id.</summary>
/// <param name="Called">Short, completes 'the trouble is that ...': "the clutch drags".</param>
/// <param name="InShort">One sentence that tells this complaint from its neighbours.</param>
/// <param name="RidersSay">Example phrases, for understanding free text.</param>
public sealed record ComplaintRule(string Id, string Called, string InShort, ImmutableArray<string> RidersSay, Origin Origin);
