using System.Collections.Concurrent;
using ShedBot.Discord.Clubs;
using ShedBot.Discord.Drawing;
using ShedBot.Discord.Wire;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.Faults;
using ShedBot.DiscordStandIn.World;
using Channel = ShedBot.DiscordStandIn.World.Channel;

namespace ShedBot.Discord.Tests.Campaign;

/// <summary>An invented member with a trouble, who answers in every way there is and does it again when nothing seems to happen.</summary>
internal sealed class Rider(CampaignClub club, Person who, Person mate, Random chance, IEnumerator<FaultKind> surely)
{
    public const string LeaveCommand = "leave";

    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(60);

    private static readonly string[] Troubles =
        ["clutch wont let go when i pull it in, bike keeps pulling", "my clutch slips uphill", "the clutch drags", "it revs up and does not push, the clutch slips"];

    private static readonly string[] Phrases = ["no, not lately", "yes", "no", "i dont know", "it got worse since last week", "the lever feels soft", "i'm at the bike now"];

    public Person Who => who;

    public ConcurrentQueue<DoneDeed> Done { get; } = new();

    public async Task RideAsync()
    {
        if (await BeginAsync() is not { } thread) return;
        SeenMessage? before = null;
        for (var step = chance.Next(3, 9); step > 0; step--)
        {
            if (await PanelAsync(thread, before) is not { } panel) return;
            lock (surely)
            {
                surely.MoveNext();
                club.Platform.Faults.Next(surely.Current);
            }

            await StepAsync(thread, panel);
            before = panel;
        }

        if (await PanelAsync(thread, before) is { } last) await EndAsync(thread, last);
    }

    private async Task<Channel?> BeginAsync()
    {
        for (var tries = 0; tries < 3; tries++)
        {
            var words = Troubles[chance.Next(Troubles.Length)];
            ulong opener;
            if (chance.NextDouble() < 0.4)
            {
                opener = (await club.Platform.SayAsync(who, club.Help, words, mentions: club.Platform.Bot)).Id;
                Done.Enqueue(new DoneDeed("mention", Names.OpeningEvent(new Snowflake(opener)), null));
            }
            else
            {
                var deed = await club.Platform.CommandAsync(who, club.Lobby, "trouble", new Dictionary<string, object> { ["words"] = words, ["private"] = chance.NextDouble() < 0.3 });
                opener = deed.Id;
                Done.Enqueue(new DoneDeed("trouble", Names.OpeningEvent(new Snowflake(opener)), deed));
                if ((await deed.Answered).Failed) continue;
            }

            for (var until = DateTime.UtcNow.AddSeconds(15); DateTime.UtcNow < until; await Task.Delay(Look))
            {
                if (Threads(opener).FirstOrDefault() is { } thread) return thread;
            }
        }

        return null;
    }

    private IEnumerable<Channel> Threads(ulong opener) => club.Platform.Threads(club.Help)
        .Where(t => t.Id >= opener && club.Platform.Messages(t, removed: false).Any(m => m.Words.Contains($"<@{who.Id}>", StringComparison.Ordinal) && m.Usable.Any()));

    /// <summary>The open question, once it is another than before; after a while that one once more, as members do.</summary>
    private async Task<SeenMessage?> PanelAsync(Channel thread, SeenMessage? before)
    {
        for (var until = DateTime.UtcNow.AddSeconds(6); DateTime.UtcNow < until; await Task.Delay(Look))
        {
            if (Panels.Last(club, thread) is { } now && (before is null || now.Id != before.Id || now.Words != before.Words)) return now;
        }

        return Panels.Last(club, thread);
    }

    private async Task StepAsync(Channel thread, SeenMessage panel)
    {
        // Who is not in a private thread cannot comment in it.
        if (chance.NextDouble() < 0.3 && thread.Kind == ChannelKind.PublicThread) await club.Platform.SayAsync(mate, thread, "sounds like the cable to me", replyTo: panel, quietReply: true);
        var dice = chance.NextDouble();
        if (dice < 0.15) await SayAsync(thread, panel, Phrases[chance.Next(Phrases.Length)]);
        else if (dice < 0.25) await WriteAsync(panel);
        else if (dice < 0.30) await AnsweredAsync(await UseAsync(panel, CustomId.Think));
        else if (dice < 0.35) await Task.WhenAll(AnsweredAsync(await UseAsync(panel, CustomId.Answer)), AnsweredAsync(await UseAsync(panel, CustomId.Answer)));
        else await AnsweredAsync(await UseAsync(panel, CustomId.Answer));
    }

    private async Task EndAsync(Channel thread, SeenMessage panel)
    {
        var dice = chance.NextDouble();
        if (dice < 0.3)
        {
            var deed = await club.Platform.CommandAsync(who, thread, "case leave");
            Done.Enqueue(new DoneDeed(LeaveCommand, Names.OpeningEvent(new Snowflake(deed.Id)), deed));
            await AnsweredAsync(deed);
        }
        else if (dice < 0.5)
        {
            await SayAsync(thread, panel, "i'd rather have a helper");
        }
        else if (dice < 0.6)
        {
            await AnsweredAsync(await club.Platform.CommandAsync(who, thread, "case helper", new Dictionary<string, object> { ["who"] = mate }));
        }
    }

    private async Task SayAsync(Channel thread, SeenMessage panel, string words)
    {
        var said = await club.Platform.SayAsync(who, thread, words, replyTo: panel);
        Done.Enqueue(new DoneDeed("words", Names.SaidEvent(new Snowflake(said.Id)), null));
    }

    private async Task WriteAsync(SeenMessage panel)
    {
        var opener = await UseAsync(panel, CustomId.Words);
        if (opener is null || (await opener.Answered).Type != 9) return;
        var sent = await club.Platform.SubmitAsync(opener, new Dictionary<string, object> { ["words"] = Phrases[chance.Next(Phrases.Length)] });
        Done.Enqueue(new DoneDeed("form", Names.PressEvent(new Snowflake(sent.Id), new Snowflake(panel.Id)), sent));
        await AnsweredAsync(sent);
    }

    /// <summary>Uses any of the controls of this kind that stand there now; the question may have changed since it was read.</summary>
    private async Task<Deed?> UseAsync(SeenMessage panel, string verb)
    {
        var now = club.Platform.Now(panel);
        var verbs = verb == CustomId.Answer ? [CustomId.Answer, CustomId.Pick] : new[] { verb };
        var fitting = now.Usable.Where(c => CustomId.Read(c.CustomId) is { } id && verbs.Contains(id.Verb)).ToList();
        if (fitting.Count == 0) return null;
        var control = fitting[chance.Next(fitting.Count)];
        try
        {
            var deed = control.Choices.Count > 0
                ? await club.Platform.PickAsync(who, now, control.CustomId!, control.Choices[chance.Next(control.Choices.Count)].Value)
                : await club.Platform.PressAsync(who, now, control.CustomId!);
            Done.Enqueue(new DoneDeed("press", Names.PressEvent(new Snowflake(deed.Id), new Snowflake(now.Id)), deed));
            return deed;
        }
        catch (InvalidOperationException)
        {
            // The question changed between the look and the finger: there is no such button any more.
            return null;
        }
    }

    private static Task AnsweredAsync(Deed? deed) => deed?.Answered ?? Task.CompletedTask;
}
