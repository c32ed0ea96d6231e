using ShedBot.Coaching.Cards;
using ShedBot.Discord.Drawing;

namespace ShedBot.Discord.Clubs;

/// <summary>What is said about the talking itself; what is said about bikes comes from the coach.</summary>
internal static class Texts
{
    public const string WhatReachesMe =
        "I read only what mentions me or replies to me. The buttons, and \"In my own words\", always reach me. Others may comment as they like.";

    public static Card NotMineAnyMore { get; } = Plain("That one is over", "This button belongs to nothing I keep any more. For a new trouble use /trouble.");

    public static Card AnsweredAlready { get; } = Plain("That question is over", "It was answered already; nothing is changed. The open question is the last one from me in this thread.");

    public static Card CaseClosed { get; } = Plain("This case is closed", "For a new trouble tell me in words here, or use /trouble.");

    public static Card CannotNow { get; } = Plain(
        "Something went wrong on my side", "Nothing you told me before is lost. Please try it once more; if it stays like this, tell one of the club's moderators.");

    public static Card SoonSaid { get; } = Plain(
        "Kept, and soon said", "I have what you told me, but the chat does not take my answer just now. It comes by itself; nothing needs to be repeated.");

    public static Card NoPrivateForum { get; } = Plain(
        "Not in private here", "This club's help channel is a forum: what stands there is seen by all its members. Nothing was begun. Use /trouble without private if that is fine with you.");

    public static Card NotAnOffer { get; } = Plain("Not that one", "I can coach on what a member wrote; that message is not one of theirs.");

    public static Card Offer { get; } = Plain("Shall I help with the clutch?", "Somebody here thought that I might. If you like, I open a thread and ask a few short questions. Until you say yes I keep nothing.");

    public static Card Offered { get; } = Plain("Offered", "I have asked them; it begins when they say yes.");

    public static Card NotYourOffer { get; } = Plain("That was not meant for you", "For a trouble of your own use /trouble.");

    public static Card HelpChannelGone { get; } = Plain(
        "The help channel is gone", "The channel in which I am to help is not there any more, or is closed to me. A moderator can choose another: /club set-up. What you told me is kept.");

    public static Card NoHelpChannel { get; } = Plain(
        "No help channel yet", "This club has not told me where I may help. A moderator can: /club set-up.");

    public static Card NothingDue { get; } = Plain("Nothing of that is due any more", "Your plan has what comes next.");

    public static Card TellMeMore { get; } = Plain("I am listening", "Mention me once more and tell me in a few words what the bike does.");

    public static Card ModeratorsOnly { get; } = Plain("For moderators", "Only those who may manage this server can change how I work in the club.");

    public static Card NoCaseHere { get; } = Plain("No case here", "Use this in the thread of a case. For a new trouble use /trouble.");

    public static Card Anew { get; } = Plain("There it is again", "I have put the open question at the end of the thread.");

    public static Card OnlyInClub { get; } = Plain(
        "I help in your club's channel", "There, use /trouble or mention me, and tell me what the bike does. Here you can use /shedbot: about, privacy, leave.");

    public static Card Forget { get; } = new(
        "Shall I forget you?",
        [
            new TextBlock("I then remove your cases, your bike, its rides, its services and every fact you told me, here and at once. It cannot be taken back."),
            new TextBlock("What was written in the club's threads stays with the chat itself: delete your own messages there, or ask a moderator to delete the thread. "
                + "Copies that the club's operator has put away for safety are overwritten in time."),
        ],
        []);

    public static Card Plain(string title, string text) => new(title, [new TextBlock(text)], []);

    public static Card NotYours { get; } = Plain(
        "Not your case", "Comment as you like; to answer for the rider, they can name you with /case helper. For a trouble of your own use /trouble.");

    public static Card Opened { get; } = Plain("We go on there", "I have opened a thread for you. Everything else is asked and answered in it.");

    public static Card TooManyOpen { get; } = Plain("One after the other", "You have these cases open already. Go on there, or put one away with /case leave in its thread.");

    public static Card HelpIsThere { get; } = Plain("I help over there", "Please ask in that channel, or use /trouble: it opens a thread for you.");

    public static Card HelperNamed { get; } = Plain("A helper may answer", "They may now press and answer in this thread for the rider.");

    public static Card Forgotten(int cases, int bikes) => Plain(
        "Forgotten", $"Removed: {cases} {(cases == 1 ? "case" : "cases")}, {bikes} {(bikes == 1 ? "bike" : "bikes")} and all that belonged to them. Ride safe.");

    public static Card Lacking(IEnumerable<string> rights) => new(
        "I am not allowed to",
        [
            new ListBlock("There I lack", [.. rights]),
            new TextBlock("A moderator can give it to my role in the channel's settings. Nothing is lost meanwhile; /club check tells whether all is well."),
        ],
        []);

    /// <param name="link">Who or where it is about, as the platform links it; shown above the card.</param>
    public static Drawn Draw(Card card, string? link = null) => CardDrawing.Plain(card, link);
}
