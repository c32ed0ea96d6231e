using Microsoft.Extensions.Logging;
using ShedBot.Knowledge.Loading;
using ShedBot.Rules;

namespace ShedBot.Serving;

/// <summary>Takes up rule files that change while serving. Broken ones are told and never used.</summary>
internal sealed class RulesWatch(RulesInUse rules, ILogger log)
{
    public static readonly TimeSpan Every = TimeSpan.FromSeconds(15);

    public string Version => rules.Knowledge.Version;

    /// <summary>Whether the files as they are now cannot be used.</summary>
    public bool Broken => rules.Broken;

    public void Look()
    {
        if (rules.Look() is not { } news) return;
        if (news.Outcome == ReloadOutcome.KeptLastGood) log.RulesKept(news.Line, string.Join(' ', news.Problems));
        else log.RulesTaken(news.Line);
    }
}
