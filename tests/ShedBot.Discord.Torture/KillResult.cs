namespace ShedBot.Discord.Torture;

/// <summary>What a campaign found.</summary>
/// <param name="Days">Evenings that passed.</param>
/// <param name="Reminders">Reminders that reached members.</param>
/// <param name="Presses">Presses of members, those included that a kill left without an answer.</param>
/// <param name="Problems">What was lost or doubled.</param>
public sealed record KillResult(int Kills, int Days, int Reminders, int Presses, IReadOnlyList<string> Problems);
