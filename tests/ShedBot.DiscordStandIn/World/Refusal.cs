namespace ShedBot.DiscordStandIn.World;

/// <summary>The platform says no: HTTP status and its own code and message, as its table of codes has them.</summary>
internal sealed class Refusal(int status, int code, string message) : Exception(message)
{
    public int Status { get; } = status;

    public int Code { get; } = code;

    public static Refusal UnknownChannel() => new(404, 10003, "Unknown Channel");

    public static Refusal UnknownGuild() => new(404, 10004, "Unknown Guild");

    public static Refusal UnknownMember() => new(404, 10007, "Unknown Member");

    public static Refusal UnknownMessage() => new(404, 10008, "Unknown Message");

    public static Refusal UnknownUser() => new(404, 10013, "Unknown User");

    public static Refusal UnknownWebhook() => new(404, 10015, "Unknown Webhook");

    public static Refusal UnknownInteraction() => new(404, 10062, "Unknown interaction");

    public static Refusal DmsTooFast() => new(400, 40003, "You are opening direct messages too fast");

    public static Refusal TooLarge() => new(413, 40005, "Request entity too large");

    public static Refusal NotInThisKind() => new(400, 40058, "Cannot execute action on this channel type");

    public static Refusal AlreadyAnswered() => new(400, 40060, "Interaction has already been acknowledged.");

    public static Refusal MissingAccess() => new(403, 50001, "Missing Access");

    public static Refusal NotByYou() => new(403, 50005, "Cannot edit a message authored by another user");

    public static Refusal Empty() => new(400, 50006, "Cannot send an empty message");

    public static Refusal CannotReach() => new(403, 50007, "Cannot send messages to this user");

    public static Refusal MissingRights() => new(403, 50013, "Missing Permissions");

    public static Refusal TokenSpent() => new(401, 50027, "Invalid Webhook Token");

    public static Refusal BadRecipient() => new(400, 50033, "Invalid Recipient(s)");

    public static Refusal BadForm(string why) => new(400, 50035, $"Invalid Form Body: {why}");

    public static Refusal Archived() => new(400, 50083, "Thread is archived");

    public static Refusal NoSharedServer() => new(403, 50278, "Cannot send messages to this user due to having no mutual guilds");

    public static Refusal ReplyNeedsHistory() => new(400, 160002, "Cannot reply without permission to read message history");

    public static Refusal HasThread() => new(400, 160004, "A thread has already been created for this message");

    // The HTTP status of this one is from memory; the table of codes gives none.
    public static Refusal ThreadLocked() => new(403, 160005, "Thread is locked");

    public static Refusal TooManyThreads() => new(400, 160006, "Maximum number of active threads reached");
}
