using ShedBot.Discord.Drawing;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>
/// The one first answer that an interaction must have within three seconds. Work that takes longer is announced in time, by itself. Nothing
/// here throws when the platform refuses: what must be said is said through the channel then.
/// </summary>
internal sealed class Acknowledgement : IAsyncDisposable
{
    /// <summary>Work that has not answered by then is announced: leaves time for one repeat within the three seconds.</summary>
    public static readonly TimeSpan AnnounceAfter = TimeSpan.FromSeconds(1.2);

    /// <summary>After this no first answer is tried: it would come too late.</summary>
    private static readonly TimeSpan GiveUpAfter = TimeSpan.FromSeconds(2.8);

    private readonly IDiscordRest rest;
    private readonly TimeProvider clock;
    private readonly DateTimeOffset arrived;
    private readonly SemaphoreSlim gate = new(1, 1);
    private readonly CancellationTokenSource ended = new();
    private readonly Func<CancellationToken, Task<bool>> keep;
    private readonly Task announcing;
    private readonly Action<Interaction, DiscordException> refused;
    private State state = State.Open;

    /// <param name="formPlanned">True when the answer will be a form or choices, which cannot follow an announcement.</param>
    /// <param name="refused">Told of each answer that the platform did not take.</param>
    /// <param name="keep">Writes down what was done, before anybody is told to wait for it; false when it cannot.</param>
    public Acknowledgement(
        IDiscordRest rest,
        InteractionCame came,
        TimeProvider clock,
        Action<Interaction, DiscordException> refused,
        Func<CancellationToken, Task<bool>> keep,
        bool formPlanned = false)
    {
        (this.rest, this.clock, Interaction, arrived, this.refused, this.keep) = (rest, clock, came.Interaction, came.At, refused, keep);
        // One that an earlier process has left has no token any more.
        if (Interaction.Token.Length == 0) state = State.Lost;
        announcing = formPlanned || state == State.Lost ? Task.CompletedTask : AnnounceInTimeAsync();
    }

    private enum State
    {
        Open,

        /// <summary>A message of its own was announced.</summary>
        MessageAnnounced,

        /// <summary>A change of the message that was pressed on was announced.</summary>
        UpdateAnnounced,

        Answered,

        /// <summary>Too late, or the platform would not take it.</summary>
        Lost,
    }

    public Interaction Interaction { get; }

    /// <summary>It may have been written down, and is to be struck out once it is dealt with.</summary>
    public bool Kept { get; private set; }

    /// <summary>How long ago it arrived.</summary>
    public TimeSpan Age => clock.GetUtcNow() - arrived;

    private bool OnMessage => Interaction.Message is not null;

    /// <summary>Changes the message that was pressed on, as the first answer.</summary>
    /// <returns>False when it is too late for that: change the message through its channel.</returns>
    public Task<bool> TryUpdateAsync(Drawn drawn, CancellationToken ct) => WithGateAsync(
        async () => state == State.Open && OnMessage
            && await FirstAsync(AnswerTypes.Update, InteractionAnswerData.Of(drawn.Body), drawn.Files, State.Answered, ct),
        ct);

    /// <summary>Changes the message that was pressed on, seen by one person alone, whether or not that was announced.</summary>
    public Task<bool> ReplaceAsync(Drawn drawn, CancellationToken ct) => WithGateAsync(
        async () => state switch
        {
            State.Open => await FirstAsync(AnswerTypes.Update, InteractionAnswerData.Of(drawn.Body), drawn.Files, State.Answered, ct),
            State.UpdateAnnounced => await LaterAsync(() => rest.EditAnswerAsync(Interaction, drawn.Body, drawn.Files, ct)),
            _ => false,
        },
        ct);

