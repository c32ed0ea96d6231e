namespace ShedBot.Starting;

/// <summary>A setting cannot be used; the message says which, and what to do.</summary>
internal sealed class SettingRefusedException(string message) : Exception(message);
