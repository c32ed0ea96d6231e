using System.Collections.Immutable;
using System.Globalization;
using ShedBot.Coaching;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Turns;
using ShedBot.Knowledge;
using ShedBot.Knowledge.Layers;
using ShedBot.Knowledge.Loading;
using ShedBot.Knowledge.Problems;
using ShedBot.Knowledge.Understanding;

namespace ShedBot.Rules;

/// <summary>The rules that serve the next turn. Files that change while running are taken up between two turns; broken ones never are.</summary>
internal sealed class RulesInUse
{
    /// <summary>So many problems are told in the conversation; the linter tells them all.</summary>
    private const int MostTold = 5;

    private readonly string folder;
    private string stamp;
    private Ground ground;

    private RulesInUse(string folder, string stamp, RuleBase rules, CoachOptions options)
    {
        (this.folder, this.stamp, Options) = (folder, stamp, options);
        ground = GroundOf(rules);
    }

    /// <summary>Read by other threads while it is exchanged, as a whole.</summary>
    public Ground Ground
    {
        get => Volatile.Read(ref ground);
        private set => Volatile.Write(ref ground, value);
    }

    public Coach Coach => Ground.Coach;

    public KnowledgeBase Knowledge => Coach.Knowledge;

    public CoachOptions Options { get; }

    /// <summary>Whether the files, as they were looked at last, cannot be used.</summary>
    public bool Broken { get; private set; }

    /// <returns>Null when the rules cannot be used; <paramref name="errors"/> says why.</returns>
    public static RulesInUse? Open(string? asked, CoachOptions options, TextWriter errors)
    {
        if (RulesFolder.FindOrSay(asked, errors) is not { } folder) return null;
        // The stamp comes first: a file that changes while it is read is then read once more, rather than missed.
        var stamp = StampOrWhy(folder);
        return RulesFolder.LoadBase(folder, errors) is { } rules ? new RulesInUse(folder, stamp, rules, options) : null;
    }

    /// <summary>Looks whether the files have changed, by their names, lengths and times.</summary>
    /// <returns>What to say about it; null when all is as it was.</returns>
    public RulesNews? Look()
    {
        var now = StampOrWhy(folder);
        if (now == stamp) return null;
        stamp = now;
        try
        {
            var reload = Reload.From(Ground.Base, KnowledgeFolder.Read(folder));
            if (reload.Outcome == ReloadOutcome.Taken) Ground = GroundOf(reload.Use);
            Broken = reload.Outcome == ReloadOutcome.KeptLastGood;
            return reload.Outcome == ReloadOutcome.Unchanged ? null : new RulesNews(reload.Outcome, reload.Say(), Told(reload));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Broken = true;
            return new RulesNews(ReloadOutcome.KeptLastGood, $"The rules in {folder} cannot be read just now, so the last good ones stay: {e.Message}", []);
        }
    }

    private Ground GroundOf(RuleBase rules) => new(rules, new Coach(rules.Knowledge!, Listener.For(rules.Knowledge!), Options));

    private static ImmutableArray<string> Told(Reload reload) => reload.Outcome == ReloadOutcome.Taken
        ? []
        : [.. reload.Problems.Where(p => p.Severity == Severity.Error).Take(MostTold).Select(p => p.ToString())];

    private static string StampOrWhy(string folder)
    {
        try
        {
            var files = new DirectoryInfo(folder).EnumerateFiles("*.yaml", SearchOption.AllDirectories)
                .OrderBy(f => f.FullName, StringComparer.Ordinal)
                .Select(f => string.Create(CultureInfo.InvariantCulture, $"{f.FullName}:{f.Length}:{f.LastWriteTimeUtc.Ticks}"));
            return string.Join('\n', files);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return e.Message;
        }
    }
}

/// <summary>Something about the rules that changed while running.</summary>
/// <param name="Line">One sentence.</param>
/// <param name="Problems">The first errors, where the changed rules are not used.</param>
internal sealed record RulesNews(ReloadOutcome Outcome, string Line, ImmutableArray<string> Problems);
