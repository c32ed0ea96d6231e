using ShedBot.Coaching.Cards;

namespace ShedBot.Discord.Clubs;

/// <summary>What ShedBot says about itself.</summary>
internal static class AboutCards
{
    public static Card About { get; } = new(
        "About ShedBot",
        [
            new TextBlock("I help with the clutch of small two-stroke engine kits on bicycles: it drags, it slips, the slack keeps coming back, the lever is heavy. "
                + "I ask a few short questions, cheapest and safest first, say what I think and why, and walk you through the repair."),
            new ListBlock(
                "How to begin",
                ["/trouble, and tell me what the bike does", "or mention me in the help channel", "or open the menu of a message there and choose \"Coach this\""]),
            new ListBlock(
                "In the thread of your case",
                [
                    "press an answer, or use \"In my own words\"", "mention me, or reply to me, to tell me more", "/case go-on, thoughts, helper, leave",
                ]),
            new ListBlock("Your bike's service, for you alone", ["/ride log after a ride, or once /ride pace", "/service plan: what is due; /service how and done", "/reminders: a message from me when something falls due, if you like"]),
            new TextBlock("I can be wrong. What I say stands behind the law of your place and the word of a licensed workshop. If somebody is hurt or something burns, call for help first."),
        ],
        []);

    public static Card Privacy { get; } = new(
        "What I keep of you",
        [
            new ListBlock(
                "I keep, for this club only",
                [
                    "your member number in this chat; your name only beside a tip you gave or a rule you wrote; never your picture", "what you told me about your bike and its troubles, in the words that open a case and in your answers", "the work and service that was done on it, on which day",
                    "how your troubles ended, counted with those of others as numbers without a name, so that this club's own rules fit its bikes better",
                    "words of yours that I could make nothing of, so that moderators can teach me what they mean; and tips you gave, or that somebody passed on from you",
                    "how you ride: days, distance or time, weather, rests and the pace you told, as far as you logged them",
                    "if you want to be reminded: when, in which time zone, in which channel I may mention you, what you were told and when, what you put off or stopped",
                ]),
            new ListBlock(
                "I do not",
                [
                    "read along: I see what mentions me, replies to me, or is pressed or sent to me", "sell it, pass it on, or train anything with your words", "show one club what belongs to another",
                ]),
            new TextBlock("It is kept while you use me. With /shedbot leave everything is removed at once, and what was counted is counted anew without you; rules that you helped to make stay with the club, without your name. When a club sends me away, all of it is removed some weeks later. "
                + "The operator's privacy policy, and how to reach them, stands in my profile."),
        ],
        []);
}