    /// <summary>Says something to this one person alone.</summary>
    /// <returns>False when it could not be said any more.</returns>
    public Task<bool> TellAsync(Drawn drawn, CancellationToken ct) => WithGateAsync(
        async () =>
        {
            var body = drawn.Body with { Flags = (drawn.Body.Flags ?? 0) | MessageFlags.Ephemeral };
            return state switch
            {
                State.Open => await FirstAsync(AnswerTypes.Message, InteractionAnswerData.Of(body), drawn.Files, State.Answered, ct),
                State.MessageAnnounced => await LaterAsync(() => rest.EditAnswerAsync(Interaction, drawn.Body, drawn.Files, ct)),
                State.UpdateAnnounced or State.Answered => await LaterAsync(() => rest.FollowUpAsync(Interaction, body, drawn.Files, ct)),
                _ => false,
            };
        },
        ct);

    /// <summary>Shows a form.</summary>
    public Task<bool> ShowFormAsync(InteractionAnswer form, CancellationToken ct) => WithGateAsync(
        async () => state == State.Open && await FirstAsync(form.Type, form.Data, [], State.Answered, ct), ct);

    /// <summary>Offers choices for what is being typed. Too late for that is no loss: nothing is offered then.</summary>
    public Task<bool> OfferAsync(IReadOnlyList<CommandChoice> choices, CancellationToken ct) => WithGateAsync(
        async () => state == State.Open && await FirstAsync(AnswerTypes.Choices, new InteractionAnswerData(Choices: choices), [], State.Answered, ct), ct);

    /// <summary>Announces work now that is known to take long.</summary>
    public Task<bool> AnnounceAsync(CancellationToken ct) => WithGateAsync(async () => state == State.Open && await AnnounceHeldAsync(ct), ct);

    /// <summary>Ends it without another word: a press that was dealt with through the channel is taken as done.</summary>
    public Task SettleAsync(CancellationToken ct) => WithGateAsync(async () => state == State.Open && OnMessage && await FirstAsync(AnswerTypes.DeferredUpdate, null, [], State.UpdateAnnounced, ct), ct);

    public async ValueTask DisposeAsync()
    {
        await ended.CancelAsync();
        await announcing;
        ended.Dispose();
        gate.Dispose();
    }

    private async Task AnnounceInTimeAsync()
    {
        try
        {
            var left = AnnounceAfter - Age;
            if (left > TimeSpan.Zero) await Task.Delay(left, clock, ended.Token);
            await AnnounceAsync(ended.Token);
        }
        catch (OperationCanceledException)
        {
            // Answered before, which is the usual case.
        }
    }

    private async Task<bool> AnnounceHeldAsync(CancellationToken ct)
    {
        Kept = true;
        if (!await keep(ct)) return false;
        return OnMessage
            ? await FirstAsync(AnswerTypes.DeferredUpdate, null, [], State.UpdateAnnounced, ct)
            : await FirstAsync(AnswerTypes.DeferredMessage, new InteractionAnswerData(Flags: MessageFlags.Ephemeral), [], State.MessageAnnounced, ct);
    }

    private async Task<bool> FirstAsync(int type, InteractionAnswerData? data, IReadOnlyList<Upload> files, State then, CancellationToken ct)
    {
        var left = GiveUpAfter - Age;
        if (left <= TimeSpan.Zero)
        {
            state = State.Lost;
            return false;
        }

        using var late = new CancellationTokenSource(left, clock);
        using var both = CancellationTokenSource.CreateLinkedTokenSource(ct, late.Token);
        try
        {
            await rest.AnswerAsync(Interaction, new InteractionAnswer(type, data), files, both.Token);
            state = then;
            return true;
        }
        catch (OperationCanceledException) when (late.IsCancellationRequested && !ct.IsCancellationRequested)
        {
            state = State.Lost;
            return false;
        }
        catch (DiscordException e)
        {
            refused(Interaction, e);
            state = e.Trouble == Trouble.AlreadyAnswered ? State.Answered : State.Lost;
            return false;
        }
    }

    private async Task<bool> LaterAsync(Func<Task> say)
    {
        try
        {
            await say();
            state = State.Answered;
            return true;
        }
        catch (DiscordException e)
        {
            refused(Interaction, e);
            return false;
        }
    }

    private async Task<bool> WithGateAsync(Func<Task<bool>> act, CancellationToken ct)
    {
        await gate.WaitAsync(ct);
        try
        {
            return await act();
        }
        finally
        {
            gate.Release();
        }
    }
}
