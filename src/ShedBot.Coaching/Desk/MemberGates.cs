using System.Collections.Immutable;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Keeping;

namespace ShedBot.Coaching.Desk;

/// <summary>One thing at a time for each member, taken anew when somebody else saved first.</summary>
internal sealed class MemberGates : IDisposable
{
    private const int MostTries = 5;

    /// <summary>So many members can be answered side by side.</summary>
    private const int Gates = 64;

    private readonly ImmutableArray<SemaphoreSlim> gates = [.. Enumerable.Range(0, Gates).Select(_ => new SemaphoreSlim(1, 1))];

    /// <param name="take">Reads, decides and saves. It is a function of what it reads, so it can simply be taken anew.</param>
    public async Task<T> AloneAsync<T>(MemberId member, Func<Task<T>> take, CancellationToken ct)
    {
        var gate = gates[(int)((uint)string.GetHashCode(member.Value, StringComparison.Ordinal) % Gates)];
        await gate.WaitAsync(ct);
        try
        {
            for (var tries = 1; ; tries++)
            {
                try
                {
                    return await take();
                }
                catch (StaleSaveException) when (tries < MostTries)
                {
                    // The record has changed since it was read.
                }
            }
        }
        finally
        {
            gate.Release();
        }
    }

    public void Dispose()
    {
        foreach (var gate in gates) gate.Dispose();
    }
}
