using System.Globalization;
using ShedBot.Coaching.Cards;
using ShedBot.Discord.Rest;

namespace ShedBot.Discord.Clubs;

/// <summary>What is said about looking after rules in the chat; what is said about the rules themselves comes from the desk.</summary>
internal static class TeachingTexts
{
    public static Card TrialGoing { get; } = Texts.Plain("One after the other", "A trial of your club is running. Wait until it is done, then try this one.");

    public static Card ReportGoing { get; } = Texts.Plain("One after the other", "A report of your club is being counted. Wait until it is there, then ask for this one.");

    public static Card CountGoing { get; } = Texts.Plain("One after the other", "Your club's cases are being counted. Wait until it is done, then ask once more.");

    public static Card CountingMended { get; } = Texts.Plain("It is being counted", "Your club's closed cases, one by one. With many of them it takes a little; the result comes here.");

    public static Card NotEverybody { get; } = Texts.Plain("Choose a role", "That role is everybody's. Nothing was changed; choose a role that only some of you have.");

    public static Card NoTip { get; } = Texts.Plain("Not that one", "A tip is what a member wrote; that message is not one of theirs.");

    public static Card Trying(int percent) => Texts.Plain(
        "It is being tried",
        "Old rules and new ones side by side, on your club's closed cases and on invented riders. It takes a minute or two. The result comes here, and is kept with the proposal: /rules waiting."
        + (percent == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" About {percent} % is done.")));

    public static Card Counting(int percent) => Texts.Plain(
        "It is being counted", "From your club's closed cases; it comes here." + (percent == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" About {percent} % is done.")));

    public static Card NotFetched(FetchTrouble why) => Texts.Plain("Not read", why switch
    {
        FetchTrouble.TooBig => "That file is too big: at most 256 kB are read. Nothing was changed.",
        FetchTrouble.NotOurs => "I read only files that are sent in the chat itself. Nothing was changed.",
        _ => "I could not fetch that file from the chat. Please send it once more.",
    });
}
