namespace ShedBot.Coaching.Learning.Counting;

/// <summary>How many cases bear on a target.</summary>
internal class Bearing
{
    private readonly HashSet<int> members = [];

    public int Cases { get; private set; }

    /// <summary>How many of these were mended and stayed so.</summary>
    public int Mended { get; private set; }

    /// <summary>Of how many members.</summary>
    public int Members => members.Count;

    /// <summary>Notes a case that bears on it.</summary>
    public void Note(int member, bool mended)
    {
        Cases++;
        if (mended) Mended++;
        members.Add(member);
    }

    public bool Enough(LearningLimits limits) => Mended >= limits.LeastCases && Members >= limits.LeastMembers;
}
