
namespace ShedBot.Knowledge.Understanding;

/// <summary>What is being talked about while the rider writes.</summary>
/// <param name="Options">The answers to the question that is open; empty when none is.</param>
public sealed record ListeningContext(IReadOnlyList<AnswerOption> Options);
