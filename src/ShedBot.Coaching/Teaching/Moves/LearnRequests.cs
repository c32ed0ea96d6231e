namespace ShedBot.Coaching.Teaching.Moves;

/// <summary>Something for which the club's cases are counted first. That takes seconds where there are many, so nobody waits behind it.</summary>
public abstract record CountRequest() : TeachRequest(TeachingRights.Propose);

/// <summary>What the club's mended cases would move now, with the numbers; changes nothing.</summary>
public sealed record ShowLearning() : CountRequest;

/// <summary>Makes a proposal of it.</summary>
public sealed record ProposeLearnt() : CountRequest;

/// <summary>Counts the numbers of a proposal once more; what is left out of it stays out.</summary>
public sealed record CountAnew(string Proposal) : CountRequest;

/// <summary>The numbers of a proposal, some at a time.</summary>
/// <param name="From">The first one to show, from 0.</param>
public sealed record ShowNumbers(string Proposal, int From = 0) : TeachRequest(TeachingRights.Propose);

/// <summary>One number of a proposal.</summary>
/// <param name="Number">Its mark.</param>
public sealed record ShowNumber(string Proposal, string Number) : TeachRequest(TeachingRights.Propose);

/// <summary>Leaves one number as it is, or takes it in again.</summary>
/// <param name="Number">Its mark.</param>
public sealed record LeaveOut(string Proposal, string Number, bool Out) : TeachRequest(TeachingRights.Propose);

/// <summary>A club's choice that a number never moves, or may move again.</summary>
/// <param name="Number">Its mark.</param>
public sealed record NeverLearn(string Number, bool Never) : TeachRequest(TeachingRights.Manage);
