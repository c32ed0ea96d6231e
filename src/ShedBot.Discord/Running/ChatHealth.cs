namespace ShedBot.Discord.Running;

/// <summary>How the connection to the platform is doing.</summary>
/// <param name="Ready">Whether a session has begun since the start.</param>
/// <param name="LastHeard">When the last event came in that was for us, or null.</param>
/// <param name="Busy">Pieces of work going on or waiting.</param>
/// <param name="TokenRefused">The platform does not take the token any more: nothing works until the operator has seen to it.</param>
public sealed record ChatHealth(bool Ready, DateTimeOffset? LastHeard, int Busy, bool TokenRefused);

/// <summary>The platform will not have us until the operator has changed something; the message says what.</summary>
public sealed class ChatRefusedException(string advice, Exception? inner = null) : Exception(advice, inner);
