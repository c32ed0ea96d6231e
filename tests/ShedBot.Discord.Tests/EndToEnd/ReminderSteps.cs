using NodaTime;
using ShedBot.Coaching.Cases;
using ShedBot.Coaching.Nudging;
using ShedBot.DiscordStandIn.Driving;
using ShedBot.DiscordStandIn.World;

namespace ShedBot.Discord.Tests.EndToEnd;

/// <summary>What members of the invented club do about reminders, and what they find in their direct conversation.</summary>
internal static class ReminderSteps
{
    public static readonly DateTimeZone Lisbon = DateTimeZoneProviders.Tzdb["Europe/Lisbon"];

    public static MemberId Member(this ClubHouse house, Person person) => new($"{house.Guild.Id}/{person.Id}");

    public static async Task<Rider> WishesAsync(this ClubHouse house, Person person) => (await house.Store.FindRiderAsync(house.Member(person), default))!;

    /// <summary>Uses a command in the lobby and waits until it is answered.</summary>
    public static async Task<Deed> UseAsync(this ClubHouse house, Person who, string command, params (string Name, object Value)[] options)
    {
        var deed = await house.Platform.CommandAsync(who, house.Lobby, command, options.ToDictionary(o => o.Name, o => o.Value));
        Assert.False((await deed.Settled).Failed);
        return deed;
    }

    /// <summary>A bike with much that is due, and the rider's yes to reminders.</summary>
    public static async Task AgreeAsync(this ClubHouse house, Person who)
    {
        var asked = await house.AskedAsync(await house.UseAsync(who, "service fitted", ("day", "3 days ago")));
        await house.UseAsync(who, "ride log", ("distance", "12"), ("day", "yesterday"));
        var yes = await house.Platform.PressLabelAsync(who, asked, "Yes, remind me");
        Assert.Contains("Good, I'll remind you", (await yes.Settled).Message!.Words, StringComparison.Ordinal);
        Assert.Equal(Consent.Given, (await house.WishesAsync(who)).Consent);
    }

    /// <summary>What was said beside the answer to a command: the question whether to remind.</summary>
    public static async Task<SeenMessage> AskedAsync(this ClubHouse house, Deed command)
    {
        await ClubHouse.UntilAsync(() => command.FollowUps.Count > 0, "what is said beside the answer");
        var asked = command.FollowUps.Single();
        Assert.True(asked.Private);
        Assert.Contains("Shall I remind you?", asked.Words, StringComparison.Ordinal);
        return asked;
    }

    /// <summary>Puts the clock forward to the next time that it shows this in the club.</summary>
    public static void MoveTo(this ClubHouse house, int hour, int minute = 0)
    {
        var now = Instant.FromDateTimeOffset(house.Clock.GetUtcNow()).InZone(Lisbon);
        var then = now.Date.At(new LocalTime(hour, minute));
        if (then <= now.LocalDateTime) then = then.PlusDays(1);
        house.Clock.Move((then.InZoneLeniently(Lisbon).ToInstant() - now.ToInstant()).ToTimeSpan());
    }

    /// <summary>What stands in somebody's direct conversation, oldest first.</summary>
    public static IReadOnlyList<SeenMessage> Direct(this ClubHouse house, Person who) => house.Platform.Messages(house.Platform.DirectChannel(who), removed: false);

    /// <summary>Waits for so many reminders, and for their being noted as said; a round more brings no others.</summary>
    public static async Task<SeenMessage> ReminderAsync(this ClubHouse house, Person who, int number = 1)
    {
        await house.ComesRoundAsync(() => house.Direct(who).Count >= number, $"reminder {number}");
        await house.QuietAsync();
        Assert.Equal(number, house.Direct(who).Count);
        return house.Direct(who)[^1];
    }

    /// <summary>Waits until nothing is to be said, and on over a round.</summary>
    public static async Task QuietAsync(this ClubHouse house)
    {
        await house.ComesRoundAsync(() => house.Store.UnsaidPlacesAsync(10, default).Result.IsEmpty, "all to be said");
        await house.RoundAsync();
    }

    /// <summary>Waits until a message could not be sent and is waiting.</summary>
    public static Task WaitsAsync(this ClubHouse house) =>
        ClubHouse.UntilAsync(() => house.Log.Any(l => l.Contains("could not be said yet", StringComparison.Ordinal)), "a message that could not be sent");

    /// <summary>Round after round until it is so: a program that has just been started may not be listening yet.</summary>
    public static Task ComesRoundAsync(this ClubHouse house, Func<bool> so, string what)
    {
        var looks = 0;
        return ClubHouse.UntilAsync(
            () =>
            {
                if (++looks % 20 == 0) house.Clock.ComeRound();
                return so();
            },
            what);
    }

    /// <summary>Lets everything that comes round come round, and gives it time.</summary>
    public static async Task RoundAsync(this ClubHouse house)
    {
        house.Clock.ComeRound();
        await Task.Delay(TimeSpan.FromMilliseconds(400));
    }

    /// <summary>Presses a button of a reminder and waits until its message has changed.</summary>
    public static async Task<SeenMessage> PressAsync(this ClubHouse house, Person who, SeenMessage reminder, string label)
    {
        var before = house.Platform.Now(reminder).Earlier.Count;
        var deed = await house.Platform.PressLabelAsync(who, house.Platform.Now(reminder), label);
        Assert.False((await deed.Answered).Failed);
        await ClubHouse.UntilAsync(() => house.Platform.Now(reminder).Earlier.Count > before, $"'{label}' to change the reminder");
        return house.Platform.Now(reminder);
    }

    /// <summary>Picks a task of a digest.</summary>
    public static async Task<SeenMessage> LookAsync(this ClubHouse house, Person who, SeenMessage digest, int number = 0)
    {
        var now = house.Platform.Now(digest);
        var list = now.Usable.Single(c => c.Choices.Count > 0);
        await (await house.Platform.PickAsync(who, now, list.CustomId!, list.Choices[number].Value)).Settled;
        await ClubHouse.UntilAsync(() => house.Platform.Now(digest).Words != now.Words, "the task to be shown");
        return house.Platform.Now(digest);
    }
}
