using System.Collections.Immutable;
using ShedBot.Knowledge.Layers;

namespace ShedBot.Coaching.Teaching.Writing;

/// <summary>A guided sheet: questions that together make a change of the rules.</summary>
/// <param name="Name">Short, lower case with hyphens; never changes, because proposals are kept with it.</param>
/// <param name="Title">What it is for, as on a button: "A new cause".</param>
/// <param name="Opening">What to know before the first question, in a sentence.</param>
/// <param name="Questions">In the order in which they are asked.</param>
public sealed record Sheet(string Name, string Title, string Opening, ImmutableArray<Question> Questions)
{
    /// <summary>From answers that are all there to changes.</summary>
    public required Func<SheetContext, Credit, Draft> Write { get; init; }

    public Question? Find(string question) => Questions.FirstOrDefault(q => q.Id == question);

    /// <summary>The changes that the answers make. A function of the answers alone: in which order they came makes no difference.</summary>
    /// <returns>Null while something is missing.</returns>
    public Draft? Compose(SheetContext context, Credit credit) => SheetState.Of(this, context).CanHandIn ? Write(context, credit) : null;
}

/// <summary>What a full sheet comes to.</summary>
/// <param name="Title">What it changes, in a few words.</param>
/// <param name="Changes">In the order in which they are to be made.</param>
public sealed record Draft(string Title, ImmutableArray<RuleChange> Changes);
