using System.Collections.Immutable;
using LiteDB;
using ShedBot.Coaching.Cards;
using ShedBot.Coaching.Keeping;
using ShedBot.Storage.Documents;

namespace ShedBot.Storage.Writing;

/// <summary>Puts what is to be said into the outbox, inside the transaction it is called in, and numbers it: one for all that write there.</summary>
/// <param name="lastNumber">The highest number in the outbox, 0 when it is empty.</param>
internal sealed class OutboxWriter(long lastNumber)
{
    public static long LastNumberIn(ILiteDatabase db) =>
        db.GetCollection(OutboxDocument.Collection).Query().OrderByDescending(OutboxDocument.Number).Limit(1).ToList() is [var last]
            ? last[OutboxDocument.Number].AsInt64
            : 0;

    /// <exception cref="ArgumentException">A message cannot be kept, or two are called the same.</exception>
    public static ImmutableArray<(OutboxMessage Message, string Card)> Ready(ImmutableArray<OutboxMessage> say)
    {
        if (say.Select(m => Keys.Checked(m.Id, "message id")).Distinct(StringComparer.Ordinal).Count() != say.Length)
        {
            throw new ArgumentException("Two messages have the same id.", nameof(say));
        }

        foreach (var message in say)
        {
            Keys.Checked(message.Place, "place");
        }

        return [.. say.Select(m => (m, CardJson.Write(m.Card)))];
    }

    /// <exception cref="InvalidOperationException">A message of that name waits already, for something else.</exception>
    public static void ThrowIfTaken(ILiteDatabase db, ImmutableArray<(OutboxMessage Message, string Card)> say)
    {
        var outbox = db.GetCollection(OutboxDocument.Collection);
        foreach (var (message, _) in say)
        {
            if (outbox.FindById(message.Id) is not null)
            {
                throw new InvalidOperationException($"Message '{message.Id}' is already waiting to be said, for something else.");
            }
        }
    }

    /// <summary>A message of a name that waits already takes the place of that one.</summary>
    public void Write(ILiteDatabase db, ImmutableArray<(OutboxMessage Message, string Card)> say)
    {
        foreach (var (message, card) in say)
        {
            db.GetCollection(OutboxDocument.Collection).Upsert(OutboxDocument.ToBson(message, card, ++lastNumber));
        }
    }
}
