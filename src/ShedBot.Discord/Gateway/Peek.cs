using System.Buffers.Text;
using System.Text.Json;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Gateway;

/// <summary>The first look at a message: a handful of ids read off its bytes, and nothing made of the rest.</summary>
internal static class Peek
{
    /// <param name="data">The inside of a MESSAGE_CREATE.</param>
    /// <param name="me">Our own id.</param>
    public static MessagePeek Read(ReadOnlySpan<byte> data, Snowflake me)
    {
        var reader = new Utf8JsonReader(data);
        return reader.Read() ? Here(ref reader, me) : default;
    }

    /// <summary>The same of the value at which the reader stands; it then stands at that value's end.</summary>
    public static MessagePeek Here(ref Utf8JsonReader reader, Snowflake me)
    {
        Snowflake id = default, channel = default, guild = default, author = default;
        bool bot = false, mentioned = false;
        if (reader.TokenType != JsonTokenType.StartObject)
            reader.Skip();
        else
            while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
                // A look at the length first: a message has some thirty names, and comparing each with all of ours took most of the time.
                switch (reader.ValueSpan.Length)
                {
                    case 2 when reader.ValueTextEquals("id"u8):
                        id = Id(ref reader);
                        break;
                    case 10 when reader.ValueTextEquals("channel_id"u8):
                        channel = Id(ref reader);
                        break;
                    case 8 when reader.ValueTextEquals("guild_id"u8):
                        guild = Id(ref reader);
                        break;
                    case 10 when reader.ValueTextEquals("webhook_id"u8):
                        bot |= !Id(ref reader).IsNone;
                        break;
                    case 6 when reader.ValueTextEquals("author"u8):
                        (author, bot) = (Person(ref reader, out var isBot), bot | isBot);
                        break;
                    case 8 when reader.ValueTextEquals("mentions"u8):
                        mentioned = Mentions(ref reader, me);
                        break;
                    default:
                        Pass(ref reader);
                        break;
                }
        return new MessagePeek(id, channel, guild, author, bot, mentioned);
    }

    private static bool Mentions(ref Utf8JsonReader reader, Snowflake me)
    {
        var found = false;
        reader.Read();
        if (reader.TokenType == JsonTokenType.StartArray)
            while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
                found |= PersonHere(ref reader, out _) == me;
        else
            reader.Skip();
        return found;
    }

    private static Snowflake Person(ref Utf8JsonReader reader, out bool bot)
    {
        reader.Read();
        return PersonHere(ref reader, out bot);
    }

    private static Snowflake PersonHere(ref Utf8JsonReader reader, out bool bot)
    {
        Snowflake id = default;
        bot = false;
        if (reader.TokenType != JsonTokenType.StartObject)
        {
            reader.Skip();
            return id;
        }
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            if (reader.ValueTextEquals("id"u8))
                id = Id(ref reader);
            else if (reader.ValueTextEquals("bot"u8))
            {
                reader.Read();
                bot = reader.TokenType == JsonTokenType.True;
                reader.Skip();
            }
            else
                Pass(ref reader);
        }
        return id;
    }

    private static Snowflake Id(ref Utf8JsonReader reader)
    {
        reader.Read();
        if (reader.TokenType is JsonTokenType.String or JsonTokenType.Number
            && Utf8Parser.TryParse(reader.ValueSpan, out ulong value, out var length) && length == reader.ValueSpan.Length)
            return new Snowflake(value);
        reader.Skip();
        return default;
    }

    private static void Pass(ref Utf8JsonReader reader)
    {
        reader.Read();
        reader.Skip();
    }
}
