namespace ShedBot.Knowledge.Layers;

/// <summary>One thing that a moderator wants changed in the club's own layer.</summary>
public abstract record RuleChange(RuleKey Key);

/// <summary>A whole rule: the club's own, or one instead of the base's of the same key.</summary>
/// <param name="Yaml">The item in the format of rule files, without the leading '- '. Its id is that of the key.</param>
/// <param name="InsteadOf">
/// The fingerprint of the base's rule that it stands for (<see cref="RuleBase.FingerprintOf"/>); null when there is none, or when
/// <see cref="RuleBase.Settle"/> is to fill it in.
/// </param>
public sealed record PutRule(RuleKey Key, string Yaml, string? InsteadOf = null) : RuleChange(Key);

/// <summary>The club's own rule goes. The base's of the same key, if there is one, counts again.</summary>
public sealed record DropRule(RuleKey Key) : RuleChange(Key);

/// <summary>One single value is changed: a question, a strength, minutes.</summary>
/// <param name="Was">What stands there now, as the moderator saw it; null when nothing does.</param>
/// <param name="Now">What is to stand there.</param>
public sealed record MendValue(RuleKey Key, RulePath Path, string? Was, string Now, Credit Credit) : RuleChange(Key);

/// <summary>A text comes to a list of texts, or goes from it: phrases of riders, tools, steps of a check.</summary>
/// <param name="Add">The text that comes at the end, or null. Just one of the two is given.</param>
/// <param name="Drop">The text that goes, or null.</param>
public sealed record MendList(RuleKey Key, RulePath Path, string? Add, string? Drop, Credit Credit) : RuleChange(Key);

/// <summary>Takes a mend of the base's rule back.</summary>
/// <param name="Add">Of a mended list, the text that was added; else null.</param>
/// <param name="Drop">Of a mended list, the text that was dropped; else null.</param>
public sealed record Unmend(RuleKey Key, RulePath Path, string? Add = null, string? Drop = null) : RuleChange(Key);

/// <summary>The base's rule is not used in this club.</summary>
/// <param name="Because">For whoever asks why it is gone.</param>
public sealed record Retire(RuleKey Key, string Because, Credit Credit) : RuleChange(Key);

/// <summary>A retired rule is used again.</summary>
public sealed record Restore(RuleKey Key) : RuleChange(Key);
