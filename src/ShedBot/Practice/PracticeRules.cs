using ShedBot.Coaching;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Rules;

namespace ShedBot.Practice;

/// <summary>The rules that serve the line that is being answered: the files, with what was taught at the terminal over them.</summary>
internal sealed class PracticeRules(RulesInUse files, ITeachingStore taught)
{
    public ClubCoaches Coaches { get; } = new(taught, () => files.Ground);

    public Coach Coach { get; private set; } = files.Coach;

    public KnowledgeBase Knowledge => Coach.Knowledge;

    public CoachOptions Options => files.Options;

    /// <summary>The files' own rules, without what was taught.</summary>
    public Ground Ground => files.Ground;

    /// <summary>Before each line: looks whether the files have changed, and takes up what was published.</summary>
    /// <returns>What to say about the files; null when they are as they were.</returns>
    public async Task<RulesNews?> LookAsync(CancellationToken ct)
    {
        var news = files.Look();
        Coach = await Coaches.OfAsync(ClubId.Practice, ct);
        return news;
    }
}
