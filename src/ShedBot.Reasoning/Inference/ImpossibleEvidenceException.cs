namespace ShedBot.Reasoning.Inference;

/// <summary>No set of faults that was looked at can give this evidence: somewhere a chance is exactly 0. No belief can be drawn from it.</summary>
/// <remarks>With a leak and an error rate above 0 on each check, and some fault that no repair is sure to mend, this cannot happen.</remarks>
public sealed class ImpossibleEvidenceException : InvalidOperationException
{
    public ImpossibleEvidenceException()
        : this("No set of faults that was looked at can give this evidence.")
    {
    }

    public ImpossibleEvidenceException(string message)
        : base(message)
    {
    }

    public ImpossibleEvidenceException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
