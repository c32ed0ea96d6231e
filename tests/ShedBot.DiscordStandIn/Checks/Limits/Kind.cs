namespace ShedBot.DiscordStandIn.Checks.Limits;

/// <summary>The component kinds by number. Source: the platform's component reference, "Component types".</summary>
internal static class Kind
{
    public const long Row = 1, Button = 2, Choice = 3, TextInput = 4, UserPick = 5, RolePick = 6, MentionPick = 7, ChannelPick = 8;
    public const long Section = 9, Text = 10, Thumbnail = 11, Gallery = 12, File = 13, Line = 14, Container = 17;
    public const long Label = 18, Upload = 19, Radio = 21, Ticks = 22, Tick = 23;

    public static bool IsSelect(long? kind) => kind is >= Choice and <= ChannelPick and not TextInput;

    /// <summary>Whether a person can act on it, so that it must say what it is called when acted on.</summary>
    public static bool IsActedOn(long? kind) => kind is Button or TextInput or Upload or Radio or Ticks or Tick || IsSelect(kind);
}
