using System.Diagnostics;
using System.Text;
using ShedBot.DiscordStandIn.Gateway;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Control;

/// <summary>Measures the client at the other end. It is expected to make nothing of a message that does not concern it, and to answer one that does.</summary>
/// <param name="called">False: what begins with <c>!</c> is answered with the same text in the same channel. True: what names the bot is answered
/// there with anything at all.</param>
internal sealed class Flood(Realm realm, bool called)
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    /// <summary>How a flood went.</summary>
    /// <param name="MsToAnswer">From just before the first byte is written to the answer to the last event being read.</param>
    public sealed record FloodResult(int Events, long Bytes, double MsToAnswer, double EventsPerSecond);

    /// <summary>Milliseconds from an event being handed to the socket's writer to its answer being read.</summary>
    public sealed record EchoResult(int Rounds, double P50, double P90, double P99, double Worst);

    /// <summary>Sends so many events, encoded beforehand, as fast as the socket takes them, then a last one to be answered.</summary>
    public async Task<FloodResult> FloodAsync(Person from, Channel channel, int count)
    {
        var starting = new TaskCompletionSource<(long At, long Bytes)>(TaskCreationOptions.RunContinuationsAsynchronously);
        Task<long> answered;
        lock (realm.Gate)
        {
            var session = realm.Hub.Sessions.Find(s => s.Connection is not null) ?? throw new InvalidOperationException("Nobody is logged in.");
            var first = session.Reserve(count + 1);
            var mark = called ? Name(realm.Bot) : $"!end of flood {first}";
            var quiet = Pieces(from, channel, ". nothing to answer here, only something to read past");
            var last = Pieces(from, channel, mark);
            answered = AnswerTo(channel, mark);
            session.Connection!.Do(new Outgoing.Many((packing, stream) =>
            {
                for (var i = 0; i < count; i++)
                    packing.AppendFrame(stream, Frame(quiet, first + i));
                packing.AppendFrame(stream, Frame(last, first + count));
            }, starting));
        }
        var (at, bytes) = await starting.Task.WaitAsync(Patience).ConfigureAwait(false);
        var took = Stopwatch.GetElapsedTime(at, await answered.WaitAsync(Patience).ConfigureAwait(false)).TotalMilliseconds;
        return new FloodResult(count, bytes, took, (count + 1) * 1000 / took);
    }

    /// <summary>One message after another, each sent when the last was answered.</summary>
    public async Task<EchoResult> EchoAsync(Person from, Channel channel, int warmUp, int rounds)
    {
        var took = new List<double>(rounds);
        for (var i = 0; i < warmUp + rounds; i++)
        {
            var text = called ? Name(realm.Bot) : $"!echo {i} {realm.Now.UtcTicks}";
            long at;
            Task<long> answered;
            lock (realm.Gate)
            {
                answered = AnswerTo(channel, text);
                at = Stopwatch.GetTimestamp();
                MessageDesk.Post(realm, channel, from, Draft.Words(text));
            }
            var ms = Stopwatch.GetElapsedTime(at, await answered.WaitAsync(Patience).ConfigureAwait(false)).TotalMilliseconds;
            if (i >= warmUp)
                took.Add(ms);
        }
        took.Sort();
        return new EchoResult(rounds, At(took, 0.5), At(took, 0.9), At(took, 0.99), took[^1]);
    }

    private static string Name(Person person) => $"<@{person.Id.Text()}>";

    private static double At(List<double> sorted, double share) => sorted[Math.Min(sorted.Count - 1, (int)(sorted.Count * share))];

    private Task<long> AnswerTo(Channel channel, string text)
    {
        var answered = new TaskCompletionSource<long>(TaskCreationOptions.RunContinuationsAsynchronously);
        realm.Posted = m =>
        {
            if (m.Author == realm.Bot && m.Channel == channel && (called || m.Content == text))
                answered.TrySetResult(Stopwatch.GetTimestamp());
        };
        return answered.Task;
    }

    /// <summary>A message event's JSON, cut where each event has its own id.</summary>
    private string[] Pieces(Person from, Channel channel, string text)
    {
        const string place = "999999999999999999";
        var message = new Message(realm.Ids.Next(), channel, from)
        {
            Content = text,
            Pings = Mentions.Of(text, null, peopleOnlyByDefault: false, repliedTo: null, channel.Guild, mayRingAll: false),
        };
        var json = RenderMessage.ForGateway(realm, message);
        json["id"] = place;
        return json.ToJsonString().Split(place);
    }

    private static byte[] Frame(string[] pieces, long sequence) =>
        Encoding.UTF8.GetBytes($"{{\"t\":\"MESSAGE_CREATE\",\"s\":{sequence},\"op\":0,\"d\":{pieces[0]}{900_000_000_000_000_000 + sequence}{pieces[1]}}}");
}
