using ShedBot.Knowledge;

namespace ShedBot.Coaching.Trials;

/// <summary>The rules that a club uses, and the same with what is proposed.</summary>
public sealed record RulesPair(KnowledgeBase Old, KnowledgeBase New);
