using System.Diagnostics;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Control;

/// <summary>Something said, and what the bot said back.</summary>
internal static class Exchange
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    /// <param name="TookMs">From the event being handed to the socket's writer to the answer's request being read, milliseconds.</param>
    public sealed record Said(SeenMessage Answer, double TookMs);

    /// <summary>Says it and waits for the bot's next message in that channel.</summary>
    /// <exception cref="TimeoutException">None came within a minute.</exception>
    public static async Task<Said> HoldAsync(StandIn standIn, Person person, Channel channel, string text, SeenMessage? replyTo)
    {
        var realm = standIn.Realm;
        var answered = new TaskCompletionSource<(Message Message, long At)>(TaskCreationOptions.RunContinuationsAsynchronously);
        long at;
        lock (realm.Gate)
        {
            realm.Posted = m =>
            {
                if (m.Author == realm.Bot && m.Channel == channel)
                    answered.TrySetResult((m, Stopwatch.GetTimestamp()));
            };
            at = Stopwatch.GetTimestamp();
            // Done when it returns: it takes the same lock and waits for nothing.
            _ = standIn.SayAsync(person, channel, text, replyTo);
        }
        var (message, then) = await answered.Task.WaitAsync(Patience).ConfigureAwait(false);
        lock (realm.Gate)
            return new Said(SeenMessage.Of(message), Stopwatch.GetElapsedTime(at, then).TotalMilliseconds);
    }
}
