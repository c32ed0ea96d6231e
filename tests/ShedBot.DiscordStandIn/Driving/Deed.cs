using System.Text.Json;
using ShedBot.DiscordStandIn.Interactions;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.DiscordStandIn.Driving;

/// <summary>What the bot made of a press, pick, command or submitted form.</summary>
/// <param name="Type">The platform's answer type, 4 to 9; 0 when none came in time and the member saw it fail.</param>
/// <param name="Took">From the event being raised to the answer being taken, by the stand-in's clock.</param>
/// <param name="Message">The message made or changed; null for a form or choices, or a deferral not yet filled in.</param>
/// <param name="Shown">A form or choices shown.</param>
public sealed record Answer(int Type, TimeSpan Took, SeenMessage? Message, JsonElement? Shown)
{
    public bool Failed => Type == 0;
}

/// <summary>Something a member did that the bot must answer, and its answer once there is one.</summary>
public sealed class Deed
{
    private readonly Realm realm;

    internal Deed(Realm realm, Interaction interaction)
    {
        this.realm = realm;
        Interaction = interaction;
        Answered = WhenAsync(() => interaction.Answered is not null, realm.Options.AnswerWithin + Grace);
        Settled = WhenAsync(() => interaction.Settled, Patience);
    }

    /// <summary>A moment beyond the deadline, so that an answer just too late is refused before the member gives up.</summary>
    private static TimeSpan Grace => TimeSpan.FromMilliseconds(250);

    private static TimeSpan Patience => TimeSpan.FromSeconds(60);

    internal Interaction Interaction { get; }

    public ulong Id => Interaction.Id;

    /// <summary>The token, for tests that answer in the bot's place.</summary>
    public string Token => Interaction.Token;

    /// <summary>The first answer. Never faults: without an answer in time it is <see cref="Answer.Failed"/>.</summary>
    public Task<Answer> Answered { get; }

    /// <summary>The answer once it has content: for a deferral when that was filled in or the message changed (a minute at most, then failed).</summary>
    public Task<Answer> Settled { get; }

    /// <summary>Further messages so far.</summary>
    public IReadOnlyList<SeenMessage> FollowUps
    {
        get
        {
            lock (realm.Gate)
                return [.. Interaction.Followups.Select(SeenMessage.Of)];
        }
    }

    private async Task<Answer> WhenAsync(Func<bool> there, TimeSpan patience)
    {
        try
        {
            await realm.UntilAsync(there, patience, "an answer").ConfigureAwait(false);
        }
        catch (TimeoutException)
        {
            return new Answer(0, patience, null, null);
        }
        lock (realm.Gate)
        {
            var message = Interaction.Original is { Loading: false } m && Interaction.Settled ? SeenMessage.Of(m) : null;
            return new Answer(Interaction.Answered ?? 0, Interaction.AnswerTook, message, Interaction.Shown);
        }
    }
}
