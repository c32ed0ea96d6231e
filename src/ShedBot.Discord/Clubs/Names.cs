using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Keeping;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>How things of the platform are named in what is kept. The same event always gets the same name: that is what makes an event that comes twice count once.</summary>
internal static class Names
{
    /// <summary>Marks are no less than this, far from the numbers that the platform gives out itself.</summary>
    public const int LeastMark = 1 << 30;

    private const char Between = ':';
    private const string Press = "press", Said = "said", Opening = "open", Used = "used";

    public static ClubId Club(Snowflake guild) => new(guild.ToString());

    public static Snowflake Guild(ClubId club) => Snowflake.Read(club.Value) ?? default;

    /// <returns>The person behind a member; none for somebody who is not of a club.</returns>
    public static Snowflake Person(MemberId member) =>
        Snowflake.Read(member.Value[(member.Value.IndexOf(ClubId.Between, StringComparison.Ordinal) + 1)..]) ?? default;

    /// <summary>The place of a case that this event opens.</summary>
    public static string Place(ClubId club, Snowflake opener) => $"{club}{ClubId.Between}{opener}";

    public static string OpeningEvent(Snowflake opener) => $"{Opening}{Between}{opener}";

    /// <summary>A command that was used.</summary>
    public static string UsedEvent(Snowflake interaction) => $"{Used}{Between}{interaction}";

    public static string SaidEvent(Snowflake message) => $"{Said}{Between}{message}";

    public static string PressEvent(Snowflake interaction, Snowflake pressed) => $"{Press}{Between}{interaction}{Between}{pressed}";

    /// <returns>The message that was pressed on, when the event was a press.</returns>
    public static string? PressedIn(string eventName) =>
        eventName.Split(Between) is [Press, _, var message] ? message : null;

    /// <returns>The message that was said, when the event was words.</returns>
    public static Snowflake? SaidIn(string eventName) => eventName.Split(Between) is [Said, var message] ? Snowflake.Read(message) : null;

    /// <summary>At most <see cref="Limits.Nonce"/> characters, the same for the same text.</summary>
    public static string Nonce(string of) => ShortName.Of(of);

    /// <summary>A number that a message carries, by which it is known again whatever else was lost: of case and turn, with room for 16 messages of the turn.</summary>
    public static int Mark(CaseId @case, int turn)
    {
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(@case.Value));
        return LeastMark | (((hash[0] << 8 | hash[1]) & 0x3FFF) << 16) | ((turn & 0xFFF) << 4);
    }

    /// <summary>The same for a message that belongs to no case and is one only.</summary>
    public static int Mark(string message) => LeastMark | (BinaryPrimitives.ReadInt32BigEndian(SHA256.HashData(Encoding.UTF8.GetBytes(message))) & (LeastMark - 1));

    /// <returns>The turn that decided to say this.</returns>
    public static string TurnOf(OutboxMessage message) => message.Id[..message.Id.LastIndexOf('.')];

    /// <returns>The number of the turn that decided to say this; 0 when the id does not tell.</returns>
    public static int TurnNumber(OutboxMessage message) => message.Id.Split('.') is [.., var turn, _] && int.TryParse(turn, out var n) ? n : 0;
}
