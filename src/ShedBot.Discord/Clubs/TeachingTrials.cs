using System.Collections.Concurrent;
using ShedBot.Coaching.Clubs;
using ShedBot.Coaching.Teaching;
using ShedBot.Coaching.Teaching.Moves;
using ShedBot.Coaching.Teaching.Reporting;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Gateway;
using ShedBot.Discord.Rest;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Clubs;

/// <summary>
/// Runs trials, which take a minute or more, and counts cases, which may take seconds, beside everything else: how far one is stands in the private answer,
/// and in the end its result. Where that cannot be changed any more, the result of a trial is kept with the proposal all the same; and one that a process could
/// not finish is made by the next.
/// </summary>
/// <param name="aside">Does work in a lane of its own.</param>
/// <param name="every">How often it is told how far a trial is.</param>
internal sealed class TeachingTrials(Parts parts, TeachingShow show, Arrivals arrivals, Action<Snowflake, Func<Task>> aside, TimeSpan every)
{
    /// <summary>What is under way, with the act that began it.</summary>
    private readonly ConcurrentDictionary<(ClubId Club, bool Counts), Snowflake> going = new();

    public async Task BeginAsync(InteractionCame came, Teacher teacher, TeachRequest request, Acknowledgement live, CancellationToken ct)
    {
        if (!going.TryAdd(Key(teacher, request), came.Interaction.Id))
        {
            await live.TellAsync(Texts.Draw(request switch
            {
                ShowReport => TeachingTexts.ReportGoing,
                CountRequest => TeachingTexts.CountGoing,
                _ => TeachingTexts.TrialGoing,
            }), ct);
            return;
        }

        try
        {
            // Before it is announced. If that fails the trial is made all the same, as long as this process lives. A report is not kept, and soon counted again.
            if (request is TryOut) await arrivals.HoldAsync(came, ct);
            await TeachingShow.PutAsync(Draw(request, 0), live, ct);
        }
        catch
        {
            Over(came, teacher, request);
            await arrivals.ReleaseAsync(came, ct);
            throw;
        }

        aside(came.Interaction.Id, () => RunAsync(came, teacher, request, ct));
    }

    private async Task RunAsync(InteractionCame came, Teacher teacher, TeachRequest request, CancellationToken ct)
    {
        try
        {
            var far = new Far();
            var trial = parts.Rules.HandleAsync(teacher, request, came.At, ct, far);
            await TellFarAsync(came.Interaction, request, trial, far, ct);
            var answer = await trial;
            // Before its result is seen: what stands on it may want the next one at once.
            Over(came, teacher, request);
            await ChangeAsync(came.Interaction, show.Draw(answer, null), ct);
            await arrivals.ReleaseAsync(came, ct);
        }
        catch (Exception e) when (!ct.IsCancellationRequested)
        {
            await ChangeAsync(came.Interaction, Texts.Draw(Texts.CannotNow), ct);
            await arrivals.ReleaseAsync(came, ct);
            parts.Log.Failed(e);
        }
        finally
        {
            Over(came, teacher, request);
        }
    }

    private static (ClubId Club, bool Counts) Key(Teacher teacher, TeachRequest request) => (teacher.Club, request is not TryOut);

    /// <summary>Ends what this act began, and not what another one has begun since.</summary>
    private void Over(InteractionCame came, Teacher teacher, TeachRequest request) => going.TryRemove(KeyValuePair.Create(Key(teacher, request), came.Interaction.Id));

    private async Task TellFarAsync(Interaction used, TeachRequest request, Task trial, Far far, CancellationToken ct)
    {
        var (told, can) = (0, true);
        while (can)
        {
            using var pause = CancellationTokenSource.CreateLinkedTokenSource(ct);
            if (await Task.WhenAny(trial, Task.Delay(every, parts.Clock, pause.Token)) == trial)
            {
                await pause.CancelAsync();
                return;
            }

            if (far.Percent == told) continue;
            told = far.Percent;
            can = await ChangeAsync(used, Draw(request, told), ct);
        }
    }

    /// <returns>False when it cannot be changed any more.</returns>
    private async Task<bool> ChangeAsync(Interaction used, Drawn drawn, CancellationToken ct)
    {
        // One that an earlier process has left has no token any more.
        if (used.Token.Length == 0) return false;
        try
        {
            await parts.Rest.EditAnswerAsync(used, drawn.Body, drawn.Files, ct);
            return true;
        }
        catch (DiscordException e)
        {
            parts.Log.TrialNotTold(e.Trouble, e);
            return e.Trouble == Trouble.Busy;
        }
    }

    private static Drawn Draw(TeachRequest request, int percent) => Texts.Draw(request switch
    {
        ShowReport => TeachingTexts.Counting(percent),
        CountRequest => TeachingTexts.CountingMended,
        _ => TeachingTexts.Trying(percent),
    });

    private sealed class Far : IProgress<double>
    {
        private int percent;

        public int Percent => Volatile.Read(ref percent);

        public void Report(double value) => Volatile.Write(ref percent, (int)(Math.Clamp(value, 0, 1) * 100));
    }
}
